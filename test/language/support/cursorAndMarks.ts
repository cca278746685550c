/**
 * Throttle files with a cursor, `$0`, and with marks under their lines:
 *
 *     link: {from: cra$0nk.out, to: shaft.arm}
 *   #              ^^^^^^^ use
 *
 * Carets stand under what is seen, `$0` and all. A line may hold several runs, told apart by blanks or by taking `^` and `~`
 * in turn, with as many words after them. A run that touches the `#` counts it as its first; `#<` marks the first
 * character alone. Lines with marks are taken out.
 */
import type { Span } from '../../../src/definition/span.ts';

export interface Marked {
  readonly text: string;
  /** Undefined where there is no `$0`. */
  readonly cursor: number | undefined;
  /** In the order of the text. */
  readonly marks: readonly Mark[];
}

export interface Mark {
  readonly span: Span;
  readonly words: string;
}

export function takeMarks(annotated: string): Marked {
  let text = '';
  let cursor: number | undefined;
  let line = { start: 0, shown: '' };
  const marks: Mark[] = [];
  for (const shown of annotated.split(/(?<=\n)/)) {
    const mark = /^(\s*)#(<|[\s^~]*[\^~]) (\S.*?)\s*$/.exec(shown);
    if (mark === null) {
      line = { start: text.length, shown };
      const at = shown.indexOf('$0');
      if (at >= 0) cursor = text.length + at;
      text += shown.replace('$0', '');
      continue;
    }
    const [, indent = '', body = '', words = ''] = mark;
    const runs = runsOf(body, indent.length);
    const told = words.split(/\s+/);
    if (runs.length !== told.length) throw new Error(`${runs.length} runs and ${told.length} words in ${shown}`);
    for (const [i, run] of runs.entries()) {
      marks.push({ span: { start: place(run.start, line), end: place(run.end, line) }, words: told[i] ?? '' });
    }
  }
  return { text, cursor, marks: marks.sort((a, b) => a.span.start - b.span.start) };
}

/** A text with a cursor in it. */
export function takeCursor(annotated: string): { readonly text: string; readonly cursor: number } {
  const cursor = annotated.indexOf('$0');
  if (cursor < 0) throw new Error('There is no $0');
  return { text: annotated.replace('$0', ''), cursor };
}

/** Stretches of a text by what stands there, for comparing. */
export function shown(text: string, span: Span): string {
  return `${span.start}-${span.end} ${JSON.stringify(text.slice(span.start, span.end))}`;
}

function runsOf(body: string, hash: number): readonly Span[] {
  if (body === '<') return [{ start: hash, end: hash + 1 }];
  const runs = [...body.matchAll(/\^+|~+/g)].map(({ index, 0: run }) => ({ start: hash + 1 + index, end: hash + 1 + index + run.length }));
  const [first, ...others] = runs;
  return first?.start === hash + 1 ? [{ ...first, start: hash }, ...others] : runs;
}

function place(column: number, { start, shown }: { readonly start: number; readonly shown: string }): number {
  const cursor = shown.indexOf('$0');
  return start + (cursor >= 0 && cursor < column ? Math.max(cursor, column - 2) : column);
}
