/**
 * The lines of `require` as tests: each with its outcome, what was expected and what came out, where to show it, and an id that stays the
 * same while the rest of the file changes.
 */
import type { Span } from '../definition/span.ts';
import { answerText, distinct, marginText } from '../outputs/requirementText.ts';
import type { Comparison, RequirementAnswer } from '../requirements/requirement.ts';
import type { Answers } from '../solve.ts';

export interface RequirementTest {
  /** Of the requirement's name alone, so that edits of anything else keep it; unique in its file. */
  readonly id: string;
  /** The name, as in the file. */
  readonly label: string;
  /** The whole line, for the gutter. */
  readonly span: Span;
  /** `errored`: it could not be decided, which is not passed either. */
  readonly outcome: 'passed' | 'failed' | 'errored';
  /** What the comparisons that matter demand, e.g. `at least 81°`; undefined where no figure can be told. */
  readonly expected?: string;
  /** What came out, e.g. `78.2°`. */
  readonly actual?: string;
  /** How far it lies within or beyond, e.g. `2.8° short, at 100 %`; undefined where there is nothing to tell. */
  readonly margin?: string;
  /** Everything in one sentence, without a full stop: for the message and for those who hear it. */
  readonly message: string;
  /** The first comparison that is not met, or the expression. */
  readonly place: Span;
}

/** In the order of the file; empty where nothing is required, or nothing can be understood. */
export function requirementTests({ requirements }: Pick<Answers, 'requirements'>): readonly RequirementTest[] {
  const counts = new Map<string, number>();
  return requirements.map((answer) => {
    const { name } = answer.requirement;
    const count = (counts.get(name) ?? 0) + 1;
    counts.set(name, count);
    return testOf(answer, count === 1 ? `require/${name}` : `require/${name}/${count}`);
  });
}

function testOf(answer: RequirementAnswer, id: string): RequirementTest {
  const { requirement, outcome, comparisons } = answer;
  const unmet = comparisons.filter(({ holds }) => holds !== true);
  // Of one that is not met, only what is not met matters.
  const told = (outcome === 'passed' || unmet.length === 0 ? comparisons : unmet).flatMap((comparison) => figuresOf(comparison) ?? []);
  const [expected, actual, margin] = (['expected', 'actual', 'margin'] as const).map((key) => joined(told.map((each) => each[key])));
  return {
    id,
    label: requirement.name,
    span: requirement.span,
    outcome: outcome === 'undecided' ? 'errored' : outcome,
    ...(expected !== undefined && { expected }),
    ...(actual !== undefined && { actual }),
    ...(margin !== undefined && { margin }),
    message: answerText(answer) || 'It could not be understood',
    place: (outcome === 'passed' ? undefined : unmet[0]?.span) ?? requirement.expressionSpan,
  };
}

function figuresOf(comparison: Comparison): Readonly<Record<'expected' | 'actual' | 'margin', string>> | undefined {
  const { operator, actual, demanded } = comparison;
  if (actual === undefined || demanded === undefined) return undefined;
  const [shown, limit] = distinct(actual, demanded);
  return { expected: `${EXPECTED[operator]} ${limit}`, actual: shown, margin: marginText(comparison) };
}

/** In words: the editor sets its own sign between what came out and what was expected. */
const EXPECTED: Readonly<Record<Comparison['operator'], string>> = {
  '<': 'less than',
  '<=': 'at most',
  '>': 'more than',
  '>=': 'at least',
  '==': 'exactly',
  '!=': 'other than',
};

/** The texts in one; undefined where there are none. */
function joined(texts: readonly string[]): string | undefined {
  const told = texts.filter((text) => text !== '');
  return told.length === 0 ? undefined : told.join('; ');
}
