/** Titles of text fixes: what will stand in the file, not what is wrong with it. */
import type { ProblemCode } from '../definition/codes.ts';
import { applyEdits } from '../definition/edit.ts';
import type { Replacement } from '../definition/problem.ts';
import type { Span } from '../definition/span.ts';

/** @param about place of the problem, which is shown as it will read where the edits lie in it or beside it */
export function titleOfEdits(text: string, about: Span, edits: readonly Replacement[]): string {
  const [first, second] = edits;
  const was = (edit: Replacement): string => text.slice(edit.span.start, edit.span.end);
  if (first === undefined) return 'Leave it as it is';
  if (edits.every((edit) => edit.text !== '' && edit.text.trim() === '' && was(edit).trim() === '')) return 'Indent with spaces';
  if (second !== undefined) {
    if (edits.length === 2 && was(first) === second.text && was(second) === first.text) {
      return `Exchange ${code(second.text)} and ${code(first.text)}`;
    }
    if (edits.some((edit) => outside(edit.span, about)))
      return `Write ${edits
        .slice(0, SHOWN)
        .map((edit) => code(edit.text))
        .join(', ')}`;
  }
  const start = Math.min(about.start, ...edits.map(({ span }) => span.start));
  const end = Math.max(about.end, ...edits.map(({ span }) => span.end));
  const moved = edits.map(({ span, text: written }) => ({ span: { start: span.start - start, end: span.end - start }, text: written }));
  const becomes = applyEdits(text.slice(start, end), moved).trim();
  // A problem of the whole file is not shown as a whole.
  const result = /[\r\n]/.test(becomes) ? first.text.trim() : becomes;
  return result === '' ? `Leave out ${code(was(first))}` : `Write ${code(result)}`;
}

/** @param count of the problems, two at least */
export function titleOfAll(problem: ProblemCode, count: number): string {
  return `Do so for all ${count} ${KINDS[problem] ?? 'problems of this kind'} in this file`;
}

const SHOWN = 3;
/** Longer titles are cut off by editors. */
const LONGEST = 60;

/** What the problems of a code that are mended at once are called. */
const KINDS: Partial<Readonly<Record<ProblemCode, string>>> = {
  'unknown-key': 'misspelt keys',
  'unknown-name': 'misspelt names',
  'unknown-unit': 'misspelt units',
  'wrong-value': 'misspelt words',
  'wrong-unit': 'units that do not fit',
  'missing-unit': 'figures without a unit',
  'bad-quantity': 'figures that cannot be read',
  'bad-tolerance': 'tolerances that cannot be read',
  'quote-formula': 'formulas without quotes',
};

function outside(inner: Span, outer: Span): boolean {
  return inner.end < outer.start || inner.start > outer.end;
}

function code(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  const shown = line.length > LONGEST ? `${line.slice(0, LONGEST - 1)}…` : line;
  return `\`${shown}\``;
}
