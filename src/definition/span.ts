/**
 * Places in a text.
 *
 * Offsets count UTF-16 code units from the start of the text as the person sees it in the editor
 * (a byte order mark counts), which is what both JavaScript strings and editors use.
 */

/** A stretch of text: `start` inclusive, `end` exclusive, both in UTF-16 code units. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** Line and character, both from 0; `character` in UTF-16 code units. */
export interface Position {
  readonly line: number;
  readonly character: number;
}

/** Answers where offsets of one text lie. Lines end at LF, CRLF or a lone CR. */
export interface LineIndex {
  readonly lineCount: number;
  /** Position of an offset; offsets outside the text are held to its ends. */
  positionAt(offset: number): Position;
  /** Offset of the first character of a line; a line past the last gives the text's length. */
  lineStart(line: number): number;
  /** The line's text without its line ending; empty past the last line. */
  lineText(line: number): string;
}

export function indexLines(text: string): LineIndex {
  const starts = [0];
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === LF || (code === CR && text.charCodeAt(i + 1) !== LF)) starts.push(i + 1);
  }
  const lineStart = (line: number): number => starts[Math.max(0, line)] ?? text.length;
  return {
    lineCount: starts.length,
    lineStart,
    lineText(line) {
      if (line < 0 || line >= starts.length) return '';
      return text.slice(lineStart(line), lineStart(line + 1)).replace(/[\r\n]+$/, '');
    },
    positionAt(offset) {
      const held = Math.min(Math.max(0, offset), text.length);
      let low = 0;
      let high = starts.length - 1;
      while (low < high) {
        const middle = (low + high + 1) >> 1;
        if (lineStart(middle) <= held) low = middle;
        else high = middle - 1;
      }
      return { line: low, character: held - lineStart(low) };
    },
  };
}

const LF = 10;
const CR = 13;
