/** Figures of a file in words: in the unit of their place, in the unit in which they are written, and those that no place knows. */
import type { Let, Value } from '../definition/definition.ts';
import { PLACE_UNIT } from '../definition/dimensions.ts';
import { formatQuantity } from '../definition/edit.ts';
import { baseUnits, dimensionOfKind, type Kind } from '../definition/formula/kind.ts';
import { figureText } from '../outputs/figure.ts';

/** A `let` value, in the unit of places of its kind. */
export function valueText({ value, kind }: Let): string {
  return kindText(value.nominal, kind);
}

/** An SI value of any kind. */
export function kindText(value: number, kind: Kind): string {
  const dimension = dimensionOfKind(kind);
  if (dimension !== undefined) return figureText({ value, dimension });
  const unit = baseUnits(kind);
  return `${Number(value.toPrecision(FOUR))}${unit === '' ? '' : ` ${unit}`}`;
}

/** In the unit in which it is written; undefined where that is the place's own, and for a formula. */
export function writtenText({ nominal, unit, dimension, formula }: Value): string | undefined {
  if (formula !== undefined || unit === '' || sameUnit(unit, PLACE_UNIT[dimension])) return undefined;
  return formatQuantity(nominal, unit);
}

/** A figure of a place whose dimension is known, or of a `let` of any kind. */
export function figureOfValue(value: Value, kind: Kind | undefined): string {
  return kind === undefined ? figureText({ value: value.nominal, dimension: value.dimension }) : kindText(value.nominal, kind);
}

/** Significant digits where the unit says nothing of how finely a thing is made. */
const FOUR = 4;

function sameUnit(one: string, other: string): boolean {
  const plain = (unit: string): string => unit.replaceAll('·', '*').replaceAll('²', '^2').replaceAll('°', 'deg').replaceAll(' ', '');
  return plain(one) === plain(other);
}
