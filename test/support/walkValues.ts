/** Every Value of a definition, once, in the order in which it is found. */
import type { Definition, Value } from '../../src/definition/definition.ts';

export function walkValues(definition: Definition): readonly Value[] {
  const found = new Set<Value>();
  const walk = (part: unknown): void => {
    if (typeof part !== 'object' || part === null) return;
    if (isValue(part)) found.add(part);
    else for (const inner of Object.values(part)) walk(inner);
  };
  walk(definition);
  return [...found];
}

function isValue(part: object): part is Value {
  return 'nominal' in part && 'path' in part && 'dimension' in part;
}
