/**
 * Figures as a person reads them: in the unit of the drawing, with as many digits as one can act on.
 */
import { digitsFor } from '../definition/digits.ts';
import { formatQuantity } from '../definition/edit.ts';
import { parseUnit, toSi } from '../definition/quantity/units.ts';
import { FIGURE_UNIT, FIGURE_UNIT_SI, type FigureDimension } from '../definition/dimensions.ts';
import type { Figure } from '../findings/finding.ts';

/** E.g. `38.25 mm`, `81.9°`, `2.31`; `–` where there is no value. @param more digits behind the point than usual */
export function figureText({ value, dimension }: Figure, more = 0): string {
  const shown = value / FIGURE_UNIT_SI[dimension];
  if (!Number.isFinite(shown)) return NO_VALUE;
  return withUnit(trimZeros(decimal(shown, digitsFor(shown, dimension) + more)), FIGURE_UNIT[dimension]);
}

/** In the unit in which the file has it, e.g. `0.004 inch`; where that is the one of its place, or not known, as commonly shown with a digit more. */
export function figureAsWritten({ value, dimension }: Figure, unit?: string): string {
  const other = otherUnit(dimension, unit);
  return (other && formatQuantity(value, other.name, WRITTEN_DIGITS)) ?? figureText({ value, dimension }, 1);
}

/** The unit in which the file has a figure, and its size, SI; undefined where it is the one of the figure's place, or not known. */
export function otherUnit(dimension: FigureDimension, unit = ''): { readonly name: string; readonly size: number } | undefined {
  const parsed = unit === '' ? undefined : parseUnit(unit);
  const size = parsed === undefined ? NaN : toSi(1, parsed);
  return !(size > 0) || isNear(size, FIGURE_UNIT_SI[dimension]) ? undefined : { name: unit, size };
}

/** Significant digits. */
const WRITTEN_DIGITS = 4;

const isNear = (a: number, b: number): boolean => Math.abs(a / b - 1) < 1e-9;

/** How figures read that lie within so much of each other, SI: each with the digits of two places of that. */
export function figureWithin(dimension: FigureDimension, within: number): (value: number) => string {
  const size = within / FIGURE_UNIT_SI[dimension];
  const common = (value: number): number => digitsFor(value / FIGURE_UNIT_SI[dimension], dimension);
  const digits =
    size < LEAST_SIZE ? undefined : Math.min(MOST_DIGITS, Math.max(digitsFor(size, dimension), 1 - Math.floor(Math.log10(size))));
  return (value) => {
    const shown = value / FIGURE_UNIT_SI[dimension];
    if (!Number.isFinite(shown)) return NO_VALUE;
    return withUnit(trimZeros(decimal(shown, digits ?? common(value) + 1)), FIGURE_UNIT[dimension]);
  };
}

/** In the unit of its place; less is rounding. */
const LEAST_SIZE = 1e-6;
const MOST_DIGITS = 6;

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

/** E.g. `a, b and c`. */
export function listWords(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** A number with a fixed count of digits behind the point, never `-0`. */
export function decimal(value: number, digits: number): string {
  const text = value.toFixed(digits);
  return /^-0(?:\.0*)?$/.test(text) ? text.slice(1) : text;
}

/** What stands where there is no value. */
export const NO_VALUE = '–';

function withUnit(text: string, unit: string): string {
  if (unit === '') return text;
  return unit === 'deg' ? `${text}°` : `${text} ${unit}`;
}

function trimZeros(text: string): string {
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}
