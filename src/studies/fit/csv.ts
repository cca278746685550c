/**
 * Comma-separated values as RFC 4180 has them, also with semicolons or tabs, taken apart with the place of each cell.
 *
 * Line ends are CRLF, LF or a lone CR; a byte order mark is passed over. A quote opens a quoted cell only at the cell's start; within, two
 * stand for one. Blanks around a cell are no part of it.
 */

/** One cell. */
export interface CsvCell {
  /** Without quotes and the blanks around it. */
  readonly text: string;
  /** From 1. */
  readonly line: number;
  /** From 1, in UTF-16 code units: of the quote where it has one. */
  readonly column: number;
  readonly quoted: boolean;
}

export type Separator = ',' | ';' | '\t';

export interface CsvText {
  readonly separator: Separator;
  /** Lines with anything in them. */
  readonly rows: readonly (readonly CsvCell[])[];
  /** A quote that is never closed, or that closes before its cell ends. */
  readonly broken?: { readonly line: number; readonly column: number };
  /** Whether there are more rows than were wanted; the rest is not read. */
  readonly cut: boolean;
}

/** @param most rows after which reading stops */
export function parseCsv(text: string, most: number): CsvText {
  const separator = separatorOf(text);
  const rows: CsvCell[][] = [];
  let row: CsvCell[] = [];
  let at = text.startsWith('\ufeff') ? 1 : 0;
  let line = 1;
  let lineStart = at;
  let broken: CsvText['broken'];
  const endRow = (): void => {
    if (row.some((cell) => cell.text !== '')) rows.push(row);
    row = [];
  };
  while (at <= text.length && rows.length <= most && broken === undefined) {
    while (isBlank(text, at, separator)) at++;
    const start = at;
    const place = { line, column: start - lineStart + 1 };
    let cell = '';
    if (text[at] === '"') {
      at++;
      for (;;) {
        const quote = text.indexOf('"', at);
        const piece = text.slice(at, quote < 0 ? text.length : quote);
        cell += piece;
        for (const { index, 0: end } of piece.matchAll(/\r\n|\n|\r/g)) {
          line++;
          lineStart = at + index + end.length;
        }
        if (quote < 0) {
          broken = place;
          at = text.length;
          break;
        }
        at = quote + 1;
        if (text[at] !== '"') break;
        cell += '"';
        at++;
      }
      while (isBlank(text, at, separator)) at++;
      if (at < text.length && text[at] !== separator && !isLineEnd(text, at)) broken ??= { line, column: at - lineStart + 1 };
      row.push({ text: cell.trim(), ...place, quoted: true });
    } else {
      while (at < text.length && text[at] !== separator && !isLineEnd(text, at)) at++;
      row.push({ text: text.slice(start, at).trim(), ...place, quoted: false });
    }
    if (at >= text.length) {
      endRow();
      break;
    }
    if (text[at] === separator) {
      at++;
      continue;
    }
    if (isLineEnd(text, at)) {
      at += text[at] === '\r' && text[at + 1] === '\n' ? 2 : 1;
      line++;
      lineStart = at;
      endRow();
    }
  }
  return { separator, rows: rows.slice(0, most), ...(broken !== undefined && { broken }), cut: rows.length > most };
}

/** By the first line that has anything in it, outside of quotes: tabs before semicolons before commas. */
function separatorOf(text: string): Separator {
  const first = /[^\r\n]*\S[^\r\n]*/.exec(text)?.[0] ?? '';
  const bare = first.replace(/"[^"]*"?/g, '');
  return bare.includes('\t') ? '\t' : bare.includes(';') ? ';' : ',';
}

function isBlank(text: string, at: number, separator: Separator): boolean {
  return text[at] === ' ' || text[at] === '\u00a0' || (text[at] === '\t' && separator !== '\t');
}

function isLineEnd(text: string, at: number): boolean {
  return text[at] === '\n' || text[at] === '\r';
}
