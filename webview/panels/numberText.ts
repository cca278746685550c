/** Reads the number that a person types into a field with a unit beside it. */

export type TypedNumber =
  | { readonly number: number }
  /** As the decimal comma of many countries has it; `meant` is the same with a point. */
  | { readonly wrong: 'comma'; readonly meant: string }
  | { readonly wrong: 'not-a-number' };

/**
 * What is typed, as a number in the unit of the field; that unit may stand behind it. Any other word makes it no number, so that
 * `1.5 inch` is not taken for 1.5 mm, nor `3,5` for 35. Undefined where nothing is typed.
 */
export function numberIn(typed: string, unit: string): TypedNumber | undefined {
  const text = typed.trim().replace('\u2212', '-');
  if (text === '') return undefined;
  const bare = unit !== '' && text.endsWith(unit) ? text.slice(0, -unit.length).trimEnd() : text;
  if (NUMBER.test(bare) && Number.isFinite(Number(bare))) return { number: Number(bare) };
  const meant = bare.replace(',', '.');
  return meant !== bare && NUMBER.test(meant) ? { wrong: 'comma', meant } : { wrong: 'not-a-number' };
}

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;
