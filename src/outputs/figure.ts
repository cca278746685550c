/**
 * Figures as a person reads them: in the unit of the drawing, with as many digits as one can act on.
 */
import { FIGURE_UNIT, FIGURE_UNIT_SI, type FigureDimension } from '../definition/dimensions.ts';
import type { Figure } from '../findings/finding.ts';

/** E.g. `38.25 mm`, `81.9°`, `2.31`; `–` where there is no value. @param more digits behind the point than usual */
export function figureText({ value, dimension }: Figure, more = 0): string {
  const shown = value / FIGURE_UNIT_SI[dimension];
  if (!Number.isFinite(shown)) return NO_VALUE;
  return withUnit(trimZeros(decimal(shown, digitsFor(shown, dimension) + more)), FIGURE_UNIT[dimension]);
}

/** Digits behind the point in which a figure is commonly shown, in the unit of its place; zeros at its end are left out then. */
export function figureDigits({ value, dimension }: Figure): number {
  return digitsFor(value / FIGURE_UNIT_SI[dimension], dimension);
}

/** A fraction in percent, e.g. `62.1 %`, `100 %`. */
export function percentText(fraction: number, digits = 1): string {
  return Number.isFinite(fraction) ? `${trimZeros(decimal(fraction * 100, digits))} %` : NO_VALUE;
}

/** E.g. `at 62.1 % of pedal travel`. */
export function travelText(travel: number): string {
  return `at ${percentText(travel)} of pedal travel`;
}

/** A count with its word, e.g. `1 error`, `2 errors`, `no errors`. */
export function countText(count: number, word: string): string {
  return `${count === 0 ? 'no' : count} ${word}${count === 1 ? '' : 's'}`;
}

/** A number with a fixed count of digits behind the point, never `-0`. */
export function decimal(value: number, digits: number): string {
  const text = value.toFixed(digits);
  return /^-0(?:\.0*)?$/.test(text) ? text.slice(1) : text;
}

/** What stands where there is no value. */
export const NO_VALUE = '–';

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

function digitsFor(shown: number, dimension: FigureDimension): number {
  const size = Math.abs(shown);
  const digits = DIGITS[dimension] + (size < 10 && dimension !== 'length' && dimension !== 'number' ? 1 : 0);
  // A small figure keeps two digits that say something, so that it never reads as nothing.
  if (size <= NOTHING || size >= 10 ** -digits) return digits;
  return Math.min(MOST_DIGITS, 1 - Math.floor(Math.log10(size)));
}

function withUnit(text: string, unit: string): string {
  if (unit === '') return text;
  return unit === 'deg' ? `${text}°` : `${text} ${unit}`;
}

function trimZeros(text: string): string {
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}
