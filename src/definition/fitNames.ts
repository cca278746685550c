/**
 * What `fit` of `measured` may name: the dimensions of a linkage by short names, a name of `let` or `part.key`, such as
 * `drag_link.length`, `bellcrank.out.radius` or `tps.at_closed`. Blocks, and the words `arms` and `drums`, are left out, and the figures
 * of a place are `x`, `y` and `z`.
 */
import type { Definition, Value } from './definition.ts';
import { linkageValues } from './values.ts';

/** A dimension of the linkage. */
export interface NamedDimension {
  readonly name: string;
  /** Where it stands in the file, or would stand. */
  readonly path: string;
  /** Absent for one that the file leaves out: the length of a rod as it is drawn, a cable without slack. */
  readonly value?: Value;
}

/** By name, in the order of the blocks; also those that follow from formulas, which cannot be found by themselves. */
export function fitNames(definition: Definition): ReadonlyMap<string, NamedDimension> {
  const found = new Map<string, NamedDimension>();
  for (const [path, value] of linkageValues(definition)) {
    const name = shortName(path);
    if (!found.has(name)) found.set(name, { name, path, value });
  }
  const leftOut = [
    ...definition.rods.map(({ name }) => ({ name: `${name}.length`, path: `rods.${name}.length` })),
    ...definition.cables.map(({ name }) => ({ name: `${name}.slack`, path: `cables.${name}.slack` })),
  ];
  for (const each of leftOut) if (!found.has(each.name)) found.set(each.name, each);
  return found;
}

/** E.g. `bellcrank.out.radius` for `levers.bellcrank.arms.out.radius`. */
export function shortName(path: string): string {
  const steps = path.split('.');
  const [block = '', owner = '', ...keys] = steps;
  if (block === 'pedal') return path;
  const own = block === 'levers' && (keys[0] === 'arms' || keys[0] === 'drums') ? keys.slice(1) : keys;
  const holder = own.length > 1 ? own.at(-2) : block === 'points' ? block : undefined;
  const last = own.at(-1);
  const axis = last !== undefined && holder !== undefined && PLACES.has(holder) ? AXES[last] : undefined;
  return [owner, ...(axis === undefined ? own : [...own.slice(0, -1), axis])].join('.');
}

const AXES: Readonly<Record<string, string>> = { 0: 'x', 1: 'y', 2: 'z' };

/** Keys whose figures are coordinates. */
const PLACES: ReadonlySet<string> = new Set([
  'points',
  'pivot',
  'at',
  'axis',
  'through',
  'reference',
  'bolt',
  'leaves',
  'enters',
  'leaves_along',
  'enters_along',
  'from',
  'circle',
  'shift',
  'about',
]);
