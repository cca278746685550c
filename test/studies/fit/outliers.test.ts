/** Readings that do not go with the others are named, wherever they stand and however they pull; all others are not. */
import { describe, expect, test } from 'vitest';
import { solve } from '../../../src/solve.ts';
import { farthest } from '../../../src/studies/fit/outliers.ts';
import { benchText, fitted, TEN } from './bench.ts';

const AT = [0, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95];
const COLUMNS = ['pedal.travel', 'tps.signal', 'shaft.opening'];
const NOISE = ['0.004 V', '0.1 deg'];
const FIT = ['link.length', 'tps.at_closed', 'main.slack', 'crank.out.radius'];
const car = { 'rods.link.length': 0.1107, 'sensors.tps.at_closed': (12.6 * Math.PI) / 180, 'cables.main.slack': 1.3e-3 };

const base = { columns: COLUMNS, at: AT, car, fit: FIT, noise: NOISE };
const accused = (text: string): string[] =>
  fitted(text)
    .readings.filter(({ verdict }) => verdict === 'off')
    .map(({ row, column }) => `${row} ${column}`);

describe('one wrong reading', () => {
  // At the ends and in the middle, of either column, of either sign: ten noises, less than a slip of a digit.
  test.each([
    ['0:0', 0.04],
    ['1:1', -1],
    ['9:0', 0.04],
    ['9:1', 1],
    ['19:0', -0.04],
    ['19:1', 1],
    ['10:0', 1],
    ['4:1', -30],
  ] as const)('at %s by %d is named, and no other', (where, by) => {
    const [row = '', column = ''] = where.split(':');
    const text = benchText({ ...base, off: { [where]: by } });
    expect(accused(text)).toEqual([`${Number(row) + 1} ${COLUMNS[Number(column) + 1]}`]);
    // What is found is then as without it.
    const { dimensions, readings } = fitted(text);
    dimensions.slice(0, 3).forEach(({ value, error }, i) => expect(Math.abs(value - Object.values(car)[i]!)).toBeLessThan(3.5 * error));
    const own = readings.find(({ verdict }) => verdict === 'off')!;
    const { span } = own;
    expect(text.slice(span.start, span.end)).toMatch(own.column === 'tps.signal' ? / V$/ : / deg$/);
  });
});

test.each([
  [{ '18:0': 0.05, '19:0': 0.05 }, ['19 tps.signal', '20 tps.signal']],
  [{ '17:1': 2, '18:1': 2, '19:1': 2 }, ['18 shaft.opening', '19 shaft.opening', '20 shaft.opening']],
  [{ '0:0': 0.08, '1:0': 0.08, '2:0': 0.08, '10:1': -3 }, ['1 tps.signal', '2 tps.signal', '3 tps.signal', '11 shaft.opening']],
])('several that pull the same way do not hide each other: %j', (off, wanted) => {
  expect(accused(benchText({ ...base, off }))).toEqual(wanted);
});

test('readings that are as their noise says are not accused', () => {
  let count = 0;
  for (let seed = 1; seed <= 40; seed++) count += accused(benchText({ ...base, seed })).length > 0 ? 1 : 0;
  // One set in a hundred is what the limit allows; four and more of 40 have a chance of one in a thousand then.
  expect(count).toBeLessThan(4);
});

test('readings that all scatter three times as far as their noise says are told so, and not accused one by one', () => {
  // Written as a third of what they scatter by.
  const text = benchText(base).replace(
    'noise: {tps.signal: 0.004 V, shaft.opening: 0.1 deg}',
    'noise: {tps.signal: 0.0013 V, shaft.opening: 0.033 deg}',
  );
  const { columns } = fitted(text);
  expect(columns.map(({ isNoisy }) => isNoisy)).toEqual([true, true]);
  for (const { scatter } of columns) expect(scatter).toBeGreaterThan(2);
  expect(accused(text)).toEqual([]);
});

test('where more are wrong than single slips, none is accused: it is said that all scatter', () => {
  // Every second of one column: as many against as for.
  const off = Object.fromEntries(AT.flatMap((_, i) => (i % 2 === 0 ? [[`${i}:0`, 0.3 + 0.1 * (i % 3)]] : [])));
  const wrong = { ...off, '1:1': 9, '5:1': -9, '9:1': 9, '13:1': -9 };
  const text = benchText({ ...base, off: wrong });
  const { columns } = fitted(text);
  expect(accused(text)).toEqual([]);
  expect(columns.map(({ isNoisy }) => isNoisy)).toEqual([true, true]);
});

test('a reading that alone tells a dimension cannot be held against anything, and is told so', () => {
  const text = benchText({ columns: COLUMNS, at: TEN, car, fit: ['tps.at_closed', 'link.length'], noise: NOISE }).replace(
    /(\[(?!50 )\d+ %, )[^,]+ V/g,
    '$1~',
  );
  const { readings } = fitted(text);
  expect(readings.filter(({ verdict }) => verdict === 'unheld').map(({ row, column }) => `${row} ${column}`)).toEqual(['6 tps.signal']);
  expect(solve(text).problems).toEqual([]);
});

test('how far is too far: the chance of any of so many being farther is one in a hundred at most', () => {
  // Two-sided tails of the normal law from tables, from memory: 3.29053 for 0.001, 3.89059 for 0.0001, 4.41717 for 0.00001.
  for (const [count, z] of [
    [10, 3.29053],
    [100, 3.89059],
    [1000, 4.41717],
  ] as const) {
    expect(farthest(count)).toBeGreaterThan(z);
    expect(farthest(count)).toBeLessThan(z * 1.02);
  }
});
