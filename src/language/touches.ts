/** Whether two stretches of a text meet: what is asked of everything that belongs to the place of the cursor. */
import type { Span } from '../definition/span.ts';

/** Also where they only border on each other, as a cursor does just behind a word. */
export function touches(one: Span, other: Span): boolean {
  return one.start <= other.end && other.start <= one.end;
}
