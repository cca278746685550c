/** The figure that a requirement demands, where it is written in another unit than the one that figures of its kind are shown in. */
import { PLACE_UNIT_SI } from '../definition/dimensions.ts';
import { dimensionOfKind } from '../definition/formula/kind.ts';
import { readUnit, toSi } from '../definition/quantity/units.ts';
import type { Comparison } from '../requirements/requirement.ts';

/** As written, e.g. `2.2 inch^2`; undefined where the demand is no plain figure, or stands in the usual unit. */
export function demandAsWritten({ text, demanded }: Pick<Comparison, 'text' | 'demanded'>): string | undefined {
  // Shares are told in percent in any case.
  if (demanded?.dimension === undefined || demanded.dimension === 'number' || demanded.value === 0) return undefined;
  for (const { 0: number, index } of text.matchAll(NUMBER)) {
    const unit = readUnit(text, index + number.length);
    if (unit === undefined || unit.unknown.length > 0 || dimensionOfKind(unit.kind) !== demanded.dimension) continue;
    const isUsual = alike(unit.times / unit.over, PLACE_UNIT_SI[demanded.dimension]);
    if (isUsual || !alike(toSi(Number(number), unit), Math.abs(demanded.value))) continue;
    return `${demanded.value < 0 ? '\u2212' : ''}${text.slice(index, unit.end)}`;
  }
  return undefined;
}

const NUMBER = /(?<![\w.])(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?/gi;

function alike(one: number, other: number): boolean {
  return Math.abs(one - other) <= ROUNDING * Math.abs(other);
}

/** Relative: what a conversion of units may leave. */
const ROUNDING = 1e-9;
