/**
 * What the file demands, decided on the solved travel.
 *
 * A `where` that never holds makes the comparison in which it stands fail, under `not` too. What has no value (a column that has none
 * there or that is not solved, a position beyond the travel, a column at no position) leaves its comparison undecided, and by Kleene's
 * three-valued logic the requirement wherever its outcome depends on it.
 */
import type { Definition } from '../definition/definition.ts';
import type { Requirement } from '../definition/formula/formula.ts';
import type { Problem } from '../definition/problem.ts';
import type { Span } from '../definition/span.ts';
import type { Column } from '../table/column.ts';
import type { Travel } from '../travel/travel.ts';
import { comparisonsOf, type ComparisonTools } from './comparisons.ts';
import { createEvaluator, NOWHERE, type Condition } from './evaluate.ts';
import { createExplainer } from './explain.ts';
import { whyMissing, whyNoForceAt } from './missing.ts';
import type { RequirementAnswer } from './requirement.ts';
import { createSheet } from './sheet.ts';
import { unreadBelow } from './unread.ts';

export interface RequirementCase {
  /** Of the whole file. */
  readonly text: string;
  readonly definition: Definition;
  readonly problems: readonly Problem[];
  /** Absent where nothing could be solved; what does not speak of the travel is decided all the same. */
  readonly travel?: Travel;
  /** Those that were solved. */
  readonly columns: readonly Column[];
}

/** In the order of the file; never throws. */
export function decideRequirements({ text, definition, problems, travel, columns }: RequirementCase): readonly RequirementAnswer[] {
  const { requirements, lets } = definition;
  if (requirements.length === 0) return [];
  const sheet = createSheet(
    travel,
    columns.filter(({ name }) => unreadBelow(name, definition) === undefined),
  );
  const evaluator = createEvaluator(
    sheet,
    Float64Array.from(lets, ({ value }) => value.nominal),
  );
  const quote = ({ start, end }: Span): string => text.slice(start, end);
  const explainer = createExplainer(
    sheet,
    quote,
    (name) => whyMissing(name, definition, travel?.mechanism),
    (name, at) => travel && whyNoForceAt(name, travel, at),
  );
  const tools: ComparisonTools = { sheet, explainer, kinds: lets.map(({ kind }) => kind), quote };
  // All are read before the first is decided, so that a station is solved once for all columns that they ask for.
  const conditions = requirements.map(({ expression }) => expression && evaluator.condition(expression));
  return requirements.map((requirement, index) => {
    const condition = conditions[index];
    if (condition === undefined)
      return { requirement, outcome: 'undecided', reason: notUnderstood(requirement, problems), comparisons: [] };
    return answer(requirement, condition, tools);
  });
}

function answer(requirement: Requirement, condition: Condition, tools: ComparisonTools): RequirementAnswer {
  const truth = condition.run(NOWHERE);
  const comparisons = comparisonsOf(condition, tools);
  if (truth === undefined) return { requirement, outcome: 'undecided', reason: tools.explainer.condition(condition, NOWHERE), comparisons };
  if (truth) return { requirement, outcome: 'passed', comparisons };
  const never = comparisons.find(({ holds, reason }) => holds === false && reason !== undefined)?.reason;
  return { requirement, outcome: 'failed', ...(never !== undefined && { reason: never }), comparisons };
}

/** The problem itself is told where it stands, and once. */
function notUnderstood({ span }: Requirement, problems: readonly Problem[]): string {
  const own = problems.some((problem) => problem.span.start >= span.start && problem.span.end <= span.end);
  return own ? 'It is not understood; see the problem with its text' : 'It uses a value or a part that is not understood';
}
