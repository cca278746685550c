import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';
import type { Finding } from '../../src/findings/finding.ts';

const DEGREE = Math.PI / 180;

/** A shaft with a 20 mm drum at the origin; its cable comes straight in along y = 20 or y = −20. */
function rest(options: {
  readonly wraps: string;
  readonly y: number;
  readonly slack: number;
  readonly movement: string;
}): Finding | undefined {
  const { findings, problems } = solve(`format: 1
levers:
  shaft: {pivot: [0, 0], opens: ${options.wraps}, drums: {wheel: {radius: 20, wraps: ${options.wraps}, groove: 120}}, stops: {open: 80}}
pedal: {cable: main, pull: 28}
cables: {main: {to: shaft.wheel, enters: [-100, ${options.y}], slack: ${options.slack}}}
plates: {bank: {lever: shaft, bore: 45, idle: 2, seat: 6}}
movements: {rock: ${options.movement}}
`);
  expect(problems).toEqual([]);
  return findings.find(({ code }) => code === 'movement-at-rest');
}

describe('a movement of the engine', () => {
  it('opens a shaft by what its drum is carried away from the housing end, less the slack', () => {
    for (const [wraps, y] of [
      ['counterclockwise', 20],
      ['clockwise', -20],
    ] as const) {
      const straight = rest({ wraps, y, slack: 0, movement: '{moves: [shaft], shift: [3, 0]}' });
      expect(straight?.worst?.value, wraps).toBeCloseTo(3 / 20, 10);
      const loose = rest({ wraps, y, slack: 1, movement: '{moves: [shaft], shift: [3, 0]}' });
      expect(loose?.worst?.value, wraps).toBeCloseTo(2 / 20, 10);
      expect(rest({ wraps, y, slack: 4, movement: '{moves: [shaft], shift: [3, 0]}' }), wraps).toBeUndefined();
      expect(rest({ wraps, y, slack: 0, movement: '{moves: [shaft], shift: [-3, 0]}' }), wraps).toBeUndefined();
    }
  });

  it('counts the wrap: a shaft carried sideways by the law of the tangent', () => {
    const up = rest({ wraps: 'counterclockwise', y: 20, slack: 0, movement: '{moves: [shaft], shift: [0, 10]}' });
    // The drum's centre stands 10 higher: the tangent from (−100, 20) to the circle of 20 about (0, 10).
    const distance = Math.hypot(100, 10);
    const free = Math.sqrt(distance ** 2 - 20 ** 2);
    const rim = Math.atan2(10, -100) - Math.acos(20 / distance);
    const gained = free - 100 + 20 * (rim - Math.PI / 2);
    expect(Math.abs(up?.worst?.value ?? 0)).toBeCloseTo(Math.max(0, gained / 20), 10);
    const down = rest({ wraps: 'counterclockwise', y: 20, slack: 0, movement: '{moves: [shaft], shift: [0, -10]}' });
    const lower = Math.hypot(100, 30);
    const more = Math.sqrt(lower ** 2 - 20 ** 2) - 100 + 20 * (Math.atan2(30, -100) - Math.acos(20 / lower) - Math.PI / 2);
    expect(down?.worst?.value ?? 0).toBeCloseTo(Math.max(0, more / 20), 10);
  });

  it('pulls by the turn of a shaft against its housing end, and not by one that both share', () => {
    // Turned back by 5° with its stop, the drum winds on 20 mm × 5° of cable.
    const back = rest({ wraps: 'counterclockwise', y: 20, slack: 0, movement: '{moves: [shaft], turn: -5 deg, about: [0, 0]}' });
    expect(back?.worst?.value).toBeCloseTo(5 * DEGREE, 10);
    expect(
      rest({ wraps: 'counterclockwise', y: 20, slack: 0, movement: '{moves: [shaft, main.enters], turn: -5 deg, about: [30, 40]}' }),
    ).toBeUndefined();
  });
});
