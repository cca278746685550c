/**
 * A key that lacks its colon though its value stands there: as a word above lines that stand farther in, or before a bracket. What was meant is
 * plain, so that the file is read on as if the colon stood there.
 */
import type { Span } from '../span.ts';
import { columnOf, lineEnd, skipLinesWithoutText, slice, startsLine } from './stretches.ts';

export interface Colonless {
  readonly key: string;
  readonly span: Span;
}

/** The text with a colon and space over the last letters of a key that lacks them, which moves nothing. */
export function withColon(text: string, { span: { start, end } }: Colonless): string {
  const over = /\s/.test(text[end] ?? ' ') ? ':' : ': ';
  return text.slice(0, Math.max(start, end - over.length)) + over + text.slice(end);
}

/** A word alone on its line, where the next line with text stands farther in. */
export function keyAboveDeeper(span: Span, text: string): Colonless | undefined {
  const key = slice(text, span);
  if (!/^[A-Za-z_]\w+$/.test(key) || !startsLine(span.start, text)) return undefined;
  const next = skipLinesWithoutText(lineEnd(span.end, text), text);
  return next < text.length && columnOf(next, text) > columnOf(span.start, text) ? { key, span } : undefined;
}

/** `pedal {lever: …`: a key at the beginning of the line of `offset` that goes on with a bracket. */
export function keyBeforeBracket(offset: number, text: string): Colonless | undefined {
  const line = offset - columnOf(offset, text);
  const found = /^( *)([A-Za-z_]\w{2,}) ?(?=[{[])/.exec(text.slice(line, offset));
  const [, indent = '', key] = found ?? [];
  if (key === undefined) return undefined;
  const start = line + indent.length;
  return { key, span: { start, end: start + key.length } };
}
