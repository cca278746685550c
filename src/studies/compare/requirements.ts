/** How two linkages stand to what their files require. */
import type { ComparedFigure, RequirementAnswer } from '../../requirements/requirement.ts';
import type { RequirementChange, RequirementSide } from './comparison.ts';
import type { Renames } from './names.ts';
import { differs } from './noticeable.ts';

/** @param nameNow name of a requirement of the first file in the second */
export function requirementChanges(
  was: readonly RequirementAnswer[],
  is: readonly RequirementAnswer[],
  nameNow: (name: string) => string,
): readonly RequirementChange[] {
  const before = new Map(was.map((answer) => [nameNow(answer.requirement.name), answer]));
  const changes: RequirementChange[] = [];
  for (const answer of is) {
    const { name } = answer.requirement;
    const other = before.get(name);
    before.delete(name);
    if (other === undefined) changes.push({ name, is: sideOf(answer) });
    else if (standsOtherwise(other, answer)) changes.push({ name, was: sideOf(other), is: sideOf(answer) });
  }
  return [...changes, ...[...before].map(([name, answer]) => ({ name, was: sideOf(answer) }))];
}

/** Columns of which a requirement of either file speaks, `owner.key` by the names of the second. */
export function requiredColumns(
  was: readonly RequirementAnswer[],
  is: readonly RequirementAnswer[],
  renames: Renames,
): ReadonlySet<string> {
  const spoken = (answers: readonly RequirementAnswer[]): readonly string[] =>
    answers.flatMap(({ requirement }) => requirement.text.match(COLUMN) ?? []);
  return new Set([...spoken(was).map(renames.part), ...spoken(is)]);
}

const COLUMN = /[a-z]\w*\.[a-z]\w*/g;

/** Whether it was passed and, still being there, is not now. */
export function isLost({ was, is }: RequirementChange): boolean {
  return was?.outcome === 'passed' && is !== undefined && is.outcome !== 'passed';
}

function sideOf({ requirement, outcome, reason, comparisons }: RequirementAnswer): RequirementSide {
  return {
    outcome,
    span: requirement.span,
    ...(reason !== undefined && { reason }),
    comparisons,
  };
}

function standsOtherwise(was: RequirementAnswer, is: RequirementAnswer): boolean {
  if (was.outcome !== is.outcome || was.comparisons.length !== is.comparisons.length) return true;
  if ((was.reason === undefined) !== (is.reason === undefined)) return true;
  return is.comparisons.some((comparison, index) => {
    const other = was.comparisons[index]!;
    return (['actual', 'demanded', 'margin'] as const).some((key) => otherFigure(other[key], comparison[key]));
  });
}

function otherFigure(was: ComparedFigure | undefined, is: ComparedFigure | undefined): boolean {
  if (was === undefined || is === undefined) return was !== is;
  return was.dimension !== is.dimension || differs(was.value, is.value, is.dimension);
}
