/** Pedal positions and stretches of the pedal's travel in words, for messages. */
import type { Range } from './extremes.ts';

/** A fraction in percent, e.g. `62.1 %`. */
export function percent(travel: number): string {
  return `${fixed(travel * 100, 1)} %`;
}

/** E.g. `from 62.1 % to 100 % of pedal travel`; several ranges joined by `and`. */
export function rangeWords(ranges: readonly Range[]): string {
  const each = ranges.map(({ from, to }) =>
    percent(from) === percent(to) ? `at ${percent(from)}` : `from ${percent(from)} to ${percent(to)}`,
  );
  const shown = each.length > MOST_RANGES + 1 ? [...each.slice(0, MOST_RANGES), `${each.length - MOST_RANGES} more stretches`] : each;
  return `${shown.join(' and ')} of pedal travel`;
}

/** More are counted instead of told. */
const MOST_RANGES = 3;

/** A number without needless zeros behind its point, and never a negative zero. */
export function fixed(value: number, digits: number): string {
  const text = value.toFixed(digits);
  const trimmed = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return trimmed === '-0' ? '0' : trimmed;
}
