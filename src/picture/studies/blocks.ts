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
  const changed: ChangedLine[] = [];
  // A figure that is added may take lines of its own; none is taken away.
  let extra = after.length - before.length;
  let [i, j] = [0, 0];
  while (j < after.length) {
    const was = before[i];
    if (was === after[j]) {
      i++;
      j++;
      continue;
    }
    const next = was === undefined ? after.length : after.indexOf(was, j);
    const count = next < 0 ? 0 : next - j;
    if (count > 0 && count <= extra) {
      const added = after.slice(j, j + count).map((is) => is.trim());
      changed.push({ line: j + 1, was: '', is: added.join(' ') });
      extra -= count;
      j += count;
    } else {
      changed.push({ line: j + 1, was: (was ?? '').trim(), is: after[j]!.trim() });
      i++;
      j++;
    }
  }
  return changed;
}

const LINE_END = /\r\n|\r|\n/;
