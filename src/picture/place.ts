/** Places in the text of which the report speaks. */
import type { Span } from '../definition/span.ts';
import type { TextPlace } from '../protocol/report.ts';

/** Held within the text. */
export function placeIn(text: string, { start, end }: Span): TextPlace {
  const from = Math.min(Math.max(0, start), text.length);
  return { start: from, end: Math.min(Math.max(from, end), text.length) };
}
