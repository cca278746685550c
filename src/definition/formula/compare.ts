/**
 * Comparisons as the file means them: two values closer than 1e-9 of the greater, or than a floor that is below
 * anything a workshop can make or measure, are equal. So a figure that was solved for and rounded passes the
 * requirement that it was solved for.
 */
import type { Dimension } from '../dimensions.ts';
import type { BinaryOperator } from './formula.ts';
import { dimensionOfKind } from './kind.ts';
import type { Kind } from './kind.ts';

/** Relative difference up to which two values count as equal; own choice, far below what can be made or measured. */
export const RELATIVE_TOLERANCE = 1e-9;

/** SI. A millionth of a millimetre, of a degree, of a newton … or less; own choice. */
const FLOOR: Readonly<Record<Dimension, number>> = {
  number: 1e-9,
  length: 1e-9,
  area: 1e-12,
  angle: 1e-9,
  force: 1e-9,
  torque: 1e-12,
  'linear-rate': 1e-9,
  'torsional-rate': 1e-12,
  inertia: 1e-15,
  voltage: 1e-9,
  pressure: 1e-6,
  'angle-per-length': 1e-9,
};

/** SI; 0 for a kind that no place of the file knows. */
export function comparisonFloor(kind: Kind): number {
  return floorOf(dimensionOfKind(kind));
}

/** SI; 0 for what no place of the file knows. */
export function floorOf(dimension: Dimension | undefined): number {
  return dimension === undefined ? 0 : FLOOR[dimension];
}

/** The difference up to which two values count as equal, SI. @param floor SI, as stored with the comparison */
export function forgiven(left: number, right: number, floor: number): number {
  return Math.max(floor, RELATIVE_TOLERANCE * Math.max(Math.abs(left), Math.abs(right)));
}

/** Left less right, SI; 0 where they differ by no more than computing rounds. @param floor SI, as stored with the comparison */
export function differenceOf(left: number, right: number, floor: number): number {
  return Math.abs(left - right) < ROUNDED * forgiven(left, right, floor) ? 0 : left - right;
}

/** Of what counts as equal: far above what computing rounds, and far below what counts. */
const ROUNDED = 1e-3;

/**
 * @param floor SI, as stored with the comparison
 * @returns false for NaN on either side, and for operators that compare nothing
 */
export function holds(operator: BinaryOperator, left: number, right: number, floor: number): boolean {
  if (Number.isNaN(left) || Number.isNaN(right)) return false;
  const equal = left === right || Math.abs(left - right) <= forgiven(left, right, floor);
  switch (operator) {
    case '==':
      return equal;
    case '!=':
      return !equal;
    case '<=':
      return equal || left < right;
    case '>=':
      return equal || left > right;
    case '<':
      return !equal && left < right;
    case '>':
      return !equal && left > right;
    default:
      return false;
  }
}
