/** An edit on trial: the whole text is solved with it, and what is found then is held against what was found before. */
import { applyEdits } from '../definition/edit.ts';
import type { Replacement } from '../definition/problem.ts';
import type { FindingCode } from '../findings/codes.ts';
import { withFollowing } from '../findings/consequences.ts';
import type { Finding } from '../findings/finding.ts';
import type { Answers } from '../solve.ts';

/** What became of the finding, the best first. */
export type Standing = 'gone' | 'gone-with-warnings' | 'milder' | 'refused';

export interface Trial {
  readonly standing: Standing;
  readonly answers: Answers;
  /** Why it is refused: what else would be wrong then, or that nothing is better. Undefined where it is not refused. */
  readonly why?: string;
  /** What is warned of then and was not before; undefined where nothing is. */
  readonly warned?: string;
}

/** What the edit is meant to mend. */
export interface Meant {
  readonly code: FindingCode;
  readonly part: string;
}

/** @param edits of places apart from each other */
export function tryEdits(before: Answers, edits: readonly Replacement[], meant: Meant, solveText: (text: string) => Answers): Trial {
  const answers = solveText(applyEdits(before.text, edits));
  const worse =
    newlyWrong(before, answers, 'error', meant)?.message ?? grownWorse(before, answers, meant)?.message ?? newlyUnmet(before, answers);
  if (worse !== undefined) return { standing: 'refused', answers, why: worse };
  const left = standingOf(before, answers, meant);
  if (left === 'same') return { standing: 'refused', answers, why: 'the finding stays' };
  const warned = newlyWrong(before, answers, 'warning', meant);
  const standing = left === 'milder' ? left : warned === undefined ? 'gone' : 'gone-with-warnings';
  return { standing, answers, ...(warned !== undefined && { warned: warned.code }) };
}

/** A finding that is a note by then asks for nothing. */
function findingsOf({ findings }: Answers, { code, part }: Meant, least: 'warning' | 'note'): readonly Finding[] {
  return withFollowing(findings).filter(
    (finding) => finding.code === code && finding.part === part && RANK[finding.severity] >= RANK[least],
  );
}

function standingOf(before: Answers, after: Answers, meant: Meant): 'gone' | 'milder' | 'same' {
  const had = findingsOf(before, meant, 'note');
  const least = had.every(({ severity }) => severity === 'note') ? 'note' : 'warning';
  return becomes(had, findingsOf(after, meant, least));
}

function becomes(before: readonly Finding[], after: readonly Finding[]): 'gone' | 'milder' | 'same' {
  if (after.length === 0) return 'gone';
  if (after.length < before.length) return 'milder';
  const worst = (of: readonly Finding[]): number => Math.max(...of.map(({ severity }) => RANK[severity]));
  if (worst(after) !== worst(before)) return worst(after) < worst(before) ? 'milder' : 'same';
  return excess(after) < excess(before) * NOTICEABLE ? 'milder' : 'same';
}

/** How far beyond its limit the worst of some findings is; NaN where one has no figure. */
function excess(findings: readonly Finding[]): number {
  return Math.max(...findings.map(({ worst, limit }) => Math.abs((worst?.value ?? NaN) - (limit?.value ?? 0))));
}

/** An error that was there before and goes further beyond its limit then. */
function grownWorse(before: Answers, after: Answers, meant: Meant): Finding | undefined {
  return withFollowing(after.findings).find((finding) => {
    if (finding.severity !== 'error' || (finding.code === meant.code && finding.part === meant.part)) return false;
    return excess(findingsOf(after, finding, 'note')) * NOTICEABLE > excess(findingsOf(before, finding, 'note'));
  });
}

const RANK = { error: 2, warning: 1, note: 0 } as const;

/** A finding that is milder by less than a hundredth is the same to whoever has it. Common practice, no source. */
const NOTICEABLE = 0.99;

type Mark = Answers['problems'][number] | Finding;

/** What follows from a finding counts too: it can come or go while its cause stays. */
function marksOf({ problems, findings }: Answers): readonly Mark[] {
  return [...problems, ...withFollowing(findings)];
}

/** What a finding hides as long as it is there: it is asked of the springs one by one only where all together overcome friction. */
const HIDES: Partial<Readonly<Record<FindingCode, FindingCode>>> = { 'friction-lock': 'closing-margin' };

/** The first thing that is as bad as `least` afterwards and was not before; what the finding hid is no new error. */
function newlyWrong(before: Answers, after: Answers, least: 'error' | 'warning', meant: Meant): Mark | undefined {
  const wasHidden = (mark: Mark): boolean =>
    least === 'error' && 'part' in mark && mark.part === meant.part && mark.code === HIDES[meant.code];
  const keyOf = (mark: Mark): string => ('part' in mark ? `${mark.code} ${mark.part}` : mark.code);
  const isBad = ({ severity }: { readonly severity: keyof typeof RANK }): boolean => RANK[severity] >= RANK[least];
  const counts = new Map<string, number>();
  for (const mark of marksOf(before).filter(isBad)) counts.set(keyOf(mark), (counts.get(keyOf(mark)) ?? 0) + 1);
  for (const mark of marksOf(after).filter(isBad)) {
    const left = (counts.get(keyOf(mark)) ?? 0) - 1;
    if (left < 0 && !wasHidden(mark)) return mark;
    counts.set(keyOf(mark), left);
  }
  return undefined;
}

/** A requirement that the file met before. */
function newlyUnmet(before: Answers, after: Answers): string | undefined {
  const met = new Set(before.requirements.filter(({ outcome }) => outcome === 'passed').map(({ requirement }) => requirement.name));
  const lost = after.requirements.find(({ requirement, outcome }) => outcome !== 'passed' && met.has(requirement.name));
  return lost === undefined ? undefined : `the requirement \`${lost.requirement.name}\` would no longer be met`;
}
