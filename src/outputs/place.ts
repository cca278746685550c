/** Places in a text as other programs want them: lines and columns from 1, offsets from 0, a byte order mark never counted. */
import { indexLines, type Position, type Span } from '../definition/span.ts';

/** Lines and columns from 1, offsets from 0; columns and offsets in UTF-16 code units; the end is the first place behind. */
export interface Place {
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
  readonly offset: number;
  readonly endOffset: number;
}

/** Tells the place of each span of one text; what lies outside the text is held to its ends. */
export function placesIn(text: string): (span: Span) => Place {
  const lines = indexLines(text);
  const mark = text.startsWith(BYTE_ORDER_MARK) ? BYTE_ORDER_MARK.length : 0;
  const held = (offset: number): number => Math.min(Math.max(mark, offset), text.length);
  const column = ({ line, character }: Position): number => character + 1 - (line === 0 ? mark : 0);
  return (span) => {
    const [start, end] = [held(span.start), Math.max(held(span.start), held(span.end))];
    const [from, to] = [lines.positionAt(start), lines.positionAt(end)];
    return {
      line: from.line + 1,
      column: column(from),
      endLine: to.line + 1,
      endColumn: column(to),
      offset: start - mark,
      endOffset: end - mark,
    };
  };
}

const BYTE_ORDER_MARK = '\ufeff';
