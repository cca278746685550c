/** Springs: each finding with linkages that must raise it, its figures by hand, and near ones that must not. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';
import { checkFindings } from '../support/checkFindings.ts';
import { markedAll, markedAt } from '../support/markedAt.ts';
import { FULL, leastOver, onShaft, STEADY, together, torqueAt, TWO, written, type Hung } from './hungSprings.ts';
import { bisect, degrees, distance, polar } from './handGeometry.ts';

const STRONG = ['one: {lever: shaft, rate: 3 N*mm/deg, preload: 900 N*mm}', 'two: {lever: shaft, rate: 3 N*mm/deg, preload: 900 N*mm}'];

describe('a spring that opens', () => {
  // The arm never comes into its line: the spring draws it on all the way.
  const wrong: Hung = { anchor: [60, 60], angle: 0, rate: 0.5, free: 20 };

  it('is an error where it counts as return and its torque comes to plates', () => {
    const { only } = checkFindings(
      markedAt(onShaft([...STRONG, written('tail', wrong)]), '  |tail|: {from', 'error[spring-opens]: tail opens shaft from 0 % to 100 %'),
    );
    expect(only('spring-opens').worst?.value).toBeCloseTo(leastOver((opening) => torqueAt(wrong, opening)) / 1000, 8);
    expect(only('spring-opens').ranges).toEqual([{ from: 0, to: 1 }]);
    expect(only('spring-opens').mend).toBeUndefined();
  });

  it('is a warning where it is not meant to close, or no plates are closed by its lever', () => {
    const helper = written('tail', wrong).replace('}', ', counts_as_return: false}');
    checkFindings(markedAt(onShaft([...STRONG, helper]), '  |tail|: {from', 'warning[spring-opens]'));
    checkFindings(markedAt(onShaft([...STRONG, written('tail', wrong)], { plates: '' }), '  |tail|: {from', 'warning[spring-opens]'));
  });

  it('is none where it hangs on the other side of the pivot', () => {
    checkFindings(onShaft([...STRONG, written('tail', { ...wrong, anchor: [80, -60] })], { angle: 0 }));
  });

  it('can be a torsion spring wound the wrong way, up to where it is wound back', () => {
    const text = onShaft([...STRONG, 'three: {lever: shaft, rate: 2 N*mm/deg, preload: -40 N*mm}']);
    const { only } = checkFindings(
      markedAt(text, '  |three|: {', 'error[spring-opens]: three opens shaft from 0 % to 33.3 % of pedal travel, by up to 40 N·mm at 0 %'),
    );
    expect(only('spring-opens').ranges?.[0]?.to).toBeCloseTo(20 / FULL, 9);
    expect(only('spring-opens').mend).toEqual({ unknown: 'springs.three.preload', outcome: { kind: 'itself' }, target: 0.04 });
    checkFindings(onShaft([...STRONG, 'three: {lever: shaft, rate: 2 N*mm/deg, preload: 40 N*mm}']));
  });

  const between = (out: number): string => `format: 1
levers:
  shaft: {pivot: [100, 0], arms: {tail: {radius: 20, angle: 270}}, drums: {wheel: {radius: 24, wraps: counterclockwise}}, stops: {closed: 0 deg, open: 60 deg}}
  other: {pivot: [160, 0], arms: {end: {radius: 20, angle: ${out}}}}
pedal: {cable: main, pull: 25.13 mm}
cables: {main: {enters: [40, 24], to: shaft.wheel}}
couplings: {gear: {from: shaft, to: other, ratio: 2}}
plates: {bank: {lever: shaft, bore: 40, seat: 6 deg, idle: 1.5 deg}}
springs:
  one: {lever: shaft, rate: 3 N*mm/deg, preload: 1900 N*mm}
  two: {lever: shaft, rate: 3 N*mm/deg, preload: 1900 N*mm}
  pair: {from: other.end, to: shaft.tail, rate: 0.5 N/mm, free_length: 20 mm}
`;

  it('is told of both its levers together where they turn together', () => {
    // The spring's length by the opening: what shortens it as the shaft opens opens the shaft, whatever it does to either lever alone.
    const length = (out: number, opening: number): number =>
      distance(polar([100, 0], 20, 270 + opening), polar([160, 0], 20, out + 2 * opening));
    const slope = (out: number, opening: number): number =>
      (length(out, opening + 1e-4) - length(out, opening - 1e-4)) / (2e-4 * (Math.PI / 180));
    const closing = (out: number, opening: number): number => 0.5 * Math.max(0, length(out, opening) - 20) * slope(out, opening);
    expect(leastOver((opening) => closing(30, opening))).toBeLessThan(-1);
    const { only } = checkFindings(markedAt(between(30), '  |pair|: {', 'error[spring-opens]: pair opens shaft'));
    expect(only('spring-opens').worst?.value).toBeCloseTo(leastOver((opening) => closing(30, opening)) / 1000, 6);
    expect(leastOver((opening) => closing(220, opening))).toBeGreaterThan(0);
    checkFindings(between(220));
  });
});

describe('a spring past its dead centre', () => {
  // The anchor stands straight above the pivot: far dead centre with the arm straight down.
  const hung = (angle: number): Hung => ({ anchor: [100, 60], angle, rate: 0.5, free: 40 });

  it.each([240, 225, 269])('is found where its line meets the axis, with the arm drawn at %d°', (angle) => {
    const text = onShaft([...STRONG, written('tail', hung(angle))], { angle });
    const at = (270 - angle) / FULL;
    const percent = `${Number((100 * at).toFixed(1))} %`;
    const { only } = checkFindings(
      markedAt(
        text,
        '  |tail|: {from',
        `error[spring-dead-centre]: tail passes its dead centre at ${percent} of pedal travel and opens shaft from ${percent} to 100 %`,
      ),
    );
    const { ranges, worst } = only('spring-dead-centre');
    expect(ranges?.[0]?.from).toBeCloseTo(at, 9);
    expect(worst?.value).toBeCloseTo(leastOver((opening) => torqueAt(hung(angle), opening)) / 1000, 8);
  });

  it('is none where the travel ends just before, and where the arm starts just beyond the near one', () => {
    checkFindings(onShaft([...STRONG, written('tail', hung(209.9))], { angle: 209.9 }));
    checkFindings(onShaft([...STRONG, written('tail', hung(90.1))], { angle: 90.1 }));
  });

  it('says up to where it opens with the near dead centre on its way', () => {
    const { only } = checkFindings(
      markedAt(
        onShaft([...STRONG, written('tail', { ...hung(60), free: 20 })], { angle: 60 }),
        '  |tail|: {from',
        'error[spring-dead-centre]: at 50 % of pedal travel and opens shaft from 0 % to 50 %',
      ),
    );
    expect(only('spring-dead-centre').ranges?.[0]?.to).toBeCloseTo(30 / FULL, 9);
  });

  it('is a warning on a pedal behind a cable', () => {
    const text = (angle: number): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {hook: {radius: 40, angle: ${angle}}}, drums: {wheel: {radius: 60, wraps: counterclockwise}}}
  shaft: {pivot: [300, 0], drums: {wheel: {radius: 24, wraps: clockwise}}, stops: {open: 60 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 23.99 deg}
cables: {main: {from: pedal.wheel, leaves: [80, 60], enters: [240, 24], to: shaft.wheel}}
plates: {bank: {lever: shaft, bore: 40, seat: 6 deg, idle: 1.5 deg}}
springs:
  one: {lever: shaft, rate: 2 N*mm/deg, preload: 300 N*mm}
  two: {lever: shaft, rate: 2 N*mm/deg, preload: 300 N*mm}
  foot: {from: [0, 90], to: pedal.hook, rate: 0.5 N/mm, free_length: 40 mm}
`;
    const { only } = checkFindings(markedAt(text(255), '  |foot|: {', 'warning[spring-dead-centre]'));
    expect(only('spring-dead-centre').ranges?.[0]?.from).toBeCloseTo(15 / 23.99, 9);
    checkFindings(text(240));
  });

  it('is found between two stations, where a compression spring works only about its near dead centre', () => {
    // At its nearest the pin is 0.00005 mm nearer than without load: it works over a tenth of a degree to either side, within one step of the grid.
    const free = 40 + 5e-5;
    const text = (rate: number): string =>
      onShaft([...TWO, `push: {from: [100, 60], to: shaft.tail, kind: compression, rate: ${rate} N/mm, free_length: ${free} mm}`], {
        angle: 59.87,
      });
    const { only } = checkFindings(
      markedAll(text(9000), [
        ['  |push|: {', 'error[spring-dead-centre]: push passes its dead centre at 50.2 %'],
        [`free_length: |${free} mm|`, 'warning[spring-slack]: push is slack'],
      ]),
    );
    const [range] = only('spring-dead-centre').ranges ?? [];
    expect(range?.from).toBeCloseTo(30.13 / FULL, 9);
    expect((range?.to ?? 1) - (range?.from ?? 0)).toBeLessThan(1 / 200);
  });

  it('of a spring between two levers of different bodies is told of the lever that it opens', () => {
    const text = (angle: number): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {hook: {radius: 40, angle: ${angle}}}, drums: {wheel: {radius: 60, wraps: counterclockwise}}}
  shaft: {pivot: [300, 0], arms: {tail: {radius: 30, angle: 90}}, drums: {wheel: {radius: 24, wraps: clockwise}}, stops: {open: 60 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 23.99 deg}
cables: {main: {from: pedal.wheel, leaves: [80, 60], enters: [240, 24], to: shaft.wheel}}
plates: {bank: {lever: shaft, bore: 40, seat: 6 deg, idle: 1.5 deg}}
springs:
  one: {lever: shaft, rate: 2 N*mm/deg, preload: 300 N*mm}
  two: {lever: shaft, rate: 2 N*mm/deg, preload: 300 N*mm}
  across: {from: pedal.hook, to: shaft.tail, rate: 0.1 N/mm, free_length: 150 mm}
`;
    checkFindings(markedAt(text(180), '  |across|: {', 'warning[spring-dead-centre]: across passes its dead centre at'));
    checkFindings(text(120));
  });
});

describe('a slack spring', () => {
  const loose: Hung = { anchor: [40, 0], angle: 240, rate: 0.5, free: 55 };

  it('is told of over the stretch in which it is shorter than without load, with the length that mends it', () => {
    const text = onShaft([...TWO, written('tail', loose)]);
    const { only } = checkFindings(markedAt(text, 'free_length: |55 mm|', 'warning[spring-slack]: tail is slack from 0 % to'));
    const length = (opening: number): number => distance(loose.anchor, polar([100, 0], 20, 240 + opening));
    const { worst, ranges, limit, mend } = only('spring-slack');
    expect(worst?.value).toBeCloseTo(length(0) / 1000, 10);
    expect(ranges?.[0]?.to).toBeCloseTo(bisect((opening) => length(opening) - 55, 0, 60) / FULL, 5);
    expect(limit?.value).toBeCloseTo(0.055, 12);
    expect(mend?.unknown).toBe('springs.tail.free_length');
    expect(mend?.target).toBeCloseTo(length(0) / 1000 - 1e-5, 9);
    checkFindings(onShaft([...TWO, written('tail', { ...loose, free: 52.9 })]));
  });

  it('is told of where initial tension would hold it, too', () => {
    checkFindings(markedAt(onShaft([...TWO, written('tail', { ...loose, tension: 4 })]), 'free_length: |55 mm|', 'warning[spring-slack]'));
    checkFindings(onShaft([...TWO, written('tail', { ...loose, free: 52, tension: 4 })]));
  });

  it('can be slack all the way', () => {
    checkFindings(
      markedAt(
        onShaft([...TWO, written('tail', { ...loose, free: 90 })]),
        'free_length: |90 mm|',
        'warning[spring-slack]: from 0 % to 100 %',
      ),
    );
  });

  it('is in compression one that is longer than without load', () => {
    const push = (free: number): string =>
      onShaft([...TWO, `push: {from: [150, -60], to: shaft.tail, kind: compression, rate: 0.4 N/mm, free_length: ${free} mm}`]);
    const length = (opening: number): number => distance([150, -60], polar([100, 0], 20, 240 + opening));
    const greatest = -leastOver((opening) => -length(opening));
    const { only } = checkFindings(markedAt(push(65), 'free_length: |65 mm|', 'warning[spring-slack]: push is slack'));
    expect(only('spring-slack').worst?.value).toBeCloseTo(greatest / 1000, 8);
    checkFindings(push(Number((greatest + 0.1).toFixed(2))));
  });
});

describe('what counts as return', () => {
  it('is an error where no spring reaches the plates across a cable', () => {
    const text = (springs: string): string => `format: 1
levers:
  pedal: {pivot: [0, 0], drums: {wheel: {radius: 60, wraps: counterclockwise}}}
  shaft: {pivot: [300, 0], drums: {wheel: {radius: 24, wraps: clockwise}}, stops: {open: 60 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 23.99 deg}
cables: {main: {from: pedal.wheel, leaves: [80, 60], enters: [240, 24], to: shaft.wheel}}
plates: {bank: {lever: shaft, bore: 40, seat: 6 deg, idle: 1.5 deg}}
springs:
${springs}`;
    const pedal =
      '  foot: {lever: pedal, rate: 4 N*mm/deg, preload: 900 N*mm}\n  heel: {lever: pedal, rate: 4 N*mm/deg, preload: 900 N*mm}\n';
    const { only } = checkFindings(
      markedAt(text(pedal), '{|bank|: {', 'error[no-return-spring]: No return spring closes shaft: no spring of the file can reach it'),
    );
    expect(only('no-return-spring').related?.map(({ message }) => message)[0]).toContain('foot works on pedal');
    const one = `${pedal}  one: {lever: shaft, rate: 2 N*mm/deg, preload: 300 N*mm}\n`;
    checkFindings(markedAt(text(one), '  |one|: {', 'warning[single-return-spring]: one is the only return spring that closes shaft'));
    checkFindings(text(`${one}  two: {lever: shaft, rate: 2 N*mm/deg, preload: 300 N*mm}\n`));
  });

  it('leaves out a spring that says it does not count', () => {
    const sensor = 'in_sensor: {lever: shaft, rate: 0.2 N*mm/deg, preload: 10 N*mm, counts_as_return: false}';
    const none = checkFindings(
      markedAt(onShaft([sensor]), '{|bank|: {', 'error[no-return-spring]: the springs that reach it do not count as return'),
    );
    expect(none.only('no-return-spring').related).toHaveLength(1);
    const { only } = checkFindings(
      markedAt(onShaft([STEADY, sensor]), '  |one|: {lever', 'warning[single-return-spring]: where it breaks, nothing does'),
    );
    expect(only('single-return-spring').limit).toMatchObject({ value: 2, dimension: 'number' });
    expect(only('single-return-spring').limit?.from).toContain('IC.3.3.2');
    checkFindings(onShaft([...TWO, sensor]));
  });

  const joined = (coupling: string, springs: string): string => `format: 1
levers:
  crank: {pivot: [0, 0]}
  shaft: {pivot: [100, 0], stops: {open: 60 deg}}
pedal: {lever: crank, opens: counterclockwise, travel: 60 deg}
couplings: {push: {from: crank, to: shaft${coupling}}}
plates: {bank: {lever: shaft, bore: 40, seat: 6 deg, idle: 1.5 deg}}
springs:
${springs}`;
  const onCrank =
    '  one: {lever: crank, rate: 2 N*mm/deg, preload: 300 N*mm}\n  two: {lever: crank, rate: 2 N*mm/deg, preload: 300 N*mm}\n';

  it('does not come through a coupling that only pushes open', () => {
    checkFindings(joined('', onCrank));
    checkFindings(markedAt(joined(', one_way: true', onCrank), '{|bank|: {', 'error[no-return-spring]'));
    checkFindings(joined(', one_way: true', onCrank.replaceAll('lever: crank', 'lever: shaft')));
  });

  it('is said once of shafts that close together', () => {
    const text = (second: string): string =>
      together(`  one: {lever: rear, rate: 2 N*mm/deg, preload: 300 N*mm}
${second}`);
    checkFindings(
      markedAt(text(''), '  |one|: {', 'warning[single-return-spring]: one is the only return spring that closes front and rear'),
    );
    checkFindings(text('  two: {lever: front, rate: 2 N*mm/deg, preload: 300 N*mm}\n'));
  });
});

describe('any spring from a place to the arm', () => {
  const hung = fc.record({
    anchor: fc.tuple(fc.integer({ min: 40, max: 160 }), fc.integer({ min: -70, max: 70 })),
    angle: fc.integer({ min: 0, max: 359 }),
    rate: fc.constant(0.5),
    free: fc.integer({ min: 15, max: 65 }),
    tension: fc.integer({ min: 0, max: 5 }),
  });

  it('is told of as a scan by hand has it: where it opens, whether past a dead centre, and whether it is slack', () => {
    let [opened, crossed, loose] = [0, 0, 0];
    const check = (each: Hung): void => {
      const text = onShaft([...STRONG, written('tail', each)], { angle: each.angle });
      const found = solve(text).findings.filter(({ part }) => part === 'tail');
      const said = found.find(({ code }) => code === 'spring-opens' || code === 'spring-dead-centre');
      const least = leastOver((opening) => torqueAt(each, opening));
      if (least < -0.01) {
        opened++;
        // A scan misses the least by its step at most, where a spring with initial tension takes hold.
        expect(said?.worst?.value, text).toBeLessThanOrEqual(least / 1000 + 1e-9);
        expect(said?.worst?.value, text).toBeGreaterThan(least / 1000 - 1e-4);
      } else if (least > -1e-4) expect(said, text).toBeUndefined();
      // Its line meets the axis where the arm points to the anchor or away from it.
      const toAnchor = degrees(Math.atan2(each.anchor[1], each.anchor[0] - 100));
      const meets = [0, 180].map((half) => (((toAnchor + half - each.angle) % 360) + 360) % 360).filter((at) => at > 0 && at < FULL);
      if (said !== undefined) expect(said.code, text).toBe(meets.length > 0 ? 'spring-dead-centre' : 'spring-opens');
      if (said !== undefined && meets.length > 0) crossed++;
      const shortest = leastOver((opening) => distance(each.anchor, polar([100, 0], 20, each.angle + opening)));
      fc.pre(Math.abs(shortest - each.free) > 1e-5 && meets.every((at) => at > 1e-3 && at < FULL - 1e-3));
      if (shortest < each.free) loose++;
      const slack = found.some(({ code }) => code === 'spring-slack');
      expect(slack, text).toBe(shortest < each.free);
    };
    fc.assert(fc.property(hung, check), { numRuns: 150 });
    expect(Math.min(opened, crossed, loose)).toBeGreaterThan(20);
  });
});
