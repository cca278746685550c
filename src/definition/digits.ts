/** How many digits a figure is shown with, so that the same figure reads the same wherever it is told. */
import type { FigureDimension } from './dimensions.ts';

/** Digits behind the point. @param shown the figure in the unit of its place, e.g. mm or degrees */
export function digitsFor(shown: number, dimension: FigureDimension): number {
  const size = Math.abs(shown);
  const digits = DIGITS[dimension] + (size < 10 && dimension !== 'length' && dimension !== 'number' ? 1 : 0);
  // A small figure keeps two digits that say something, so that it never reads as nothing.
  if (size <= NOTHING || size >= 10 ** -digits) return digits;
  return Math.min(MOST_DIGITS, 1 - Math.floor(Math.log10(size)));
}

/** Digits behind the point of a whole figure, in the place's unit. */
const DIGITS: Readonly<Record<FigureDimension, number>> = {
  number: 2,
  length: 2,
  area: 0,
  angle: 1,
  force: 1,
  torque: 0,
  'linear-rate': 2,
  'torsional-rate': 2,
  inertia: 1,
  voltage: 2,
  pressure: 1,
  'angle-per-length': 2,
  energy: 2,
  time: 2,
  'angular-speed': 0,
};

/** Below this, in the place's unit, what is left is rounding of the computation. */
const NOTHING = 1e-9;
const MOST_DIGITS = 6;
