/** What a unit is in SI, in words. */
import type { Dimension } from '../definition/dimensions.ts';
import { baseUnits, dimensionOfKind } from '../definition/formula/kind.ts';
import { parseUnit } from '../definition/quantity/units.ts';

/** E.g. `1 inch = 0.0254 m`; undefined where it is no unit. A percent is a hundredth. */
export function unitMeaning(unit: string): string | undefined {
  if (unit === '') return undefined;
  const parsed = parseUnit(unit);
  if (parsed === undefined) return undefined;
  const dimension = dimensionOfKind(parsed.kind);
  const named = dimension === undefined ? undefined : SI_UNIT[dimension];
  const si = named === undefined || named === unit ? baseUnits(parsed.kind) : named;
  const value = Number((parsed.times / parsed.over).toPrecision(DIGITS));
  return `1${unit === '°' || unit === '%' ? '' : ' '}${unit} = ${value}${si === '' ? '' : ` ${si}`}`;
}

/** What SI calls its unit of a kind, where that is shorter than its base units. */
const SI_UNIT: Partial<Readonly<Record<Dimension, string>>> = {
  force: 'N',
  torque: 'N·m',
  'linear-rate': 'N/m',
  'torsional-rate': 'N·m/rad',
  pressure: 'Pa',
};

/** As many as any conversion here has exactly, but for degrees. */
const DIGITS = 12;
