/** Edits one after the other as edits at once, and places of the edited text in the text before. */
import type { Replacement } from '../definition/problem.ts';
import type { Span } from '../definition/span.ts';

/**
 * @param first edits of a text, none of which overlap
 * @param then edits of what they make of it, none of which overlap
 * @returns edits of the first text that do both; rising, none of which overlap
 */
export function compose(first: readonly Replacement[], then: readonly Replacement[]): readonly Replacement[] {
  // From the last to the first: those still to come then stand where they say.
  return risingOf(then).toReversed().reduce(addOne, risingOf(first));
}

/**
 * Where an offset of the edited text lies in the text before. What an edit has put in lies at the edit's place there: as far behind its
 * start, and not behind its end.
 */
export function offsetIn(edits: readonly Replacement[], offset: number): number {
  let shift = 0;
  for (const { span, text } of risingOf(edits)) {
    const start = span.start + shift;
    if (offset < start) break;
    if (offset < start + text.length) return Math.min(span.start + offset - start, span.end);
    shift += text.length - (span.end - span.start);
  }
  return offset - shift;
}

/** A stretch of the edited text in the text before. */
export function spanIn(edits: readonly Replacement[], { start, end }: Span): Span {
  return { start: offsetIn(edits, start), end: offsetIn(edits, end) };
}

/** An edit of what `edits` make, put among them; those that it touches become one with it. */
function addOne(edits: readonly Replacement[], next: Replacement): readonly Replacement[] {
  const before: Replacement[] = [];
  const touched: Placed[] = [];
  const after: Replacement[] = [];
  let shift = 0;
  for (const edit of edits) {
    const start = edit.span.start + shift;
    const end = start + edit.text.length;
    if (end < next.span.start) before.push(edit);
    else if (start > next.span.end) after.push(edit);
    else touched.push({ edit, start, end });
    shift += edit.text.length - (edit.span.end - edit.span.start);
  }
  const [one, last] = [touched[0], touched.at(-1)];
  if (one === undefined || last === undefined) {
    const moved = before.reduce((sum, { span, text }) => sum + text.length - (span.end - span.start), 0);
    const span = { start: next.span.start - moved, end: next.span.end - moved };
    return [...before, { span, text: next.text }, ...after];
  }
  // What of the touched edits the next one leaves, and what of the old text it takes along at both sides.
  const lead = one.edit.text.slice(0, Math.max(0, next.span.start - one.start));
  const tail = last.edit.text.slice(Math.max(0, next.span.end - last.start));
  const span = {
    start: one.edit.span.start - Math.max(0, one.start - next.span.start),
    end: last.edit.span.end + Math.max(0, next.span.end - last.end),
  };
  return [...before, { span, text: lead + next.text + tail }, ...after];
}

interface Placed {
  readonly edit: Replacement;
  /** In the text that the edits make. */
  readonly start: number;
  readonly end: number;
}

function risingOf(edits: readonly Replacement[]): readonly Replacement[] {
  return [...edits].sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end);
}
