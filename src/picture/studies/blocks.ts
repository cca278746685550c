/** What the pages of studies are made of, as plain data. */
import type { TextPlace } from '../../protocol/report.ts';
import type { ChangedLine, Standing, StudyLine, StudyLines, StudyWrite } from '../../protocol/studies.ts';
import { applyEdits } from '../../definition/edit.ts';
import type { Replacement } from '../../definition/problem.ts';
import type { Study } from '../../findings/study.ts';
import { unknownAt } from '../../language/fixUnknown.ts';

export function line(text: string, sign?: StudyLine['sign'], place?: TextPlace): StudyLine {
  return { text, sign, place };
}

/** Nothing where there is no line. */
export function lines(title: string, all: readonly StudyLine[]): readonly StudyLines[] {
  return all.length === 0 ? [] : [{ kind: 'lines', title, lines: all }];
}

export const standingOf = (isSound: boolean): Standing => (isSound ? 'passed' : 'failed');

/**
 * The figures written anew, or added where the file leaves them out, and nothing else.
 * @returns undefined where one of them cannot be written
 */
export function editsOfWrites(text: string, study: Study, writes: readonly StudyWrite[]): readonly Replacement[] | undefined {
  const edits = writes.map(({ path, value }) => unknownAt(study, path).edit(text, value));
  return edits.every((edit) => edit !== undefined) ? edits : undefined;
}

/** Lines that differ once the figures are written; empty where none does, or they cannot be. */
export function diffOf(text: string, study: Study, writes: readonly StudyWrite[]): readonly ChangedLine[] {
  const edits = editsOfWrites(text, study, writes);
  if (edits === undefined) return [];
  const before = text.split(LINE_END);
  const after = applyEdits(text, edits).split(LINE_END);
  // A figure that is added may take a line of its own.
  const end = before.length - after.length;
  const isSame = (line: number): boolean => before[line] === after[line];
  let first = 0;
  while (first < before.length && isSame(first)) first++;
  if (end === 0) return before.flatMap((was, i) => (isSame(i) ? [] : [{ line: i + 1, was: was.trim(), is: after[i]!.trim() }]));
  const added = after.slice(first, first - end).map((is) => is.trim());
  return [{ line: first + 1, was: '', is: added.join(' ') }];
}

const LINE_END = /\r\n|\r|\n/;
