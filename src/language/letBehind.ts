/** The `let` behind a figure that follows from a formula, which a fix writes in its place. */
import type { Definition, Let, Value } from '../definition/definition.ts';

/**
 * The one plain `let` that a formula follows from, through other formulas of `let` too; undefined for a plain figure, and where there are
 * several or none: then there is no telling which one to write.
 */
export function letBehind(definition: Definition, value: Value): Let | undefined {
  const [only, second] = letsBehind(definition, value);
  return second === undefined ? only : undefined;
}

/** Every plain `let` that a formula follows from, through other formulas of `let` too; none for a plain figure. */
export function letsBehind({ lets }: Definition, value: Value): readonly Let[] {
  const plain = new Set<Let>();
  const seen = new Set<number>();
  const open = [...(value.formula?.uses ?? [])];
  for (let index = open.pop(); index !== undefined; index = open.pop()) {
    const entry = lets[index];
    if (entry === undefined || seen.has(index)) continue;
    seen.add(index);
    if (entry.value.formula === undefined) plain.add(entry);
    else open.push(...entry.value.formula.uses);
  }
  return [...plain];
}

/** What a formula gives where one plain `let` has another value; NaN where it has no value there. SI. */
export function formulaAlong({ lets }: Definition, value: Value, changed: Let): (nominal: number) => number {
  const values = Float64Array.from(lets, (entry) => entry.value.nominal);
  const at = lets.indexOf(changed);
  return (nominal) => {
    values[at] = nominal;
    // Each may use earlier ones.
    for (let i = at + 1; i < lets.length; i++) {
      const formula = lets[i]?.value.formula;
      if (formula !== undefined) values[i] = formula.evaluate(values);
    }
    return value.formula?.evaluate(values) ?? value.nominal;
  };
}
