/** Where a curve given by its slopes begins and ends: at the plates' closed and full opening, however far the file opens them. */
import { expect, test } from 'vitest';
import { solve } from '../../../src/solve.ts';
import { endsOf } from '../../../src/studies/tune/setting.ts';
import { slopesOf } from './slopes.ts';

const DEG = Math.PI / 180;
/** Open area of a thin plate by its angle from square to the bore (Heywood, Internal Combustion Engine Fundamentals, ch. 7, from memory). */
const fraction = (angleDeg: number): number => 1 - Math.cos(angleDeg * DEG) / Math.cos(6 * DEG);
const near = (value: number): unknown => expect.closeTo(value, 12);

test.each([
  ['', 90],
  [', stops: {closed: 0 deg, open: 60 deg}', 67.5],
])('of area and fraction they are what the plates let through closed and fully open%s', (stops, fullDeg) => {
  const ends = (column: string) => {
    const text = slopesOf(column).replace('angle: 115 deg}}', `angle: 115 deg}}${stops}`);
    const { study } = solve(text);
    return endsOf(study!, column);
  };
  const bore = (Math.PI / 4) * 0.045 ** 2;
  expect(ends('bank.fraction')).toEqual({
    closed: near(fraction(7.5)),
    full: near(fraction(fullDeg)),
    isFound: false,
  });
  expect(ends('bank.area')).toEqual({
    closed: near(bore * fraction(7.5)),
    full: near(bore * fraction(fullDeg)),
    isFound: false,
  });
});
