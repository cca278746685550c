/** Every figure within a definition or a piece of one. */
import type { Definition, Value } from './definition.ts';

/** In no certain order, each once: a place that is given by the name of a point holds the point's own figures. */
export function valuesIn(part: object): ReadonlySet<Value> {
  const found = new Set<Value>();
  gather(part, found);
  return found;
}

/** The figures of the linkage and of what stands around it, by path: without those that only ask, judge or tell of readings. */
export function linkageValues(definition: Definition): ReadonlyMap<string, Value> {
  const { requirements: _, limits: _limits, tune: _tune, measured: _measured, ...parts } = definition;
  return new Map([...valuesIn(parts)].map((value) => [value.path, value]));
}

/** Whether a piece of a definition is a figure. */
export function isValue(part: object): part is Value {
  return 'nominal' in part && 'path' in part && 'dimension' in part;
}

function gather(part: object, found: Set<Value>): void {
  if (isValue(part)) {
    found.add(part);
    return;
  }
  for (const inner of Object.values(part) as readonly unknown[]) if (typeof inner === 'object' && inner !== null) gather(inner, found);
}
