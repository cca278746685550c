/** Places of a text as the core counts them, offsets in UTF-16 code units, and as the editor does, lines and characters. */
import { Range } from 'vscode';
import type { TextDocument } from 'vscode';
import type { Span } from '../src/definition/span.ts';

export function rangeOf(document: TextDocument, { start, end }: Span): Range {
  return new Range(document.positionAt(start), document.positionAt(end));
}

export function spanOf(document: TextDocument, { start, end }: Range): Span {
  return { start: document.offsetAt(start), end: document.offsetAt(end) };
}
