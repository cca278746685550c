/**
 * Quick fixes for problems of the text: the edits that a problem carries, with a title that says what will stand there.
 * They go by the problem's code and its edits, never by its message.
 */
import type { ProblemCode } from '../definition/codes.ts';
import type { Problem, Replacement } from '../definition/problem.ts';
import type { Span } from '../definition/span.ts';
import type { Answers } from '../solve.ts';
import { titleOfAll, titleOfEdits } from './fixTitle.ts';
import { judgeOf } from './oneAnswer.ts';
import { touches } from './touches.ts';

/** Edits of the text that mend one problem, or every problem of one code. */
export interface TextFix {
  /** Says what is written, e.g. ``Write `radius` ``. */
  readonly title: string;
  readonly code: ProblemCode;
  /** The problems that it mends; one, or all of a code. */
  readonly problems: readonly Problem[];
  /** They do not overlap. */
  readonly edits: readonly Replacement[];
  /** Whether nothing else can have been meant, so that the editor may apply it without asking. */
  readonly preferred: boolean;
}

/** Everything that {@link textFixes} needs of the answers. */
export type TextAnswers = Pick<Answers, 'text' | 'problems'>;

/** The fixes of the problems that a stretch touches, each followed by the one for all of its code where there is such a one. */
export function textFixes({ text, problems }: TextAnswers, span: Span): readonly TextFix[] {
  const touched = problems.filter((problem) => touches(problem.span, span));
  const hasOneAnswer = judgeOf(text);
  const fixes = touched.flatMap((problem) => fixOf(text, problem, hasOneAnswer) ?? []);
  const codes = new Set(fixes.filter(({ preferred }) => preferred).map(({ code }) => code));
  return [...fixes, ...[...codes].flatMap((code) => fixOfAll({ text, problems }, code) ?? [])];
}

/** One fix for every problem of a code; undefined where there are not several, or for one of them there is not one right answer. */
export function fixOfAll({ text, problems }: TextAnswers, code: ProblemCode): TextFix | undefined {
  const alike = problems.filter((problem) => problem.code === code);
  if (alike.length < 2 || alike.length > MOST_AT_ONCE) return undefined;
  const hasOneAnswer = judgeOf(text);
  const edits: Replacement[] = [];
  for (const problem of alike) {
    const fix = fixOf(text, problem, hasOneAnswer);
    if (fix?.preferred !== true) return undefined;
    // Two problems may be mended by one edit; edits that cross each other cannot be made at once.
    const fresh = fix.edits.filter((edit) => !edits.some((other) => isSame(edit, other)));
    if (fresh.some((edit) => edits.some((other) => crosses(edit, other)))) return undefined;
    edits.push(...fresh);
  }
  return { title: titleOfAll(code, alike.length), code, problems: alike, edits, preferred: false };
}

/** More mistakes of one kind than a person wants mended unseen; also what keeps the search for crossing edits short. */
const MOST_AT_ONCE = 200;

function fixOf(text: string, problem: Problem, hasOneAnswer: (problem: Problem) => boolean): TextFix | undefined {
  const { code, replacements: edits = [] } = problem;
  if (edits.length === 0 || edits.every(({ span, text: written }) => text.slice(span.start, span.end) === written)) return undefined;
  return { title: titleOfEdits(text, problem.span, edits), code, problems: [problem], edits, preferred: hasOneAnswer(problem) };
}

function isSame(one: Replacement, other: Replacement): boolean {
  return one.span.start === other.span.start && one.span.end === other.span.end && one.text === other.text;
}

/** Whether they change one character, or insert at one place. */
function crosses(one: Replacement, other: Replacement): boolean {
  const within = one.span.start < other.span.end && other.span.start < one.span.end;
  return within || (one.span.start === other.span.start && (one.span.start === one.span.end || other.span.start === other.span.end));
}
