/**
 * The line of a text that something is about, with its number, and carets under the very characters:
 *
 *     12 |     out: {radius: 0 mm}
 *        |                   ^^^^
 */
import { indexLines, type LineIndex, type Span } from '../definition/span.ts';
import { plain, printable, type Paint, type Style } from './paint.ts';
import { cells, widthOf } from './width.ts';

export interface ExcerptOptions {
  readonly paint?: Paint;
  /** Style of the carets. */
  readonly style?: Style;
  /** Cells that the line of source may take, 20 at least. */
  readonly width?: number;
  /** The text's own index, where the caller has it already. */
  readonly lines?: LineIndex;
}

/**
 * Two lines of text, without line ending. A span over several lines is shown by its first; an empty one by one caret;
 * a long line by what stands around the span.
 */
export function excerpt(text: string, span: Span, options: ExcerptOptions = {}): readonly string[] {
  const { paint = plain, style = 'error', width = DEFAULT_WIDTH, lines = indexLines(text) } = options;
  const start = lines.positionAt(span.start);
  const end = lines.positionAt(span.end);
  const source = lines.lineText(start.line);
  const from = Math.min(start.character, source.length);
  const to = Math.max(from, end.line === start.line ? Math.min(end.character, source.length) : source.length);
  const shown = trim(source, from, to, Math.max(SHORTEST, width));
  const number = String(start.line + 1);
  const carets = '^'.repeat(Math.max(1, widthOf(shown.marked)));
  return [
    `${paint('quiet', `${number} |`)} ${shown.before}${shown.marked}${shown.after}`.trimEnd(),
    `${paint('quiet', `${' '.repeat(number.length)} |`)} ${' '.repeat(widthOf(shown.before))}${paint(style, carets)}`,
  ];
}

/** `file:line:column`, both from 1; the column counts characters as editors do. */
export function placeName(file: string, span: Span, lines: LineIndex): string {
  const { line, character } = lines.positionAt(span.start);
  const mark = line === 0 && lines.lineText(0).startsWith('\ufeff') && character > 0 ? 1 : 0;
  return `${printable(file)}:${line + 1}:${character - mark + 1}`;
}

const DEFAULT_WIDTH = 110;
const SHORTEST = 20;
const TAB = '  ';

interface Shown {
  readonly before: string;
  readonly marked: string;
  readonly after: string;
}

function trim(source: string, from: number, to: number, width: number): Shown {
  const before = showable(source.slice(0, from));
  const marked = showable(source.slice(from, to));
  const after = showable(source.slice(to));
  if (widthOf(before) + widthOf(marked) + widthOf(after) <= width) return { before, marked, after };
  // What is marked goes first; a third of what is left over stands before it, the rest behind.
  const head = cutEnd(marked, width - 2);
  const room = width - widthOf(head);
  const lead = cutStart(before, Math.max(Math.floor(room / 3), room - widthOf(after), 1));
  return { before: lead, marked: head, after: head === marked ? cutEnd(after, Math.max(1, room - widthOf(lead))) : '' };
}

function showable(text: string): string {
  return printable(text.replace(/^\ufeff/, '').replaceAll('\t', TAB));
}

/** The longest beginning that fits, `…` in place of what is missing. */
function cutEnd(text: string, width: number): string {
  if (widthOf(text) <= width) return text;
  return `${fitting(Array.from(text), width - 1).join('')}…`;
}

function cutStart(text: string, width: number): string {
  if (widthOf(text) <= width) return text;
  return `…${fitting(Array.from(text).reverse(), width - 1)
    .reverse()
    .join('')}`;
}

function fitting(characters: readonly string[], width: number): string[] {
  let used = 0;
  const count = characters.findIndex((character) => (used += cells(character)) > width);
  return characters.slice(0, count < 0 ? characters.length : count);
}
