/** A quick fix as data: a text with one thing wrong, what is chosen, and what stands there afterwards. */

export interface FixCase {
  /** Code of the problem that it mends. */
  readonly code: string;
  /** With its mistake, LF line ends. */
  readonly text: string;
  /** Where the cursor stands: at the start of this, which stands once in the text. */
  readonly at: string;
  /** As the menu shows it. Of a fix that solves for a figure also what it is called before that, which a busy editor may still show. */
  readonly titles: readonly string[];
  /** What stands once in the text and what stands in its place afterwards; nothing else changes. */
  readonly edits: readonly (readonly [before: string, after: string])[];
  /** Of a fix that solves for a figure: which kind of figure it writes, block and key of its path. */
  readonly figure?: string;
}

/** The text as it must read afterwards. */
export function mended({ text, edits }: FixCase): string {
  return edits.reduce((all, [before, after]) => replacedOnce(all, before, after), text);
}

function replacedOnce(text: string, before: string, after: string): string {
  const start = text.indexOf(before);
  if (start < 0 || text.includes(before, start + 1)) throw new Error(`“${before}” does not stand once in:\n${text}`);
  return text.slice(0, start) + after + text.slice(start + before.length);
}

/** Codes of what the fix brings about and says so, as `(but then …)` in its title. */
export function announced({ titles }: FixCase): readonly string[] {
  return titles.flatMap((title) => /\(but then ([a-z-]+)\)$/.exec(title)?.[1] ?? []);
}

/** A row of a table of cases. */
export type Row = readonly [text: string, figure: string, offered: string, solved: string, before: string, after: string, at?: string];

/** @param at where the cursor stands, unless a row has a place of its own; empty: at what is replaced */
export function figureCases(code: string, at: string, rows: readonly Row[]): readonly FixCase[] {
  return rows.map(([text, figure, offered, solved, before, after, place]) => ({
    code,
    text,
    at: place ?? (at === '' ? before : at),
    titles: [solved, offered],
    edits: [[before, after]],
    figure,
  }));
}
