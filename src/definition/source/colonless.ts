/**
 * A key that lacks its colon though its value stands there: as a word above lines that stand farther in, or before a bracket. What was meant is
 * plain, so that the file is read on as if the colon stood there.
 */
import type { Span } from '../span.ts';
import { columnOf, lineBefore, lineEnd, skipLinesWithoutText, slice } from './stretches.ts';

export interface Colonless {
  readonly key: string;
  readonly span: Span;
}

/** The text with a colon and space over the last letters of a key that lacks them, which moves nothing. */
export function withColon(text: string, { span: { start, end } }: Colonless): string {
  const over = /\s/.test(text[end] ?? ' ') ? ':' : ': ';
  return text.slice(0, Math.max(start, end - over.length)) + over + text.slice(end);
}

/** A word alone on its line, where the next line with text stands farther in, and not below a key that opens a block. */
export function keyAboveDeeper(span: Span, text: string): Colonless | undefined {
  const key = slice(text, span);
  if (!/^[A-Za-z_]\w+$/.test(key)) return undefined;
  const column = columnOf(span.start, text);
  const next = skipLinesWithoutText(lineEnd(span.end, text), text);
  if (next >= text.length || columnOf(next, text) <= column) return undefined;
  const before = lineBefore(span.start, text);
  // There it is rather a word that is being typed into that block.
  if (before !== undefined && text[before.end - 1] === ':' && columnOf(before.start, text) === column) return undefined;
  return { key, span };
}

/** `pivot [0, 0]`, `lever shaft`: a line of a key and its value. */
export function keyBeforeValue(line: Span, text: string): { readonly colonless: Colonless; readonly value: string } | undefined {
  const [, key, value] = /^([A-Za-z_]\w+)[ \t]+([-+.\d[{].*|[\w./-]+)$/.exec(slice(text, line)) ?? [];
  if (key === undefined || value === undefined) return undefined;
  return { colonless: { key, span: { start: line.start, end: line.start + key.length } }, value };
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
