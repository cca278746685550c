/** Springs of the textbooks, each hung on a lever of a throttle file and its load read back from the column of its torque. */
import { describe, expect, it } from 'vitest';
import { solve, type Answers } from '../../src/solve.ts';
import { DEG, expectFigure } from './support/check.ts';
import { quantity } from './support/fourBarFile.ts';
import { readColumn } from './support/offTheTable.ts';
import { extensionRows, type ExtensionRow } from './values/springs.ts';

const MM = { mm: 1, inch: 25.4 } as const;
/** Exact: 0.45359237 kg at 9.80665 m/s². */
const NEWTON = { N: 1, lbf: 0.45359237 * 9.80665 } as const;

describe.each(extensionRows)('$name', (spring) => {
  it.each(spring.rows)('at %d it pulls %d', (length, load, decimals) => {
    expectFigure(loadAt(spring, length), load, decimals, 'load');
  });

  it('has the rate given between its first and last load', () => {
    const [first, last] = [spring.rows[0]![0], spring.rows.at(-1)![0]];
    const [rate, decimals] = spring.between;
    expectFigure((loadAt(spring, last) - loadAt(spring, first)) / (last - first), rate, decimals, 'rate');
  });

  it('is loose when shorter', () => {
    expect(loadAt(spring, 0.999 * spring.freeLength)).toBe(0);
  });
});

/** The lever's arm, in the row's unit of length, of every file. */
const ARM = 1;
/** The fixed end's distance from the pivot, in arms. */
const AWAY = 0.75;

/** Load at a length between the ends, from the torque of a lever turned until the spring is so long. */
function loadAt(spring: ExtensionRow, length: number): number {
  // A triangle of pivot, fixed end and pin: the arm is as long as it takes to reach the greatest length asked for.
  const arm = spring.freeLength * ARM + spring.rows.at(-1)![0];
  const away = spring.freeLength * AWAY + arm;
  const shortest = 0.9 * spring.freeLength;
  const angleAt = (l: number): number => Math.acos((arm ** 2 + away ** 2 - l ** 2) / (2 * arm * away));
  const start = angleAt(shortest);
  const turn = angleAt(length) - start;
  const answers = answersOf(spring, arm, away, start, turn);
  const torque = readColumn(answers, 'only.torque', 1) ?? NaN;
  // Twice the triangle's area over its side is the arm on which the spring works.
  const leverage = (arm * away * Math.sin(start + turn)) / length;
  return torque / (leverage * MM[spring.unit.length]) / NEWTON[spring.unit.force];
}

function answersOf(
  { unit, rate, freeLength, initialTension }: ExtensionRow,
  arm: number,
  away: number,
  start: number,
  turn: number,
): Answers {
  const answers = solve(`format: 1
levers:
  shaft: {pivot: [0, 0], arms: {hook: {radius: ${quantity(arm, unit.length)}, angle: ${quantity(start / DEG, 'deg')}}}}
pedal: {lever: shaft, opens: counterclockwise, travel: ${quantity(turn / DEG, 'deg')}}
springs:
  only: {from: ['${quantity(away, unit.length)}', 0], to: shaft.hook, rate: ${quantity(rate, unit.rate)}, free_length: ${quantity(freeLength, unit.length)}, initial_tension: ${quantity(initialTension, unit.force)}}
`);
  if (answers.problems.length > 0) throw new Error(JSON.stringify(answers.problems));
  return answers;
}
