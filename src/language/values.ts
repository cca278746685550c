/** Every figure of a file, and what follows from one. */
import type { Definition, Let, Value } from '../definition/definition.ts';
import { valuesIn } from '../definition/values.ts';

/** Each once, in the order of the text. Those of a place that is given by the name of a point are the point's own. */
export function valuesOf(definition: Definition): readonly Value[] {
  const before = known.get(definition);
  if (before !== undefined) return before;
  const { requirements: _, ...parts } = definition;
  const values = [...valuesIn(parts)].sort((a, b) => a.span.start - b.span.start);
  known.set(definition, values);
  return values;
}

/** The figure at a path; undefined where none was read there. */
export function valueAt(definition: Definition, path: string): Value | undefined {
  return valuesOf(definition).find((value) => value.path === path);
}

/** The entry of `let` that a value is. */
export function letOf({ lets }: Definition, value: Value): Let | undefined {
  return lets.find((each) => each.value === value);
}

/** Figures whose formulas use a `let` value directly, in the order of the text. */
export function usersOf(definition: Definition, entry: Let): readonly Value[] {
  const index = definition.lets.indexOf(entry);
  return valuesOf(definition).filter(({ formula }) => formula?.uses.includes(index) === true);
}

const known = new WeakMap<Definition, readonly Value[]>();
