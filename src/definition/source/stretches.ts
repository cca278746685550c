/**
 * Stretches of a text by its lines, words and quotes, for saying where a mistake of YAML stands.
 */
import type { Span } from '../span.ts';

/** From the offset to the end of its line, without a comment and trailing blanks. */
export function lineRest(start: number, text: string): Span {
  const end = lineEnd(start, text);
  const line = text.slice(start, end);
  const comment = line.search(/\s#/);
  const kept = (comment > 0 ? line.slice(0, comment) : line).trimEnd();
  return { start, end: start + Math.max(kept.length, Math.min(1, end - start)) };
}

/** Where the line of the offset ends. */
export function lineEnd(offset: number, text: string): number {
  let end = offset;
  while (end < text.length && !/[\r\n]/.test(text[end] ?? '')) end++;
  return end;
}

/** The last line with text before that of the offset, from its first character on as `lineRest` has it; undefined where there is none. */
export function lineBefore(offset: number, text: string): Span | undefined {
  for (let end = offset - columnOf(offset, text) - 1; end > 0; end -= columnOf(end, text) + 1) {
    const start = end - columnOf(end, text);
    const first = text.slice(start, end).search(/[^ \t\r]/);
    if (first >= 0 && text[start + first] !== '#') return lineRest(start + first, text);
  }
  return undefined;
}

/** Characters before the offset on its line. */
export function columnOf(offset: number, text: string): number {
  let start = offset;
  while (start > 0 && !/[\r\n]/.test(text[start - 1] ?? '')) start--;
  return offset - start;
}

/** From the offset to the end of its word; one character at least. */
export function wordAt(start: number, text: string): Span {
  let end = start;
  while (end < text.length && !/[\s,:[\]{}#]/.test(text[end] ?? '')) end++;
  return { start, end: Math.max(end, Math.min(start + 1, text.length)) };
}

/** The text of a stretch. */
export function slice(text: string, span: Span): string {
  return text.slice(span.start, span.end);
}

/** Whether nothing but blanks stands before the offset on its line. */
export function startsLine(offset: number, text: string): boolean {
  for (let i = offset - 1; i >= 0; i--) {
    const character = text[i] ?? '';
    if (character === '\n' || character === '\r') return true;
    if (character !== ' ' && character !== '\t') return false;
  }
  return true;
}

/** The first offset from here on that is no blank and no line end. */
export function skipBlank(start: number, text: string): number {
  let offset = start;
  while (offset < text.length && /\s/.test(text[offset] ?? '')) offset++;
  return offset;
}

/** Past blanks, line ends and comments. */
export function skipLinesWithoutText(start: number, text: string): number {
  let offset = skipBlank(start, text);
  while (text[offset] === '#') {
    while (offset < text.length && !/[\r\n]/.test(text[offset] ?? '')) offset++;
    offset = skipBlank(offset, text);
  }
  return offset;
}

/** Start of a quoted text that ends right before the offset and spans lines: there the closing quote was forgotten. */
export function multilineQuoteBefore(offset: number, text: string): number | undefined {
  const before = text.slice(0, offset).trimEnd();
  const quote = before.slice(-1);
  if (quote !== '"' && quote !== "'") return undefined;
  const start = before.lastIndexOf(quote, before.length - 2);
  return start >= 0 && /[\r\n]/.test(before.slice(start)) ? start : undefined;
}

/** The last quote before the offset that stands where a value or key may begin. */
export function openQuote(offset: number, text: string, quote: string): number {
  for (let i = Math.min(offset, text.length) - 1; i >= 0; i--) {
    if (text[i] === quote && /^$|[\s,:[{(-]/.test(text[i - 1] ?? '')) return i;
  }
  return Math.max(0, text.lastIndexOf(quote, offset));
}
