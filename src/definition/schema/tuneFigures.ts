/**
 * Figures of `tune` and `measured`, whose dimension another place of the file says: that of a `let` value or of a column.
 */
import type { ColumnReference, Value } from '../definition.ts';
import type { Dimension } from '../dimensions.ts';
import { columnName, isPercent } from './columnName.ts';
import { quantity } from './scalars.ts';
import { problem, type About, type Bounds, type Reading, type Shape, type Site } from './shape.ts';
import type { SourceNode } from '../source/tree.ts';

/** As data: a figure whose dimension only the file can say. @param empty whether `~` may stand in its place */
export function figureAbout(what: string, empty = false): About {
  return { kind: 'figure', what, empty };
}

/** A shape that is never read by itself: its figures wait for what says their dimension. */
export function readAs(dimension: Dimension, bounds: Bounds, node: SourceNode, site: Site, reading: Reading): Value | undefined {
  return quantity(dimension, bounds).read(node, site, reading);
}

/**
 * A figure of a column: travel and share within 0 and 100 %, areas and forces of the pedal not below 0.
 * @param isRead whether a gauge has read it: near nothing that is below 0 as often as above
 */
export function readOfColumn(column: ColumnReference, node: SourceNode, site: Site, reading: Reading, isRead = false): Value | undefined {
  if (isTravel(column)) return travel.read(node, site, reading);
  // In a list it is the column that says what is wrong, not the list's own key.
  const own = { ...site, name: columnName(column) };
  const value = readAs(column.dimension, isRead ? {} : boundsOf(column), node, own, reading);
  if (value === undefined || !isPercent(column)) return value;
  return isShare(value, columnName(column), MOST_SHARE, reading) ? value : undefined;
}

/** Warns of the tolerances of figures that are taken as they stand. @param cure what to do instead */
export function tellUseless(values: readonly (Value | undefined)[], cure: string, reading: Reading): void {
  for (const value of values) {
    if (value?.tolerance === undefined) continue;
    const { span } = value.tolerance;
    reading.report({ ...problem('bad-tolerance', span, 'A tolerance is of no use here: it is left out', { cure }), severity: 'warning' });
  }
}

/** Of the pedal's travel: 0 to 100 %. */
export const travel: Shape<Value> = {
  about: quantity('number', { least: 0, most: 1 }).about,
  read(node, site, reading) {
    const value = readAs('number', { least: 0 }, node, site, reading);
    return value !== undefined && isShare(value, 'pedal.travel', 1, reading) ? value : undefined;
  },
};

function isTravel({ owner, column }: ColumnReference): boolean {
  return owner === 'pedal' && column === 'travel';
}

function boundsOf(column: ColumnReference): Bounds {
  return NEVER_NEGATIVE.has(column.column) ? { least: 0 } : {};
}

const NEVER_NEGATIVE: ReadonlySet<string> = new Set(['travel', 'effort', 'release', 'area', 'fraction']);

/** A sensor may pass its own span somewhat; a figure above this is one without its percent sign. */
const MOST_SHARE = 1.5;

function isShare(value: Value, name: string, most: number, reading: Reading): boolean {
  if (value.nominal <= most * (1 + 1e-12)) return true;
  const percent = value.formula === undefined && value.unit === '' && value.nominal <= 100 ? `${value.nominal} %` : undefined;
  const figure = Number((value.nominal * 100).toPrecision(6));
  reading.report(
    problem('out-of-range', value.span, `\`${name}\` must be ${most * 100} % or less, not ${figure} %`, {
      cure:
        percent === undefined ? `Write a share of ${most * 100} % or less` : `Write \`${percent}\`: without the sign it is a plain number`,
      replacements: percent === undefined ? undefined : [{ span: value.span, text: percent }],
    }),
  );
  return false;
}
