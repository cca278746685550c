/** Findings, problems and things not checked of two files: which are new, gone, and kept but otherwise. */
import type { Figure, Finding, NotChecked } from '../../findings/finding.ts';
import type { Problem } from '../../definition/problem.ts';
import type { Comparison, FindingMark, MarkChanges, ProblemMark, UncheckedMark } from './comparison.ts';
import type { Judge } from './judged.ts';
import type { Renames } from './names.ts';
import { differs } from './noticeable.ts';
import { pathsIn } from './paths.ts';

/** The two judges of a comparison. */
export interface Judges {
  readonly was: Judge;
  readonly is: Judge;
}

/** @param was first file with its findings, `is` the second */
export function findingChanges(was: Marked<Finding>, is: Marked<Finding>, renames: Renames, judges: Judges): MarkChanges<FindingMark> {
  const keysOf = ({ code, part, path }: FindingMark, old: boolean): readonly string[] => {
    const [name, place] = old ? [renames.about(part), renames.path(path)] : [part, path];
    return [`${code} ${name} ${place}`, `${code} ${name}`];
  };
  const { pairs, added, gone } = pairMarks(findingMarks(was), findingMarks(is), keysOf);
  return {
    added: added.map((mark) => ({ ...mark, elsewhere: judges.was.finding(mark.code, mark.part, mark.path) })),
    gone: gone.map((mark) => ({
      ...mark,
      elsewhere: judges.is.finding(mark.code, renames.about(mark.part), renames.path(mark.path)),
    })),
    kept: pairs.filter((pair) => otherwise(pair.was, pair.is)),
  };
}

/** Two problems are one where code and place are, and of several such where the words are. */
export function problemChanges(was: Marked<Problem>, is: Marked<Problem>, renames: Renames): MarkChanges<ProblemMark> {
  const keysOf = ({ code, path, message }: ProblemMark, old: boolean): readonly string[] => {
    const place = old ? renames.path(path) : path;
    return [`${code} ${place} ${message}`, `${code} ${place} ${old ? renames.prose(message) : message}`, `${code} ${place}`];
  };
  const { pairs, added, gone } = pairMarks(problemMarks(was), problemMarks(is), keysOf);
  return { added, gone, kept: pairs.filter((pair) => pair.was.severity !== pair.is.severity) };
}

export function uncheckedChanges(
  was: readonly NotChecked[],
  is: readonly NotChecked[],
  renames: Renames,
  judges: Judges,
): Comparison['notChecked'] {
  // A word of a message may be a part's name and mean none: the message as it stands goes first.
  const keysOf = ({ part, message }: UncheckedMark, old: boolean): readonly string[] => {
    const name = old ? renames.about(part) : part;
    // What is still not checked for another reason is still not checked; the reasons are told of the parts that they lie in.
    return [`${name} ${message}`, `${name} ${old ? renames.prose(message) : message}`, `${name} ${message.replace(REASON, '')}`];
  };
  const { added, gone } = pairMarks(was, is, keysOf);
  const mark = ({ part, span, message }: NotChecked): UncheckedMark => ({ part, span, message });
  return {
    added: added.map((each) => ({ ...mark(each), elsewhere: judges.was.unchecked(each) })),
    gone: gone.map((each) => ({ ...mark(each), elsewhere: judges.is.unchecked({ ...each, part: renames.about(each.part) }) })),
  };
}

const REASON = /, since .*$/;

export interface Marked<Mark> {
  readonly text: string;
  readonly marks: readonly Mark[];
  /** Whether the text is understood far enough to have places. */
  readonly placed: boolean;
}

function findingMarks({ text, marks, placed }: Marked<Finding>): FindingMark[] {
  const pathOf = placed ? pathsIn(text) : () => '';
  return marks.map(({ code, severity, part, span, message, worst, limit }) => ({
    ...{ code, severity, part, path: pathOf(span.start), span, message },
    ...(worst && { worst }),
    ...(limit && { limit: { value: limit.value, dimension: limit.dimension } }),
  }));
}

function problemMarks({ text, marks, placed }: Marked<Problem>): ProblemMark[] {
  const pathOf = placed ? pathsIn(text) : () => '';
  return marks.map(({ code, severity, span, message }) => ({ code, severity, path: pathOf(span.start), span, message }));
}

function otherwise(was: FindingMark, is: FindingMark): boolean {
  return was.severity !== is.severity || otherFigure(was.worst, is.worst) || otherFigure(was.limit, is.limit);
}

function otherFigure(was: Figure | undefined, is: Figure | undefined): boolean {
  if (was === undefined || is === undefined) return was !== is;
  return was.dimension !== is.dimension || differs(was.value, is.value, is.dimension);
}

interface Paired<Mark> {
  readonly pairs: readonly { readonly was: Mark; readonly is: Mark }[];
  readonly added: readonly Mark[];
  readonly gone: readonly Mark[];
}

/** @param keysOf what a mark is known by, the surest first; of several with one key the first goes with the first */
function pairMarks<Mark>(was: readonly Mark[], is: readonly Mark[], keysOf: (mark: Mark, old: boolean) => readonly string[]): Paired<Mark> {
  const partner = new Map<Mark, Mark>();
  const left = new Set(was);
  const levels = Math.max(0, ...[...was, ...is].slice(0, 1).map((mark) => keysOf(mark, false).length));
  for (let level = 0; level < levels; level++) {
    const known = new Map<string, Mark[]>();
    for (const mark of left) {
      const key = keysOf(mark, true)[level]!;
      const same = known.get(key);
      if (same === undefined) known.set(key, [mark]);
      else same.push(mark);
    }
    for (const mark of is) {
      if (partner.has(mark)) continue;
      const other = known.get(keysOf(mark, false)[level]!)?.shift();
      if (other === undefined) continue;
      partner.set(mark, other);
      left.delete(other);
    }
  }
  return {
    pairs: is.flatMap((mark) => {
      const other = partner.get(mark);
      return other === undefined ? [] : [{ was: other, is: mark }];
    }),
    added: is.filter((mark) => !partner.has(mark)),
    gone: [...left],
  };
}
