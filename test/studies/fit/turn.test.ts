/** What to turn: a car that is off by what can be turned is brought back by turning it. */
import { describe, expect, test } from 'vitest';
import { turningWords, turnWords } from '../../../src/outputs/turningWords.ts';
import { dimensionWords, fitNotChecked } from '../../../src/outputs/fitWords.ts';
import { fitPage } from '../../../src/picture/studies/fitPage.ts';
import { solve } from '../../../src/solve.ts';
import { finished } from '../../../src/studies/finished.ts';
import { fit } from '../../../src/studies/fit/fit.ts';
import { gatherReadings, NOTHING_BESIDE } from '../../../src/studies/fit/gather.ts';
import type { Plan, Turning } from '../../../src/studies/fit/turn.ts';
import { BENCH, benchText, carText, fitted, TEN } from './bench.ts';

const DEG = Math.PI / 180;
const columns = ['pedal.travel', 'tps.signal', 'shaft.opening'];
const noise = ['0.00002 V', '0.002 deg'];

type Turned = Turning & { readonly kind: 'turn' };
function turned(text: string): Turned {
  const { turning } = fitted(text);
  if (turning.kind !== 'turn') throw new Error(turning.why);
  return turning;
}

describe('a rod that came out too long', () => {
  const linkage = BENCH.replace(' ± 0.6 mm', ' ± 3 mm');
  const turning = turned(benchText({ columns, at: TEN, car: { 'rods.link.length': 0.1125 }, fit: ['link.length'], noise, linkage }));

  test('is turned back, in turns of its thread', () => {
    expect(turning.wanted).toBe('drawing');
    expect(turning.turns.map(({ kind, part }) => `${kind} ${part}`)).toEqual(['rod link']);
    expect(turning.turns[0]!.change).toBeCloseTo(-2e-3, 5);
    expect(turning.turns[0]!.turns).toBeCloseTo(-1.6, 2);
    expect(turning.before[0]!.error).toBeGreaterThan(1 * DEG);
    expect(turning.after[0]!.error).toBeLessThan(0.02 * DEG);
  });

  test('is told in words, with what is left', () => {
    const [first, second] = turningWords(turning);
    expect(first).toMatch(/^shaft\.opening: up to \d\.\d+° off the drawing, at \d+(?:\.\d)? % of pedal travel, 0(?:\.\d+)?° once turned$/);
    expect(second).toMatch(/^link: 1\.6\d? ± 0\.01 turns shorter \(2 mm\)$/);
  });

  test('is told in mm where its thread is not given', () => {
    const plain = turned(
      benchText({
        columns,
        at: TEN,
        car: { 'rods.link.length': 0.1125 },
        fit: ['link.length'],
        noise,
        linkage: linkage.replace(', pitch: 1.25 mm', ''),
      }),
    );
    expect(plain.turns[0]!.turns).toBeUndefined();
    expect(turningWords(plain)[1]).toBe('link: 2 mm ± 0.01 mm shorter; the file gives no pitch, so not in turns');
  });

  test('is turned no farther than it goes', () => {
    // Between two levers alone, so that nothing else could help.
    const linkage = `format: 1
levers:
  crank: {pivot: [0, 0], arms: {out: {radius: 38 mm, angle: 120 deg}}}
  shaft: {pivot: [90, 10], arms: {arm: {radius: 32 mm, angle: 115 deg}}}
pedal: {lever: crank, opens: clockwise, travel: 60 deg}
rods:
  link: {from: crank.out, to: shaft.arm, length: 95.7 mm, adjust: {min: 96.7 mm, max: 99 mm, pitch: 1 mm}}
plates:
  bank: {lever: shaft, bore: 42 mm, shaft: 8 mm, seat: 6 deg}
`;
    const text = benchText({
      columns: ['pedal.travel', 'shaft.opening'],
      at: TEN,
      car: { 'rods.link.length': 0.0977 },
      fit: ['link.length'],
      noise: ['0.002 deg'],
      linkage,
    });
    const [only, ...others] = turned(text).turns;
    expect(others).toEqual([]);
    expect(only).toMatchObject({ kind: 'rod', atEnd: true, turns: expect.closeTo(-1, 3) as number });
    expect(only!.now + only!.change).toBeCloseTo(0.0967, 9);
  });
});

test('a cable with too much slack is taken up, and one with too little is given some', () => {
  for (const slack of [3e-3, 0.2e-3]) {
    const turning = turned(benchText({ columns, at: TEN, car: { 'cables.main.slack': slack }, fit: ['main.slack'], noise }));
    expect(turning.turns.map(({ kind }) => kind)).toEqual(['cable']);
    expect(turning.turns[0]!.change).toBeCloseTo(1e-3 - slack, 5);
    expect(turning.after[0]!.error).toBeLessThan(0.02 * DEG);
    expect(turningWords(turning)[1]).toContain('its thread is not known');
  }
});

test('a cable that is taken up as far as the drawing has it says that, and nothing of the end of its thread', () => {
  const fit = fitted(benchText({ columns, at: TEN, car: { 'cables.main.slack': 3e-3 }, fit: ['main.slack'], noise }));
  const [turn] = fit.turning.kind === 'turn' ? fit.turning.turns : [];
  const words = turnWords({ ...turn!, change: -2e-3, atEnd: true });
  expect(words).toBe(
    'main: 2 mm less slack, down to the slack that the file has and no further; the file does not speak of its adjuster: in mm, its thread is not known',
  );
});

test('a cable is never left with less slack than the drawing has, however well that would do', () => {
  // Two arms off the other way: more pull would help, and the slack is all that could give it.
  const linkage = BENCH.replace(', adjust: {min: 104 mm, max: 116 mm, pitch: 1.25 mm}', '');
  const turning = turned(
    benchText({ columns, at: TEN, car: { 'levers.crank.arms.out.radius': 0.0372 }, fit: ['crank.out.radius'], noise, linkage }),
  );
  for (const { kind, now, change } of turning.turns) if (kind === 'cable') expect(now + change).toBeGreaterThan(1e-3 - 1e-9);
});

test('a stop that stands wrong is moved', () => {
  const linkage = BENCH.replace('open: 84 deg', 'open: 78 deg');
  const turning = turned(
    benchText({ columns, at: [...TEN, 95, 98], car: { 'levers.shaft.stops.open': 75 * DEG }, fit: ['shaft.stops.open'], noise, linkage }),
  );
  expect(turning.turns.map(({ kind, part }) => `${kind} ${part}`)).toEqual(['open-stop shaft']);
  expect(turning.turns[0]!.change / DEG).toBeCloseTo(3, 1);
});

test('nothing is turned on a car that is as drawn', () => {
  const turning = turned(benchText({ columns, at: TEN, fit: ['link.length', 'main.slack'], noise }));
  expect(turning.turns).toEqual([]);
  expect(turningWords(turning).at(-1)).toContain('nothing needs turning');
});

test('the curve of `tune` is what is wanted where the file gives one', () => {
  const tune = `tune:
  free:
    reach: {from: 30 mm, to: 40 mm}
  curve: {of: shaft.opening, through: [[0 %, 0 deg], [50 %, 30 deg], [90 %, 66 deg]]}
  keep: [transmission]
`;
  const linkage = BENCH.replace('levers:', 'let:\n  reach: 38 mm\nlevers:').replace('radius: 38 mm ± 0.3 mm', 'radius: reach') + tune;
  const turning = turned(benchText({ columns, at: TEN, fit: ['main.slack'], noise, linkage }));
  expect(turning.wanted).toBe('tune');
  expect(turning.after[0]!.error).toBeLessThan(turning.before[0]!.error);
});

describe('what else the file demands', () => {
  const wanting = (points: string, keep = ''): string => {
    const tune = `tune:\n  free:\n    reach: {from: 30 mm, to: 45 mm}\n  curve: {of: shaft.opening, through: ${points}}\n${keep}`;
    const linkage = BENCH.replace('levers:', 'let:\n  reach: 38 mm\nlevers:').replace('radius: 38 mm ± 0.3 mm', 'radius: reach') + tune;
    return benchText({ columns, at: TEN, fit: ['main.slack'], noise, linkage });
  };
  /** The file with the car's slack and the turns written in; of nothing else was anything found. */
  const written = (text: string, { turns }: Plan): string => {
    const { dimensions } = fitted(text);
    const turn = (kind: string) => turns.find((each) => each.kind === kind);
    const slack = (turn('cable')?.now ?? dimensions[0]!.value) + (turn('cable')?.change ?? 0);
    const rod = 0.1105 + (turn('rod')?.change ?? 0);
    expect(turns.every(({ kind }) => kind === 'cable' || kind === 'rod')).toBe(true);
    return carText(text, { 'cables.main.slack': slack, 'rods.link.length': rod });
  };
  const missesOpening = (text: string): boolean => solve(text).findings.some(({ code }) => code === 'opening-missed');
  const offBy = (text: string, goals: readonly (readonly [number, number])[]): number => {
    const [opening] = solve(text).table(
      goals.map(([at]) => at),
      ['shaft.opening'],
    ).columns;
    return Math.max(...goals.map(([, wanted], i) => Math.abs(Number(opening!.values[i]) - wanted)));
  };

  describe('is kept where the best curve alone would give up full opening', () => {
    const goals = [
      [0.05, 0],
      [0.5, 33],
      [0.9, 70],
    ] as const;
    const text = wanting('[[5 %, 0 deg], [50 %, 33 deg], [90 %, 70 deg]]', '  keep: [full_opening, transmission]\n');
    const turning = turned(text);

    test('by turning less, or something else', () => {
      expect(missesOpening(text)).toBe(false);
      expect(turning.demands).toEqual(['full_opening', 'transmission']);
      expect(turning.turns.length).toBeGreaterThan(0);
      expect(missesOpening(written(text, turning))).toBe(false);
      expect(offBy(written(text, turning), goals)).toBeLessThan(offBy(text, goals) - 0.5);
      expect(turning.unmet).toEqual([]);
    });

    test('and what would come nearer is told with what it gives up', () => {
      const { nearer } = turning;
      expect(missesOpening(written(text, nearer!))).toBe(true);
      expect(offBy(written(text, nearer!), goals)).toBeLessThan(offBy(written(text, turning), goals) - 1);
      expect(nearer!.unmet).toMatchObject([{ name: 'full_opening', wasMet: true, isLess: true }]);
      const words = turningWords(turning);
      expect(words).toContain('once turned it keeps full_opening, transmission');
      expect(words.at(-1)).toMatch(
        /^nearer to the curve, but not to be turned so: main [\d.]+ mm ± [\d.]+ mm more slack, link [\d.]+ ± [\d.]+ turns longer; shaft\.opening up to [\d.]+° off, and it gives up full_opening \(shaft opens [\d.]+° at most/,
      );
    });

    test('but is not called given up where it holds neither on the car nor in the drawing', () => {
      const [lost] = turning.nearer!.unmet;
      const nearerOf = (...unmet: Plan['unmet']): string => turningWords({ ...turning, nearer: { ...turning.nearer!, unmet } }).at(-1)!;
      const never = { ...lost!, name: 'never', wasMet: false, isDrawn: false };
      expect(nearerOf(never)).toContain('and it falls further short than the car does of never (shaft opens ');
      expect(nearerOf(never)).not.toContain('gives up');
      expect(nearerOf(lost!, { ...never, isLess: false })).not.toContain('never');
      expect(nearerOf({ ...lost!, wasMet: false, isLess: false })).toContain('and it does not restore full_opening (');
    });

    test('and is nothing to the one whose `keep` names something else', () => {
      const free = turned(text.replace('keep: [full_opening, transmission]', 'keep: [transmission]'));
      expect(free.turns.map(({ part, change }) => [part, change.toFixed(6)])).toEqual(
        turning.nearer!.turns.map(({ part, change }) => [part, change.toFixed(6)]),
      );
      expect(free.nearer).toBeUndefined();
    });
  });

  test('leaves nothing to be turned where every way to the curve gives something up', () => {
    const turning = turned(wanting('[[0 %, 0 deg], [50 %, 30 deg], [90 %, 66 deg]]', '  keep: [full_opening]\n'));
    expect(turning.turns).toEqual([]);
    expect(turning.nearer!.turns.length).toBeGreaterThan(0);
    expect(turningWords(turning)[1]).toBe('nothing that can be turned brings it nearer without giving up what else the file demands');
  });

  test('may not hold whatever is turned: that is told, and stands in the way of nothing', () => {
    const linkage = BENCH.replace(' ± 0.6 mm', ' ± 3 mm');
    const turning = turned(benchText({ columns, at: TEN, car: { 'rods.link.length': 0.1125 }, fit: ['link.length'], noise, linkage }));
    // One return spring alone, in the drawing as on the car.
    expect(turning.unmet.find(({ name }) => name === 'closing_torque')).toMatchObject({ wasMet: false, isDrawn: false });
    expect(turning.nearer).toBeUndefined();
    expect(turningWords(turning).at(-1)).toMatch(/^not kept, in the drawing as on the car: (?:[a-z_]+, )*closing_torque$/);
  });

  describe('is held against a rod that is drawn as long as it is on the car, not in the file', () => {
    // The arm is a millimetre longer than drawn, and the rod goes along with it. Nothing to speak of can be turned.
    const linkage = PAIR.replace('length: 95.7 mm, adjust: {min: 94 mm, max: 99 mm', 'adjust: {min: 95.3 mm, max: 95.32 mm');
    const read = {
      columns: ['pedal.travel', 'shaft.opening'],
      at: TEN,
      car: { 'levers.shaft.arms.arm.radius': 0.033 },
      fit: ['link.length', 'shaft.arm.radius'],
      noise: ['0.0002 deg'],
    };
    const length = Math.hypot(90 + 33 * Math.cos(115 * DEG) + 19, 10 + 33 * Math.sin(115 * DEG) - 38 * Math.sin(120 * DEG));
    const byHand = linkage.replace('to: shaft.arm, ', `to: shaft.arm, length: ${length.toFixed(9)} mm, `).replace('32 mm', '33 mm');
    const opens = Number(solve(byHand).table([0.9], ['shaft.opening']).columns[0]!.values[0]);
    const found = fitted(
      benchText({
        ...read,
        linkage: `${linkage}require:
  just: at(90%, shaft.opening) >= ${(opens - 0.02).toFixed(6)} deg
  more: at(90%, shaft.opening) >= ${(opens + 0.02).toFixed(6)} deg
`,
      }),
    );

    test('as by hand', () => {
      const { turning } = found;
      if (turning.kind !== 'turn') throw new Error(turning.why);
      expect(turning.turns).toEqual([]);
      const unmet = turning.unmet.map(({ name }) => name);
      expect([unmet.includes('just'), unmet.includes('more')]).toEqual([false, true]);
    });

    test('and told with that length', () => {
      const [rod, arm] = found.dimensions;
      expect(rod!.length! * 1e3).toBeCloseTo(length, 3);
      expect(arm!.length).toBeUndefined();
      expect(dimensionWords(rod!)).toContain(`than drawn, ${length.toFixed(2)}`);
    });

    test('and written so, where the file is to be as the car is', () => {
      const text = benchText({ ...read, linkage });
      const { blocks } = fitPage(text, solve(text).study!, found, []);
      const writes = blocks.flatMap((block) => (block.kind === 'answer' ? block.writes : []));
      expect(writes.find(({ path }) => path === 'rods.link.length')!.value * 1e3).toBeCloseTo(length, 2);
    });
  });

  test('holds again where turning restores it', () => {
    const linkage = `${BENCH}require:\n  opens far: at(90%, shaft.opening) >= 73 deg\n`;
    const text = benchText({ columns, at: TEN, car: { 'cables.main.slack': 3e-3 }, fit: ['main.slack'], noise, linkage });
    const turning = turned(text);
    const slack = turning.turns[0]!.now;
    const stands = (of: number): string => solve(carText(text, { 'cables.main.slack': of })).requirements[0]!.outcome;
    expect([stands(slack), stands(slack + turning.turns[0]!.change)]).toEqual(['failed', 'passed']);
    expect(turning.unmet.map(({ name }) => name)).not.toContain('opens far');
  });

  test('is not checked where the figures cannot be written, and says so', () => {
    const text = benchText({ columns, at: TEN, car: { 'cables.main.slack': 3e-3 }, fit: ['main.slack'], noise });
    const { study, definition } = solve(text);
    const steps = fit(study!, gatherReadings(definition!, NOTHING_BESIDE), () => undefined);
    const found = finished(steps);
    if (typeof found === 'string') throw new Error(found);
    expect(found.turning).toMatchObject({ kind: 'turn', demands: undefined, turns: [{ kind: 'cable' }] });
    expect(fitNotChecked(found)).toContain(
      'whether what is turned leaves what else the file demands as it was: change the file, and check it',
    );
    expect(fitNotChecked(fitted(text)).join()).not.toContain('whether what is turned');
  });
});

describe('is not told', () => {
  // Foot off, the shaft stands on its stop whatever the rod and the slack are.
  const still = { columns: ['pedal.travel', 'tps.signal'], at: [0, 0, 0, 0], noise: ['0.004 V'] };

  test('where the curve rests on what the readings do not tell', () => {
    const linkage = BENCH.replace(' ± 0.6 mm', '');
    const fit = fitted(benchText({ ...still, fit: ['tps.at_closed', 'main.slack', 'link.length'], linkage }));
    expect(turningWords(fit.turning)).toEqual([
      'not checked: The curve rests on `main.slack`, `link.length`, which these readings do not tell',
    ]);
  });

  describe('where the curve rests on what they tell together with something else only', () => {
    // At one place of the pedal a longer rod reads as a sensor that is turned: the car may be anything along that.
    const one = { columns: ['pedal.travel', 'tps.signal'], at: [50, 50, 50, 50], noise: ['0.004 V'], car: { 'rods.link.length': 0.1135 } };
    const fit = ['link.length', 'tps.at_closed'];

    test('which no tolerance tells either', () => {
      const linkage = BENCH.replace(' ± 0.6 mm', '');
      const found = fitted(benchText({ ...one, fit, linkage }));
      expect(found.untold).toMatchObject([{ unknowns: [0, 1], shown: 1 }]);
      expect(turningWords(found.turning)).toEqual(['not checked: The curve rests on `link.length`, which these readings do not tell']);
    });

    test('which a tolerance leaves far too wide', () => {
      const linkage = BENCH.replace(' ± 0.6 mm', ' ± 9 mm');
      expect(turningWords(fitted(benchText({ ...one, fit, linkage })).turning)).toEqual([
        'not checked: The curve rests on `link.length`, which these readings do not tell closely enough',
      ]);
    });

    test('which places close together tell too loosely', () => {
      const linkage = BENCH.replace(' ± 0.6 mm', '');
      const found = fitted(benchText({ ...one, at: [50, 51, 52, 53], fit, linkage }));
      expect(turningWords(found.turning)).toEqual([
        'not checked: The curve rests on `link.length`, which these readings do not tell closely enough',
      ]);
    });

    test('but is told where what they leave open moves the curve by nothing', () => {
      const found = fitted(
        benchText({
          columns: ['pedal.travel', 'shaft.opening'],
          at: TEN,
          fit: ['crank.pivot.x', 'shaft.pivot.x'],
          noise: ['0.05 deg'],
          linkage: PAIR,
        }),
      );
      expect(found.dimensions.map(({ error }) => error)).toEqual([Infinity, Infinity]);
      expect(found.turning.kind).toBe('turn');
    });
  });

  test('where there are fewer readings than dimensions, though tolerances tell them too', () => {
    const linkage = BENCH.replace(' ± 0.6 mm', '').replace('slack: 1 mm', 'slack: 1 mm ± 0.3 mm');
    const few = { columns: ['pedal.travel', 'tps.signal'], fit: ['tps.at_closed', 'main.slack', 'link.length'], noise: ['0.004 V'] };
    const { settled, turning } = fitted(benchText({ ...few, at: [0, 60], linkage }));
    expect(settled).toBe(true);
    expect(turningWords(turning)).toEqual(['not checked: 2 readings cannot tell 3 dimensions']);
    expect(fitted(benchText({ ...few, at: [0, 20, 60, 80], linkage })).turning.kind).toBe('turn');
  });

  test('where the drawing itself has no value over part of the travel, which is no nearness', () => {
    // At 186 deg the pin of the crank stands 38 mm + √(90² + 10²) mm from the shaft: more than the 95.7 mm + 32 mm of rod and arm.
    const linkage = `format: 1
levers:
  crank: {pivot: [0, 0], arms: {out: {radius: 38 mm, angle: 120 deg}}}
  shaft: {pivot: [90, 10], arms: {arm: {radius: 32 mm, angle: 115 deg}}}
pedal: {lever: crank, opens: counterclockwise, travel: 66 deg}
rods:
  link: {from: crank.out, to: shaft.arm, length: 95.7 mm ± 0.5 mm, adjust: {min: 94 mm, max: 99 mm, pitch: 1 mm}}
plates:
  bank: {lever: shaft, bore: 42 mm, shaft: 8 mm, seat: 6 deg}
`;
    const blank = solve(linkage).table([0, 1], ['shaft.opening']).columns[0]!.values;
    expect(blank.map((value) => value === null || Number.isNaN(value))).toEqual([false, true]);
    const { turning } = fitted(
      benchText({
        columns: ['pedal.travel', 'shaft.opening'],
        at: [0, 2, 4, 6, 8, 10],
        fit: ['link.length'],
        noise: ['0.002 deg'],
        linkage,
      }),
    );
    expect(turningWords(turning)).toEqual([
      'not checked: The drawing itself gives shaft.opening no value somewhere along the travel: cure that first',
    ]);
  });

  test('more closely than the readings tell it, and says how closely where that is not as good as exact', () => {
    const loose = turned(
      benchText({ columns, at: [10, 40, 70], fit: ['link.length', 'shaft.stops.closed'], noise: ['0.05 V', '0.8 deg'] }),
    );
    const [{ error, isClose } = { error: 0, isClose: true }] = loose.known;
    expect([isClose, error > 0.1 * DEG, error < 0.5 * DEG]).toEqual([false, true, true]);
    expect(turningWords(loose)[1]).toBe(
      `the readings tell shaft.opening only to ± ${(error / DEG).toFixed(3)}°, one standard error at the worst place`,
    );
    const close = turned(benchText({ columns, at: TEN, fit: ['link.length', 'shaft.stops.closed'], noise }));
    expect(close.known.map((each) => each.isClose)).toEqual([true]);
    expect(turningWords(close).join()).not.toContain('the readings tell');
  });

  test('with that error as the curve scatters over fits of many draws of the noise', () => {
    const linkage = BENCH.replace(' ± 0.6 mm', '');
    const read = { columns: ['pedal.travel', 'shaft.opening'], at: [60, 65, 70, 75], fit: ['link.length'], noise: ['0.4 deg'], linkage };
    const stations = Array.from({ length: 101 }, (_, i) => i / 100);
    const curveOf = (link: number): readonly number[] =>
      solve(carText(BENCH, { 'rods.link.length': link }))
        .table(stations, ['shaft.opening'])
        .columns[0]!.values.map(Number);
    const drawn = curveOf(0.1105);
    const found = Array.from({ length: 40 }, (_, i) => fitted(benchText({ ...read, seed: i + 1 })));
    const curves = found.map(({ dimensions }) => curveOf(dimensions[0]!.value));
    const scatter = stations.map((_, i) => Math.sqrt(curves.reduce((sum, curve) => sum + (curve[i]! - drawn[i]!) ** 2, 0) / curves.length));
    const known = found.map(({ turning }) => (turning.kind === 'turn' ? turning.known[0]!.error / DEG : NaN));
    // Of 40 draws a scatter is known to 11 %; three times that.
    const ratio = known.reduce((sum, each) => sum + each, 0) / known.length / Math.max(...scatter);
    expect(ratio).toBeGreaterThan(0.67);
    expect(ratio).toBeLessThan(1.33);
  });

  test('but is where it does not', () => {
    const fit = fitted(benchText({ columns, at: TEN, fit: ['back.preload', 'link.length'], noise }));
    expect(fit.dimensions[0]!.error).toBe(Infinity);
    expect(fit.turning.kind).toBe('turn');
    // The closing torque rests on the spring, and it was held against the file's.
    expect(fitNotChecked(fit)).toContain(
      'what the file demands, as far as it rests on back.preload: not told, and taken as the file has it',
    );
  });
});

test('without plates and without a curve it is not checked, and says so', () => {
  const { turning } = fitted(benchText({ columns, at: TEN, fit: ['main.slack'], noise, linkage: BENCH.replace(/plates:\n.*\n/, '') }));
  expect(turningWords(turning)).toEqual(['not checked: The file has neither plates nor a `tune` curve: there is no curve to restore']);
});

/** Two levers and a rod, which can be moved as a whole without any difference. */
const PAIR = `format: 1
levers:
  crank: {pivot: [0 mm, 0], arms: {out: {radius: 38 mm, angle: 120 deg}}}
  shaft: {pivot: [90 mm, 10], arms: {arm: {radius: 32 mm, angle: 115 deg}}}
pedal: {lever: crank, opens: clockwise, travel: 60 deg}
rods:
  link: {from: crank.out, to: shaft.arm, length: 95.7 mm, adjust: {min: 94 mm, max: 99 mm, pitch: 1 mm}}
plates:
  bank: {lever: shaft, bore: 42 mm, shaft: 8 mm, seat: 6 deg}
`;
