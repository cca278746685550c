/**
 * Between which values a figure is looked for: around the one that it has, within what the format allows at its place.
 *
 * A length is searched half of itself up and down, 20 mm at least; an angle 60° up and down; anything else as much as itself up and
 * down, and at least the figure of its kind below. All common practice, no source: beyond, it is another linkage and no correction.
 */
import type { Definition } from '../definition/definition.ts';
import { PLACE_UNIT_SI, type Dimension } from '../definition/dimensions.ts';
import type { Bounds } from '../definition/schema/shape.ts';
import { describePath } from '../definition/schema/walk.ts';

/** SI, `from` not above `to`. */
export interface SearchBounds {
  readonly from: number;
  readonly to: number;
}

/** @param present value of the figure now, SI; @param path where it stands */
export function boundsFor(definition: Definition, path: string, dimension: Dimension, present: number): SearchBounds {
  const reach = dimension === 'angle' ? HALF_WIDTH.angle : Math.max(share(dimension) * Math.abs(present), HALF_WIDTH[dimension]);
  const place = allowedAt(path, dimension, present);
  const adjuster = adjusterOf(definition, path, present);
  return {
    from: Math.max(PEDAL.has(path) ? 0 : present - reach, place.from, adjuster.from),
    to: Math.min(present + reach, place.to, adjuster.to),
  };
}

/** A pedal may end anywhere before it does now. */
const PEDAL: ReadonlySet<string> = new Set(['pedal.travel', 'pedal.pull']);

function share(dimension: Dimension): number {
  return dimension === 'length' ? 0.5 : 1;
}

/** SI. */
const HALF_WIDTH: Readonly<Record<Dimension, number>> = {
  number: 1,
  length: 0.02,
  area: 1e-3,
  angle: Math.PI / 3,
  force: 50,
  torque: 1,
  'linear-rate': 5e3,
  'torsional-rate': 1,
  inertia: 1e-3,
  voltage: 5,
  pressure: 1e5,
  'angle-per-length': 100,
};

/** What the format allows at a place; a `let` keeps its sign, since a length stays a length. */
function allowedAt(path: string, dimension: Dimension, present: number): SearchBounds {
  const unit = PLACE_UNIT_SI[dimension];
  if (path.startsWith('let.')) {
    return { from: present > 0 ? INSIDE * unit : -Infinity, to: present < 0 ? -INSIDE * unit : Infinity };
  }
  const bounds = boundsAt(path, dimension);
  // A place of several meanings is bounded by the widest.
  const from = bounds.map(({ least, above }) => Math.max(least ?? -Infinity, above === undefined ? -Infinity : above + INSIDE));
  const to = bounds.map(({ most, below }) => Math.min(most ?? Infinity, below === undefined ? Infinity : below - INSIDE));
  return bounds.length === 0 ? { from: -Infinity, to: Infinity } : { from: Math.min(...from) * unit, to: Math.max(...to) * unit };
}

/** Whether the format takes whole numbers only at a place. */
export function isWhole(path: string): boolean {
  const bounds = boundsAt(path, 'number');
  return bounds.length > 0 && bounds.every(({ whole }) => whole === true);
}

/** Of each meaning of a place. */
function boundsAt(path: string, dimension: Dimension): readonly Bounds[] {
  return describePath(path.split('.')).flatMap(({ shape }) =>
    shape.kind === 'quantity' && shape.dimension === dimension ? [shape.bounds] : [],
  );
}

/** How far inside an excluded bound is looked, in the unit of the place. */
const INSIDE = 1e-3;

/** A rod with an adjuster is set by it, unless it is off it already. */
function adjusterOf({ rods }: Definition, path: string, present: number): SearchBounds {
  const adjust = rods.find(({ name }) => path === `rods.${name}.length`)?.adjust;
  const [from, to] = [adjust?.min?.nominal ?? -Infinity, adjust?.max?.nominal ?? Infinity];
  return present >= from && present <= to ? { from, to } : { from: -Infinity, to: Infinity };
}
