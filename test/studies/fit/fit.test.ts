/** What a fit says of a car: the dimensions, their covariance by a second method, what cannot be told, and readings of every kind. */
import { inv } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { fitText } from '../../../src/fitText.ts';
import { untoldWords } from '../../../src/outputs/fitWords.ts';
import { solve } from '../../../src/solve.ts';
import { finished } from '../../../src/studies/finished.ts';
import { createCar } from '../../../src/studies/fit/car.ts';
import { NOTHING_BESIDE } from '../../../src/studies/fit/gather.ts';
import { solveTravel } from '../../../src/travel/travel.ts';
import { BENCH, benchText, fitted, TEN, whyNot } from './bench.ts';

const DEG = Math.PI / 180;

/** Without the functions of columns. */
const plain = (outcome: object): unknown => JSON.parse(JSON.stringify(outcome));

describe('a car that is off', () => {
  const car = { 'rods.link.length': 0.1109, 'sensors.tps.at_closed': 13 * DEG, 'cables.main.slack': 1.6e-3 };
  const names = ['link.length', 'tps.at_closed', 'main.slack'];
  const truth = Object.values(car);

  test('is found from readings with hardly any noise, whatever they are of', () => {
    for (const each of [
      { columns: ['pedal.travel', 'tps.signal', 'shaft.opening'], noise: ['0.00001 V', '0.001 deg'] },
      { columns: ['pedal.travel', 'tps.angle', 'bank.fraction'], noise: ['0.001 deg', '0.001 %'] },
      { columns: ['pedal.travel', 'tps.signal', 'bank.area', 'crank.rotation'], noise: ['0.00001 V', '0.01 mm^2', '0.001 deg'] },
    ]) {
      const { dimensions, settled } = fitted(benchText({ ...each, at: TEN, car, fit: names }));
      expect(settled).toBe(true);
      dimensions.forEach(({ value, error }, i) => {
        expect(Math.abs(value - truth[i]!)).toBeLessThan(3 * error);
        expect(error).toBeLessThan(1e-3 * truth[i]!);
      });
    }
  });

  test('is found from the pull of its cable as from the travel of its pedal', () => {
    const noise = ['0.005 V'];
    const byTravel = fitted(benchText({ columns: ['pedal.travel', 'tps.signal'], at: TEN, car, fit: names, noise }));
    const byPull = fitted(
      benchText({ columns: ['main.pull', 'tps.signal'], at: [0, 4, 8, 12, 16, 20, 24, 28, 30], car, fit: names, noise }),
    );
    for (const { dimensions } of [byTravel, byPull]) {
      dimensions.forEach(({ value, error }, i) => expect(Math.abs(value - truth[i]!)).toBeLessThan(3 * error));
    }
    expect(byPull.readings.map(({ travel }) => travel).every((at, i, all) => i === 0 || at > all[i - 1]!)).toBe(true);
  });

  test('has the covariance that mathjs makes of differences of the table', () => {
    const text = benchText({
      columns: ['pedal.travel', 'tps.signal', 'shaft.opening'],
      at: TEN,
      car,
      fit: names,
      noise: ['0.004 V', '0.2 deg'],
    });
    const { dimensions, covariance, readings } = fitted(text);
    const { mechanism } = solve(text).study!.travel;
    const values = Float64Array.from(mechanism.nominal);
    dimensions.forEach(({ index, value }) => (values[index] = value));
    const readAll = (at: Float64Array): number[] => {
      const travel = solveTravel(mechanism, at);
      const opening = (where: number): number =>
        travel.poseAt(where).rotation[mechanism.leverIndex.get('shaft')!]! * mechanism.senses[mechanism.leverIndex.get('shaft')!]!;
      const atClosed = at[dimensions[1]!.index]!;
      // Signal by the format's own words: linear over its range.
      return readings.map(({ column, travel: where }) =>
        column === 'tps.signal' ? 0.5 + (4 * (atClosed + opening(where))) / (110 * DEG) : opening(where),
      );
    };
    const noise = readings.map(({ column }) => (column === 'tps.signal' ? 0.004 : 0.2 * DEG));
    const slopes = dimensions.map(({ index }) => {
      const moved = [1e-6, -1e-6].map((by) => readAll(values.map((value, i) => (i === index ? value + by : value)))) as [
        number[],
        number[],
      ];
      return moved[0].map((value, i) => (value - moved[1][i]!) / 2e-6 / noise[i]!);
    });
    const prior = dimensions.map(({ prior: known }) => (known === undefined ? 0 : 1 / known.deviation ** 2));
    const information = slopes.map((one, i) =>
      slopes.map((other, j) => one.reduce((sum, each, k) => sum + each * other[k]!, 0) + (i === j ? prior[i]! : 0)),
    );
    const wanted = inv(information);
    const n = dimensions.length;
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        const size = Math.sqrt(wanted[i]![i]! * wanted[j]![j]!);
        expect(Math.abs(covariance[i * n + j]! - wanted[i]![j]!)).toBeLessThan(1e-4 * size);
      }
    }
  });

  test('is told to lie beyond its tolerance where the readings leave no doubt', () => {
    const far = fitted(
      benchText({
        columns: ['pedal.travel', 'shaft.opening'],
        at: TEN,
        car: { 'rods.link.length': 0.1124 },
        fit: ['link.length'],
        noise: ['0.05 deg'],
      }),
    );
    expect(far.dimensions[0]).toMatchObject({ beyond: true });
    const near = fitted(
      benchText({ columns: ['pedal.travel', 'shaft.opening'], at: TEN, car, fit: ['link.length', 'main.slack'], noise: ['0.05 deg'] }),
    );
    expect(near.dimensions[0]).toMatchObject({ beyond: false });
  });

  test('gives the same figures again, and moves on in steps', () => {
    const text = benchText({ columns: ['pedal.travel', 'tps.signal'], at: TEN, car, fit: names, noise: ['0.004 V'] });
    const steps = fitText(text, NOTHING_BESIDE);
    let count = 0;
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done === true) {
        expect(plain(step.value)).toEqual(plain(finished(fitText(text, NOTHING_BESIDE))));
        break;
      }
      count++;
      expect(step.value.done).toBeLessThanOrEqual(step.value.of);
    }
    expect(count).toBeGreaterThan(3);
  });
});

test('every toleranced dimension is to be found where the file does not say which', () => {
  const { dimensions, held } = fitted(
    benchText({ columns: ['pedal.travel', 'tps.signal', 'shaft.opening'], at: TEN, noise: ['0.004 V', '0.2 deg'] }),
  );
  expect(dimensions.map(({ name }) => name).sort()).toEqual(
    [
      'crank.out.radius',
      'crank.pivot.x',
      'foot.clevis.radius',
      'link.length',
      'shaft.arm.radius',
      'shaft.pivot.x',
      'shaft.stops.closed',
    ].sort(),
  );
  expect(held).toEqual([]);
});

describe('what cannot be told', () => {
  const columns = ['pedal.travel', 'crank.opening', 'shaft.opening'];

  test('is told as a difference where two pivots can go along together', () => {
    // Without the cable's housing, which stands still, the linkage can be moved as a whole: that is no difference to it.
    const text = benchText({
      columns: ['pedal.travel', 'shaft.opening'],
      at: TEN,
      fit: ['crank.pivot.x', 'shaft.pivot.x'],
      noise: ['0.05 deg'],
      linkage: FOUR_BAR,
    });
    const fit = fitted(text);
    expect(fit.untold).toEqual([{ unknowns: [0, 1], shown: 1, times: expect.closeTo(-1, 6) as number }]);
    expect([fit.rank, fit.narrowed]).toEqual([1, 1]);
    expect(untoldWords(fit, fit.untold[0]!)).toMatch(
      /^these readings cannot tell crank\.pivot\.x from shaft\.pivot\.x: only their difference shows \(crank\.pivot\.x − 1 × \(shaft\.pivot\.x − 90 mm\) = -?0\.\d+ mm ± 0\.\d+ mm\)$/,
    );
    // Of two equal tolerances what is common stays: half of each variance.
    for (const { left } of fit.dimensions) expect(left).toBeCloseTo(Math.SQRT1_2, 2);
  });

  test('is told as a sum where two angles add up', () => {
    const text = benchText({
      columns: ['pedal.travel', 'tps.angle'],
      at: [0, 0, 0],
      fit: ['tps.at_closed', 'shaft.stops.closed'],
      linkage: BENCH.replace('at_closed: 12 deg', 'at_closed: 12 deg ± 0.3 deg'),
      noise: ['0.02 deg'],
    });
    const fit = fitted(text);
    expect(fit.untold.length).toBe(1);
    expect(fit.untold[0]!.times).toBeGreaterThan(0);
    expect(untoldWords(fit, fit.untold[0]!)).toContain('only their sum shows ((tps.at_closed − 12°) + 1 × shaft.stops.closed');
  });

  test('is left as the file has it, with an error without end, where no tolerance tells it either', () => {
    const open = FOUR_BAR.replaceAll(' mm ± 0.3 mm', '');
    const { dimensions, untold, settled } = fitted(
      benchText({
        columns: ['pedal.travel', 'shaft.opening'],
        at: TEN,
        fit: ['crank.pivot.x', 'shaft.pivot.x', 'link.length'],
        noise: ['0.05 deg'],
        linkage: open,
      }),
    );
    expect(settled).toBe(true);
    expect(dimensions.slice(0, 2).map(({ error }) => error)).toEqual([Infinity, Infinity]);
    expect(Number.isFinite(dimensions[2]!.error)).toBe(true);
    // Of what does not show nothing is changed.
    expect(dimensions[0]!.value + dimensions[1]!.value).toBeCloseTo(0.09, 9);
    expect(untold.some(({ unknowns }) => unknowns.includes(0) && unknowns.includes(1))).toBe(true);
  });

  test('and went out of sight on the way does not count as found, nor is anything turned for it', () => {
    // Millivolts written as volts: the sensor stays at its least signal whatever the dimensions are, once the fit has gone there.
    const text = benchText({
      columns: ['pedal.travel', 'tps.signal'],
      at: TEN,
      fit: ['main.slack', 'tps.at_closed'],
      noise: ['0.004 V'],
    }).replace(/ V\]/g, ' mV]');
    const { settled, turning, dimensions } = fitted(text);
    expect(dimensions.map(({ error }) => error)).toEqual([Infinity, Infinity]);
    expect([settled, turning.kind]).toEqual([false, 'not-checked']);
  });

  test('is told of three together', () => {
    const fit = fitted(
      benchText({
        columns,
        at: TEN,
        fit: ['foot.pivot.x', 'crank.pivot.x', 'shaft.pivot.x'],
        noise: ['0.02 deg', '0.02 deg'],
        linkage: SIX_BAR,
      }),
    );
    expect(fit.untold).toEqual([{ unknowns: [0, 1, 2], shown: 2, times: undefined }]);
    expect(untoldWords(fit, fit.untold[0]!)).toContain(
      'foot.pivot.x, crank.pivot.x and shaft.pivot.x from each other: only 2 of their 3 combinations',
    );
  });

  test('is told of one alone, and of what no column rests on', () => {
    const { untold, idle, dimensions } = fitted(
      benchText({ columns, at: TEN, fit: ['link.length', 'tps.at_closed', 'shaft.inertia'], noise: ['0.1 deg', '0.1 deg'] }),
    );
    expect(untold).toEqual([{ unknowns: [1], shown: 0, times: undefined }]);
    expect(idle).toEqual(['shaft.inertia']);
    expect(dimensions.map(({ name }) => name)).toEqual(['link.length', 'tps.at_closed']);
  });

  test('is nothing where each dimension has a column of its own', () => {
    const { untold, correlated } = fitted(
      benchText({
        columns: ['pedal.travel', 'tps.signal', 'shaft.opening'],
        at: TEN,
        fit: ['tps.at_closed', 'main.slack'],
        noise: ['0.002 V', '0.05 deg'],
      }),
    );
    expect(untold).toEqual([]);
    expect(correlated).toEqual([]);
  });
});

describe('forces', () => {
  const car = { 'springs.back.preload': 0.3, 'cables.main.friction': 0.16 };

  test('tell friction and springs, by differences', () => {
    const { dimensions, columns, settled } = fitted(
      benchText({
        columns: ['pedal.travel', 'pedal.effort', 'pedal.release'],
        at: [10, 30, 50, 70, 90],
        car,
        fit: ['back.preload', 'main.friction'],
        noise: ['0.05 N', '0.05 N'],
      }),
    );
    expect(settled).toBe(true);
    dimensions.forEach(({ value, error }, i) => {
      expect(Math.abs(value - Object.values(car)[i]!)).toBeLessThan(3 * error);
      expect(error).toBeLessThan(0.2 * value);
    });
    expect(columns.map(({ closedForm }) => closedForm)).toEqual([false, false]);
  });

  test('are left out with the reason where the file has no springs', () => {
    const text = benchText({
      columns: ['pedal.travel', 'tps.signal', 'pedal.effort'],
      at: TEN,
      fit: ['link.length'],
      noise: ['0.004 V', '0.1 N'],
    });
    const { leftOut } = fitted(text.replace(/springs:\n.*\n/, ''));
    expect(leftOut.length).toBe(TEN.length);
    expect(leftOut[0]).toMatchObject({ row: 1, column: 'pedal.effort', why: 'pedal.effort cannot be solved in this file' });
  });
});

describe('the derivatives of readings', () => {
  const { study } = solve(BENCH);
  const { mechanism } = study!.travel;
  const readings = ['shaft.opening', 'crank.rotation', 'tps.angle', 'tps.signal', 'bank.area', 'bank.fraction', 'main.pull'];
  const index = (path: string): number => mechanism.dimensions.find((each) => each.path === path)!.index;
  const unknowns = [
    'rods.link.length',
    'levers.crank.arms.out.radius',
    'levers.foot.arms.clevis.radius',
    'cables.main.slack',
    'sensors.tps.at_closed',
    'sensors.tps.range.0',
    'sensors.tps.signal.1',
    'plates.bank.idle',
    'plates.bank.bore',
    'levers.shaft.stops.closed',
    'pedal.travel',
  ].map((path) => ({ index: index(path), scale: 1e-3 }));

  test.each([
    ['at travels of the pedal', undefined, [0.2, 0.5, 0.9]],
    ['at pulls of the cable', 0, [8e-3, 16e-3, 28e-3]],
  ] as const)('%s are those of differences', (_, cable, positions) => {
    const stations = positions.map((position) => ({ position, cable }));
    const all = stations.flatMap((__, station) => readings.map((column) => ({ station, column })));
    const car = createCar(mechanism, stations, all, unknowns);
    const n = unknowns.length;
    // Off the drawing, where it stands on its stop.
    const values = Float64Array.from(unknowns, ({ index: at }, j) => mechanism.nominal[at]! + 1e-5 * (1 + j));
    car.put(values);
    const slopes = new Float64Array(all.length * n);
    finished(car.differentiate('growing', slopes));
    const [beyond, short] = [new Float64Array(all.length), new Float64Array(all.length)];
    unknowns.forEach(({ index: at }, j) => {
      const step = 1e-6 * Math.max(1e-1, Math.abs(mechanism.nominal[at]!));
      car.put(values.map((value, k) => (k === j ? value + step : value)));
      car.read(beyond);
      car.put(values.map((value, k) => (k === j ? value - step : value)));
      car.read(short);
      all.forEach(({ column }, i) => {
        const wanted = (beyond[i]! - short[i]!) / (2 * step);
        const size = { 'bank.area': 1e-2, 'main.pull': 1e-1 }[column] ?? 1;
        expect(Math.abs(slopes[i * n + j]! - wanted), `${column} by ${mechanism.dimensions[at]!.path}`).toBeLessThan(
          1e-5 * (size + Math.abs(wanted)),
        );
      });
    });
  });

  test('are zero where nothing changes, and not all zero', () => {
    const car = createCar(mechanism, [{ position: 0.5, cable: undefined }], [{ station: 0, column: 'crank.opening' }], unknowns);
    const slopes = new Float64Array(unknowns.length);
    finished(car.differentiate('growing', slopes));
    expect(slopes[4]).toBe(0);
    expect(Math.abs(slopes[3]!)).toBeGreaterThan(10);
  });
});

describe('readings that are not enough', () => {
  test('are refused where nothing else tells the dimensions', () => {
    const text = benchText({ columns: ['pedal.travel', 'tps.signal'], at: [50], fit: ['tps.at_closed', 'main.slack'], noise: ['0.004 V'] });
    expect(whyNot(text)).toBe('1 reading cannot tell 2 dimensions that have no tolerance');
    expect(solve(text).problems.map(({ code }) => code)).toEqual(['too-few-readings']);
  });

  test('are taken where tolerances tell them too', () => {
    const { dimensions, narrowed } = fitted(
      benchText({ columns: ['pedal.travel', 'tps.signal'], at: [50], fit: ['link.length', 'crank.out.radius'], noise: ['0.004 V'] }),
    );
    expect(narrowed).toBe(1);
    for (const { error } of dimensions) expect(Number.isFinite(error)).toBe(true);
  });

  test('are refused where none can be used', () => {
    const text = benchText({ columns: ['pedal.travel', 'tps.signal'], at: TEN, fit: ['link.length'], noise: ['0.004 V'] });
    expect(whyNot(text.replace(/sensors:\n.*\n/, ''))).toMatch(/is not understood|No reading can be used/);
    expect(whyNot(BENCH)).toBe('The file has no `measured` block');
  });

  test('are left out where the pedal does not pull so far', () => {
    const { leftOut, readings } = fitted(
      benchText({ columns: ['main.pull', 'tps.signal'], at: [4, 8, 12, 300], fit: ['link.length'], noise: ['0.004 V'] }),
    );
    expect(leftOut).toMatchObject([{ run: 'bench', row: 4, column: 'tps.signal' }]);
    expect(leftOut[0]!.why).toContain('the pedal does not come so far');
    expect(readings.length).toBe(3);
  });
});

const FOUR_BAR = `format: 1
levers:
  crank: {pivot: [0 mm ± 0.3 mm, 0], arms: {out: {radius: 38 mm, angle: 120 deg}}}
  shaft: {pivot: [90 mm ± 0.3 mm, 10], arms: {arm: {radius: 32 mm, angle: 115 deg}}}
pedal: {lever: crank, opens: clockwise, travel: 60 deg}
rods:
  link: {from: crank.out, to: shaft.arm, length: 97 mm ± 0.3 mm}
`;

const SIX_BAR = `format: 1
levers:
  foot: {pivot: [0 mm ± 0.3 mm, 0], arms: {out: {radius: 40 mm, angle: 110 deg}}}
  crank: {pivot: [90 mm ± 0.3 mm, 10], arms: {in: {radius: 42 mm, angle: 115 deg}, out: {radius: 38 mm, angle: 80 deg}}}
  shaft: {pivot: [190 mm ± 0.3 mm, 0], arms: {arm: {radius: 40 mm, angle: 95 deg}}}
pedal: {lever: foot, opens: clockwise, travel: 50 deg}
rods:
  first: {from: foot.out, to: crank.in, length: 86.567 mm}
  second: {from: crank.out, to: shaft.arm, length: 90.234 mm}
`;
