/**
 * A problem of a piece of text, counted from the start of that piece, and its way to a place in the file.
 */
import type { ProblemCode } from '../codes.ts';
import type { Problem } from '../problem.ts';
import type { Span } from '../span.ts';

/**
 * Where a piece of text stands in the file: the offset of its first character. Where the piece is not a plain copy of
 * the file's text (escapes in a quoted scalar): the file offset of each of its offsets, or the whole it was made from,
 * which then stands for every place in it.
 */
export type Origin = number | Span | ((offset: number) => number);

/** What is wrong with a stretch of a piece of text. */
export interface Fault extends Span {
  readonly code: ProblemCode;
  readonly message: string;
  readonly cure?: string;
  /** Edits that carry out the cure. */
  readonly edits?: readonly (Span & { readonly text: string })[];
}

/** A stretch of a piece of text as a place in the file. */
export function placeInFile(origin: Origin, stretch: Span): Span {
  if (typeof origin === 'number') return { start: origin + stretch.start, end: origin + stretch.end };
  return typeof origin === 'function'
    ? { start: origin(stretch.start), end: origin(stretch.end) }
    : { start: origin.start, end: origin.end };
}

/** The fault at its place in the file, an error. */
export function toProblem(fault: Fault, origin: Origin): Problem {
  // An edit of the whole would not be the edit of the part that was meant.
  const edits = typeof origin === 'object' ? undefined : fault.edits;
  return {
    code: fault.code,
    severity: 'error',
    span: placeInFile(origin, fault),
    message: fault.message,
    ...(fault.cure !== undefined && { cure: fault.cure }),
    ...(edits !== undefined && { replacements: edits.map((edit) => ({ span: placeInFile(origin, edit), text: edit.text })) }),
  };
}

/** One fault whose cure is to write `text` in place of a stretch, the faulty one unless another is given. */
export function replaceFault(code: ProblemCode, where: Span, message: string, text: string, stretch: Span = where): Fault {
  const cure = text === '' ? 'Leave it out' : `Write \`${text}\``;
  return { code, start: where.start, end: where.end, message, cure, edits: [{ start: stretch.start, end: stretch.end, text }] };
}
