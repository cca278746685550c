/** Findings about what varies and what may vary: tolerances that let a requirement fail, and free values on a bound. */
import { describe, expect, test } from 'vitest';
import { withFailures } from '../../src/outputs/withFailures.ts';
import { solve } from '../../src/solve.ts';
import type { Finding } from '../../src/findings/finding.ts';

/** A drum of radius r pulled by p opens by p / r: nothing else decides. */
function drum({ radius = '24 mm ± 0.3 mm', pull = '33.6 mm', demand = 'at(100%, shaft.opening) >= 79.5 deg' } = {}): string {
  return `format: 1
levers:
  shaft: {pivot: [100, 0], drums: {wheel: {radius: ${radius}, wraps: counterclockwise}}}
pedal: {cable: main, pull: ${pull}}
cables:
  main: {enters: [40, 24], to: shaft.wheel}
require:
  opens: ${demand}
`;
}

function told(text: string): readonly Pick<Finding, 'severity' | 'message'>[] {
  return withFailures(solve(text))
    .findings.filter(({ code }) => code === 'tolerance-fails-requirement')
    .map(({ severity, message }) => ({ severity, message }));
}

describe('tolerance-fails-requirement', () => {
  // 33.6 mm / 24 mm is 80.2141°; 33.6 / 24.3 is 79.2238°, by hand.
  test('is told where one dimension at an end of its tolerance is enough', () => {
    expect(told(drum())).toEqual([
      { severity: 'warning', message: '`opens` is met as drawn and not with levers.shaft.drums.wheel.radius at an end of its tolerance' },
    ]);
    expect(told(drum({ demand: 'at(100%, shaft.opening) >= 79.3 deg' }))).toHaveLength(1);
    expect(told(drum({ demand: 'at(100%, shaft.opening) >= 79.2 deg' }))).toEqual([]);
  });

  test('is a note where it takes all of them at once, since the root of the sum of squares is not enough', () => {
    // ± 0.2 mm of radius does 0.663°, ± 0.28 mm of pull the same: 1.32° with both, 0.94° by the root of the sum of squares.
    const both = { radius: '24 mm ± 0.2 mm', pull: '33.6 mm ± 0.28 mm' };
    const of = (least: string): string => drum({ ...both, demand: `at(100%, shaft.opening) >= ${least} deg` });
    expect(told(of('79.1'))).toEqual([{ severity: 'note', message: expect.stringContaining('all tolerances against it') as string }]);
    expect(told(of('79.4'))).toEqual([{ severity: 'warning', message: expect.stringContaining('all tolerances against it') as string }]);
    expect(told(of('78.8'))).toEqual([]);
  });

  test('is not told of what fails as drawn, of another way that is open, of what acts, and without tolerances', () => {
    expect(told(drum({ demand: 'at(100%, shaft.opening) >= 81 deg' }))).toEqual([]);
    expect(told(drum({ demand: 'at(100%, shaft.opening) >= 79.5 deg or at(100%, shaft.opening) >= 70 deg' }))).toEqual([]);
    expect(told(drum({ radius: '24 mm' }))).toEqual([]);
    const pressed = `${drum({ demand: 'at(50%, pedal.effort) <= 18.4 N' })}springs: {close: {lever: shaft, preload: 400 N*mm, rate: 1 N*mm/deg}}\n`;
    expect(solve(pressed).requirements[0]!.outcome).toBe('passed');
    expect(told(pressed)).toEqual([]);
  });

  test('is worked out with the failures where those are worked out in pieces, one build of the linkage in each', () => {
    const steps = (text: string): number => [...solve(text).failures()!.work('closing')].length;
    // Two ends of each of two dimensions, then one line with all of them at once.
    expect(steps(drum({ pull: '33.6 mm ± 0.28 mm' })) - steps(drum({ radius: '24 mm' }))).toBe(5);
    const answers = solve(drum());
    const last = [...answers.failures()!.work('closing')].at(-1)!;
    expect(last.done).toBe(last.all);
    expect([...answers.failures()!.work('closing')].length).toBeLessThan(steps(drum()));
    expect(answers.failures()!.late.map(({ code }) => code)).toContain('tolerance-fails-requirement');
  });
});

describe('free-on-bound', () => {
  const file = (reach: string, bounds = '{from: 20 mm, to: 40 mm}'): string => `format: 1
let: {reach: ${reach}}
levers:
  shaft: {pivot: [100, 0], drums: {wheel: {radius: reach, wraps: counterclockwise}}}
pedal: {cable: main, pull: 30 mm}
cables:
  main: {enters: [40, 40], to: shaft.wheel}
tune: {free: {reach: ${bounds}}, curve: {of: shaft.opening, through: [[0 %, 0 deg], [100 %, 42 deg]]}}
`;
  const found = (text: string): readonly string[] =>
    solve(text)
      .findings.filter(({ code }) => code === 'free-on-bound')
      .map(({ message }) => message);

  test('is told of a value on either bound and of no other', () => {
    expect(found(file('40 mm'))[0]).toContain('stands on 40 mm, the greatest');
    expect(found(file('20 mm'))[0]).toContain('stands on 20 mm, the least');
    expect(found(file('4 cm'))).toHaveLength(1);
    for (const inside of ['39.9 mm', '20.1 mm', '30 mm', '41 mm', '19 mm']) expect(found(file(inside))).toEqual([]);
  });

  test('has nothing to say of bounds that are not understood', () => {
    expect(found(file('40 mm', '{from: 40 mm, to: 20 mm}'))).toEqual([]);
  });
});
