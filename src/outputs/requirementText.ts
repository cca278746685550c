/** How a linkage stands to what its file requires, as text: one line a requirement, with what is, what is demanded and what is to spare. */
import type { Comparison, ComparedFigure, ComparisonOperator, RequirementAnswer, RequirementOutcome } from '../requirements/requirement.ts';
import { figureText, percentText } from './figure.ts';
import { demandAsWritten } from './demandAsWritten.ts';
import { printable, type Paint, type Style } from './paint.ts';
import { gather, pad, widthOf, wrap } from './width.ts';

interface Page {
  readonly paint: Paint;
  readonly width: number;
}

/** Empty where nothing is required. */
export function requirementSection(answers: readonly RequirementAnswer[], { paint, width }: Page): string[] {
  if (answers.length === 0) return [];
  const names = answers.map(({ requirement }) => printable(requirement.name));
  const nameWidth = Math.min(LONGEST_NAME, Math.max(...names.map(widthOf)));
  const outcomeWidth = Math.max(...answers.map(({ outcome }) => OUTCOMES[outcome].word.length));
  const lead = INDENT.length * 3 + nameWidth + outcomeWidth;
  const rows = answers.flatMap((answer, index) => {
    const { word, style } = OUTCOMES[answer.outcome];
    const name = pad(names[index] ?? '', nameWidth);
    const start = `${INDENT}${name}${INDENT}${paint(style, pad(word, outcomeWidth))}${INDENT}`;
    const room = Math.max(SHORTEST, width - lead);
    const [first = '', ...more] = gather(itemsOf(answer), room).flatMap((line) => wrap(line, room));
    return [(start + first).trimEnd(), ...more.map((line) => ' '.repeat(lead) + line)];
  });
  return [paint('strong', 'Requirements'), ...rows];
}

/** E.g. `2 requirements passed, 1 failed, 1 not decidable`; empty where nothing is required. */
export function requirementCounts(answers: readonly RequirementAnswer[], paint: Paint): string {
  const counts = (['passed', 'failed', 'undecided'] as const)
    .map((outcome) => ({ outcome, count: answers.filter((answer) => answer.outcome === outcome).length }))
    .filter(({ count }) => count > 0);
  return counts
    .map(({ outcome, count }, index) => {
      const { word, style } = OUTCOMES[outcome];
      return paint(style, `${count} ${index > 0 ? '' : count === 1 ? 'requirement ' : 'requirements '}${word}`);
    })
    .join(', ');
}

/** How it stands in words: its comparisons joined by `; `, or why it cannot be decided. */
export function answerText(answer: RequirementAnswer): string {
  return itemsOf(answer).join('; ');
}

/** One comparison in words: `82° ≥ 80° (2° to spare, at 100 %)`, `78°, not ≥ 80° (2° short, at 100 %)`, or why there is no figure. */
export function comparisonText(comparison: Comparison): string {
  const { actual, demanded, margin, holds, reason } = comparison;
  if (reason !== undefined || actual === undefined || demanded === undefined || margin === undefined) return reason ?? '';
  const [shown, limit] = distinct(actual, demanded);
  const notes = marginText(comparison);
  return `${shown}${holds === true ? '' : ', not'} ${demandText(comparison, limit)}${notes === '' ? '' : ` (${notes})`}`;
}

/** What is demanded, e.g. `≥ 80°`; in another unit than that of its place as it is written too: `≥ 2.2 inch^2 = 1419 mm²`. */
export function demandText(comparison: Comparison, limit: string): string {
  const written = demandAsWritten(comparison);
  return `${SIGNS[comparison.operator]} ${written === undefined ? '' : `${written} = `}${limit}`;
}

/** How far a comparison lies within its limit or beyond, and where: `2° short, at 100 %`; empty where there is nothing to tell. */
export function marginText({ operator, actual, demanded, margin, travel }: Comparison): string {
  const apart =
    actual === undefined || demanded === undefined || margin === undefined ? [] : marginNotes(operator, margin, actual, demanded);
  return [...apart, ...(travel === undefined ? [] : [`at ${percentText(travel)}`])].join(', ');
}

/** In the unit of its place; a fraction in percent where it is meant so. @param more digits than usual */
export function comparedText(figure: ComparedFigure, more = 0): string {
  if (figure.dimension === undefined) return `${trimmed(figure.value, FOUR + more)} ${figure.unit}`;
  if (figure.percent !== true) return figureText(figure, more);
  return percentText(figure.value, shareDigits(figure.value) + more);
}

/** Digits behind the point of a share in percent; a small one keeps two that say something. */
function shareDigits(share: number): number {
  const size = Math.abs(share * 100);
  return size < SMALLEST_SHARE || size >= 0.1 ? 1 : 1 - Math.floor(Math.log10(size));
}

/** In percent; what is less is rounding of the computation. */
const SMALLEST_SHARE = 1e-7;

/** Both figures with as many digits as it takes to tell them apart. */
export function distinct(actual: ComparedFigure, demanded: ComparedFigure): readonly [string, string] {
  const texts = (more: number): readonly [string, string] => [comparedText(actual, more), comparedText(demanded, more)];
  if (actual.value === demanded.value) return texts(0);
  for (let more = 0; more < MOST_MORE; more++) {
    const [one, other] = texts(more);
    if (one !== other) return [one, other];
  }
  return texts(0);
}

const INDENT = '  ';
const SHORTEST = 30;
/** Longer names push their own line to the right, not all. */
const LONGEST_NAME = 40;
/** Significant digits of a figure whose unit says nothing of how finely it is made. */
const FOUR = 4;

/** Finer than this is finer than a comparison looks. */
const MOST_MORE = 9;

export const OUTCOMES: Readonly<Record<RequirementOutcome, { readonly word: string; readonly style: Style }>> = {
  passed: { word: 'passed', style: 'quiet' },
  failed: { word: 'failed', style: 'error' },
  undecided: { word: 'not decidable', style: 'warning' },
};

const SIGNS: Readonly<Record<ComparisonOperator, string>> = { '<': '<', '<=': '≤', '>': '>', '>=': '≥', '==': '=', '!=': '≠' };

/** What is told of an answer; the same reason once. */
function itemsOf({ reason, comparisons }: RequirementAnswer): string[] {
  const items = comparisons.length === 0 ? [reason ?? ''] : comparisons.map(comparisonText);
  return [...new Set(items)].map(printable);
}

function marginNotes(operator: ComparisonOperator, margin: ComparedFigure, actual: ComparedFigure, demanded: ComparedFigure): string[] {
  const by = comparedText({ ...margin, value: Math.abs(margin.value) });
  const apart = comparedText({ ...margin, value: Math.abs(actual.value - demanded.value) });
  switch (operator) {
    case '==':
      return margin.value >= 0 ? [] : [`${apart} apart`];
    case '!=':
      return margin.value > 0 ? [`${apart} apart`] : [];
    default:
      if (margin.value === 0) return ['nothing to spare'];
      if (margin.value > 0) return [`${by} to spare`];
      return [`${by} ${operator === '>' || operator === '>=' ? 'short' : 'too much'}`];
  }
}

function trimmed(value: number, digits: number): string {
  const text = value.toPrecision(digits);
  return text.includes('.') && !text.includes('e') ? text.replace(/\.?0+$/, '') : text;
}
