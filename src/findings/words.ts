/** Figures and pedal ranges in words, for messages. */
import type { TravelRange } from './finding.ts';

export function degrees(angle: number, digits = 1): string {
  return `${fixed((angle * 180) / Math.PI, digits)}°`;
}

export function millimetres(length: number, digits = 2): string {
  return `${fixed(length * 1e3, digits)} mm`;
}

export function decimal(value: number): string {
  return fixed(value, 2);
}

export function percent(travel: number): string {
  return `${fixed(travel * 100, 1)} %`;
}

/** E.g. `from 62.1 % to 100 % of pedal travel`; several ranges joined by `and`. */
export function rangeWords(ranges: readonly TravelRange[]): string {
  const each = ranges.map(({ from, to }) =>
    percent(from) === percent(to) ? `at ${percent(from)}` : `from ${percent(from)} to ${percent(to)}`,
  );
  const shown = each.length > MOST_RANGES + 1 ? [...each.slice(0, MOST_RANGES), `${each.length - MOST_RANGES} more stretches`] : each;
  return `${shown.join(' and ')} of pedal travel`;
}

/** More are counted instead of told. */
const MOST_RANGES = 3;

/** A number without needless zeros behind its point, and never a negative zero. */
function fixed(value: number, digits: number): string {
  const text = value.toFixed(digits);
  const trimmed = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return trimmed === '-0' ? '0' : trimmed;
}
