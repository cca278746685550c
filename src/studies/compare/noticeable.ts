/** How much a figure must differ before it is worth telling: less than what is shown of it could not be read off anyway. */
import { FIGURE_UNIT_SI, type FigureDimension } from '../../definition/dimensions.ts';

/** In the unit that figures of the dimension are shown in: half of the last digit in which such figures are commonly shown. Common practice, no source. */
export const DISPLAY_TOLERANCE: Readonly<Record<FigureDimension, number>> = {
  number: 0.0005,
  length: 0.005,
  area: 0.5,
  angle: 0.005,
  force: 0.05,
  torque: 0.5,
  'linear-rate': 0.005,
  'torsional-rate': 0.005,
  inertia: 0.05,
  voltage: 0.0005,
  pressure: 0.05,
  'angle-per-length': 0.005,
  energy: 0.005,
  time: 0.005,
  'angular-speed': 0.5,
};

/** Whether two figures of an outcome, SI, differ by more than the tolerance. NaN differs from all but NaN. */
export function differs(was: number, is: number, dimension: FigureDimension | undefined): boolean {
  if (Number.isNaN(was) || Number.isNaN(is)) return Number.isNaN(was) !== Number.isNaN(is);
  if (was === is) return false;
  if (dimension === undefined) return Math.abs(is - was) > UNKNOWN_KIND * Math.max(Math.abs(was), Math.abs(is));
  return Math.abs(is - was) > DISPLAY_TOLERANCE[dimension] * FIGURE_UNIT_SI[dimension];
}

/** Relative, for quantities that no place of the file knows. */
const UNKNOWN_KIND = 1e-4;

/** Whether two figures of the text, SI, are one: what a conversion of units leaves between them is nothing. */
export function equalWritten(was: number, is: number): boolean {
  return was === is || Math.abs(is - was) <= ROUNDING * Math.max(Math.abs(was), Math.abs(is)) || (Number.isNaN(was) && Number.isNaN(is));
}

/** Relative. */
const ROUNDING = 1e-12;
