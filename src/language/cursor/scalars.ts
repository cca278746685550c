/** Scalars of the loose outline: where one ends, on its line. */
import type { Span } from '../../definition/span.ts';
import type { LooseScalar } from './looseTree.ts';

/** What a scan of one text carries along. */
export interface Scan {
  readonly text: string;
  readonly comments: Span[];
}

/** A scalar, and where the text goes on behind it. */
export interface Scanned {
  readonly scalar: LooseScalar;
  readonly end: number;
}

/** A quoted text; one that is not closed ends with its line. */
export function scanQuoted(text: string, start: number): Scanned {
  const quote = text[start];
  const style = quote === "'" ? 'single' : 'double';
  let i = start + 1;
  for (; i < text.length && !isLineEnd(text, i); i++) {
    if (style === 'double' && text[i] === '\\' && i + 1 < text.length && !isLineEnd(text, i + 1)) {
      i++;
    } else if (text[i] === quote) {
      if (style === 'double' || text[i + 1] !== quote)
        return { scalar: { kind: 'scalar', span: { start: start + 1, end: i }, style, closed: true }, end: i + 1 };
      i++;
    }
  }
  return { scalar: { kind: 'scalar', span: { start: start + 1, end: i }, style, closed: false }, end: i };
}

/** A text without quotes, up to the end of its line, its comment or what `stops` says. */
export function scanPlain(text: string, start: number, stops: (at: number) => boolean): Scanned {
  let i = start;
  while (i < text.length && !isLineEnd(text, i) && !isComment(text, i) && !stops(i)) i++;
  let end = i;
  while (end > start && isBlank(text, end - 1)) end--;
  return { scalar: { kind: 'scalar', span: { start, end }, style: 'plain', closed: true }, end: i };
}

/** Behind blanks, and behind an anchor or a tag, which say nothing of the place. */
export function skipBlanks(text: string, start: number): number {
  let i = start;
  for (;;) {
    while (i < text.length && isBlank(text, i)) i++;
    if (text[i] !== '&' && text[i] !== '!') return i;
    const word = i;
    while (i < text.length && !isBlank(text, i) && !isLineEnd(text, i) && !',[]{}'.includes(text[i]!)) i++;
    // An anchor that is not followed by a blank is still being written.
    if (!isBlank(text, i) && !isLineEnd(text, i)) return word;
  }
}

export function isBlank(text: string, at: number): boolean {
  return text[at] === ' ' || text[at] === '\t';
}

export function isLineEnd(text: string, at: number): boolean {
  return text[at] === '\n' || text[at] === '\r';
}

/** A `#` begins a comment at the start of a line and behind a blank. */
export function isComment(text: string, at: number): boolean {
  return text[at] === '#' && (at === 0 || isBlank(text, at - 1) || isLineEnd(text, at - 1) || text[at - 1] === '\ufeff');
}

/** End of a line, without its line end. */
export function lineEndFrom(text: string, start: number): number {
  let i = start;
  while (i < text.length && !isLineEnd(text, i)) i++;
  return i;
}

/** Start of the next line; the text's end behind the last. */
export function nextLine(text: string, lineEnd: number): number {
  return Math.min(text.length, lineEnd + (text[lineEnd] === '\r' && text[lineEnd + 1] === '\n' ? 2 : 1));
}
