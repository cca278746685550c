/** The figure under the cursor as a dial. */
import type { Dial } from '../protocol/report.ts';
import { letOf, valuesOf } from '../language/values.ts';
import type { Answers } from '../solve.ts';
import { dialOf, dialOfLet } from './dials.ts';

/** Undefined where no plain figure stands there. @param offset of the text, also right behind the figure */
export function dialAt({ text, definition }: Pick<Answers, 'text' | 'definition'>, offset: number): Dial | undefined {
  if (definition === undefined) return undefined;
  const value = valuesOf(definition).find(({ span }) => span.start <= offset && offset <= span.end);
  // A bound or a reading turns nothing.
  if (value === undefined || /^(?:tune|measured)\./.test(value.path)) return undefined;
  const entry = letOf(definition, value);
  return entry === undefined ? dialOf(text, value.path, value, value.dimension) : dialOfLet(text, entry);
}
