/** Figures as they are written in the page. */
import { WORDS } from '../words.ts';
import { extentOf } from './scale.ts';

/** With so many digits behind the point, and a true minus sign; a dash where there is none. */
export function figureText(value: number, digits: number): string {
  if (Number.isNaN(value)) return WORDS.noFigure;
  const text = value.toFixed(digits);
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
}

/** With its unit: degrees stand close, others after a thin distance that does not break. */
export const withUnit = (text: string, unit: string): string =>
  unit === '' || text === WORDS.noFigure ? text : unit === 'deg' ? `${text}°` : `${text}\u00a0${unit}`;

/** The longest text that a curve's figures have. */
export function longestText(values: Float64Array, digits: number): string {
  const [least, greatest] = (extentOf(values) ?? [0, 0]).map((value) => figureText(value, digits)) as [string, string];
  return least.length > greatest.length ? least : greatest;
}

/** A fraction of the pedal's travel, in percent. */
export const percentText = (fraction: number): string => `${figureText(100 * fraction, 1)}\u00a0%`;
