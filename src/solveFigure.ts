/**
 * The values of one figure of a file at which something that is demanded is just met: a text and a question in, choices with their edits out,
 * for the command line and for the editor, whose question is about the figure under the cursor.
 *
 * What is demanded is a line of `require` by its name, or a condition as such a line would have it. It is put into the text, and each value is
 * a text solved: whatever a file may hold can be changed, and whatever a requirement may speak of can be demanded.
 */
import { addKey, applyEdits } from './definition/edit.ts';
import type { Definition } from './definition/definition.ts';
import type { Dimension } from './definition/dimensions.ts';
import { differenceOf, floorOf } from './definition/formula/compare.ts';
import { nearestWord } from './definition/names.ts';
import type { Replacement } from './definition/problem.ts';
import { boundsOf, pathOf, refused, type FigureBounds, type Refused } from './figureBounds.ts';
import { roundFigures } from './definition/quantity/roundFigures.ts';
import { isWhole } from './language/fixBounds.ts';
import { unknownAt, type Unknown } from './language/fixUnknown.ts';
import { decideRequirements } from './requirements/decide.ts';
import type { RequirementAnswer } from './requirements/requirement.ts';
import { solve, solveMotion, type Answers } from './solve.ts';
import { comparing } from './studies/compare.ts';
import type { Comparison } from './studies/compare/comparison.ts';
import { saying } from './studies/saying.ts';
import { wantedFigure, type Look, type LookProgress, type Stretch, type WantedFigure, type WantedRoot } from './studies/wantedFigure.ts';

export interface FigureQuestion {
  /** The figure that may be changed: a name of `let`, or a path such as `rods.link.length`. */
  readonly change: string;
  /** A name of `require`, or a condition. */
  readonly demand: string;
  /** Bounds as a person writes them; the usual ones where absent. */
  readonly from?: string;
  readonly to?: string;
  /** Values that are looked at first; `FIGURE_PLACES` where absent. */
  readonly places?: number;
}

export const FIGURE_PLACES = 129;

export type FigureOutcome =
  /** `why` is a sentence without a full stop, and so is `cure`. */
  { readonly kind: 'refused'; readonly why: string; readonly cure?: string } | FigureSolved;

export interface FigureSolved {
  readonly kind: 'solved';
  readonly change: {
    readonly path: string;
    readonly name: string;
    readonly present: number;
    readonly dimension: Dimension;
    readonly unit: string;
  };
  /** As demanded; `name` is undefined for a condition that the file does not have. */
  readonly demand: { readonly name: string | undefined; readonly text: string };
  readonly bounds: FigureBounds;
  /**
   * How it was searched: at so many values evenly within the bounds, those without a value among them, and finer where it mattered;
   * not between the values of a figure that is `whole`.
   */
  readonly search: { readonly places: number; readonly missing: number; readonly whole: boolean };
  /** How the file stands to the demand now. */
  readonly now: RequirementAnswer;
  /** Rising. Empty where nothing within the bounds just meets the demand. */
  readonly choices: readonly FigureChoice[];
  /** Where there are no choices: what comes nearest; undefined where the demand has no value anywhere. */
  readonly nearest: { readonly value: number; readonly answer: RequirementAnswer } | undefined;
  readonly holding: readonly Stretch[];
}

export interface FigureChoice {
  /** Where the demand is just met, SI. */
  readonly root: number;
  /** What is written: the root rounded to what a workshop works to, on the side on which the demand holds, where there is one. */
  readonly value: number;
  /** Number of the comparison that is just met, where the demand has several. */
  readonly comparison: number;
  /** With the value that is written. */
  readonly answer: RequirementAnswer;
  readonly edits: readonly Replacement[];
  /** What else it does to the file. */
  readonly effects: Comparison;
}

/** Yields after each look; whoever asks for the next decides whether to go on. Never throws, whatever the text and the question. */
export function* solveFigure(text: string, question: FigureQuestion): Generator<LookProgress, FigureOutcome> {
  const wanted = question.places ?? FIGURE_PLACES;
  const begun: LookProgress = { done: 0, of: wanted };
  const answers = solve(text);
  yield begun;
  const { study, definition } = answers;
  if (study === undefined || definition === undefined) return refused('Nothing in the file can be solved');
  const path = pathOf(question.change, study);
  if (typeof path !== 'string') return path;
  const demand = demandIn(text, definition, question.demand.trim());
  if (demand.kind === 'refused') return demand;
  const unknown = unknownAt(study, path);
  const bounds = boundsOf(question, study, unknown);
  if ('kind' in bounds) return bounds;
  const whole = isWhole(path);
  const places = whole ? Math.min(wanted, bounds.to - bounds.from + 1) : wanted;
  const { name, asked } = demand;
  const answerAt = (value: number, digits?: number): RequirementAnswer | undefined => {
    const edit = unknown.edit(asked, value, digits);
    return edit && decided(applyEdits(asked, [edit]), name, edit);
  };
  yield begun;
  const now = decided(asked, name);
  yield begun;
  if (now === undefined || now.comparisons.length === 0) return refused(now?.reason ?? `\`${question.demand}\` cannot be decided`);
  if (unknown.edit(text, unknown.present) === undefined) return refused(`\`${path}\` cannot be written into this text`);
  const look = (value: number): Look => lookOf(answerAt(value, EXACT), now.comparisons.length);
  const found = yield* wantedFigure(look, { ...bounds, places, whole });
  if (!found.matters) return refused(whyNothing(found, places, question, now));
  const looked = (): LookProgress => ({ done: places, of: places });
  const choices: FigureChoice[] = [];
  for (const root of found.roots) {
    const choice = yield* saying(choiceOf(answers, unknown, root, answerAt), looked);
    // Two roots may round to one figure.
    // Of several comparisons one may be just met where another is not: that is no answer.
    if (choice === undefined || (now.comparisons.length > 1 && choice.answer.outcome !== 'passed')) continue;
    if (!choices.some(({ value }) => value === choice.value)) choices.push(choice);
  }
  const nearest = choices.length === 0 && found.nearest !== undefined ? found.nearest.value : undefined;
  const nearAnswer = nearest === undefined ? undefined : answerAt(nearest);
  return {
    kind: 'solved',
    change: { path, name: question.change, present: unknown.present, dimension: unknown.dimension, unit: unknown.unit },
    demand: { name: demand.isOwn ? name : undefined, text: demand.text },
    bounds,
    search: { places, missing: found.missing, whole },
    now,
    choices,
    nearest: nearest === undefined || nearAnswer === undefined ? undefined : { value: nearest, answer: nearAnswer },
    holding: found.holding,
  };
}

/** Significant digits that hold a value for the search. */
const EXACT = 16;

interface Demand {
  readonly kind: 'demand';
  readonly text: string;
  /** The file's text with the demand in it, and its name there. */
  readonly asked: string;
  readonly name: string;
  readonly isOwn: boolean;
}

function demandIn(text: string, { requirements }: Definition, demand: string): Demand | Refused {
  const names = requirements.map(({ name }) => name);
  const own = requirements.find(({ name }) => name === demand);
  if (own !== undefined) return { kind: 'demand', text: own.text, asked: text, name: demand, isOwn: true };
  if (!/[<>=]/.test(demand)) {
    const near = nearestWord(demand, names);
    const cure =
      near === undefined
        ? `Write a comparison, such as \`at(25%, shaft.opening) == 8 deg\`${names.length === 0 ? '' : `, or one of \`${names.slice(0, 8).join('`, `')}\``}`
        : `Did you mean \`${near}\`?`;
    return refused(demand === '' ? 'What is demanded is missing' : `The file has no requirement \`${demand}\``, cure);
  }
  if (/[\r\n]/.test(demand)) return refused('What is demanded runs over several lines');
  let name = 'demanded';
  while (names.includes(name)) name += '_';
  // In double quotes YAML reads what JSON writes.
  const end = text === '' || text.endsWith('\n') ? '' : '\n';
  const insertion = addKey(text, 'require', name, demand) ?? {
    span: { start: text.length, end: text.length },
    text: `${end}require:\n  ${name}: ${JSON.stringify(demand)}\n`,
  };
  const asked = applyEdits(text, [insertion]);
  const { definition, problems } = solveMotion(asked);
  const { start } = insertion.span;
  const wrong = problems.find(
    ({ span, severity }) => severity === 'error' && span.start >= start && span.end <= start + insertion.text.length,
  );
  if (wrong !== undefined) return refused(wrong.message, wrong.cure);
  return definition?.requirements.some((each) => each.name === name) === true
    ? { kind: 'demand', text: demand, asked, name, isOwn: false }
    : refused('The demand cannot be put into this text', 'Write it into `require` of the file and give its name');
}

/** How a text stands to one of its requirements; undefined where what was written into it is not understood. */
function decided(text: string, name: string, written?: Replacement): RequirementAnswer | undefined {
  const { definition, problems, travel, columns } = solveMotion(text);
  const requirements = definition?.requirements.filter((each) => each.name === name) ?? [];
  if (definition === undefined || requirements.length === 0) return undefined;
  const [start, end] = written === undefined ? [Infinity, -Infinity] : [written.span.start, written.span.start + written.text.length];
  if (problems.some(({ severity, span }) => severity === 'error' && span.start < end && span.end > start)) return undefined;
  const [answer] = decideRequirements({ text, definition: { ...definition, requirements }, problems, columns, ...(travel && { travel }) });
  return answer;
}

function lookOf(answer: RequirementAnswer | undefined, comparisons: number): Look {
  const misses = Array.from({ length: comparisons }, (_, i): number => {
    const { actual, demanded } = answer?.comparisons[i] ?? {};
    return differenceOf(actual?.value ?? NaN, demanded?.value ?? NaN, floorOf(actual?.dimension));
  });
  return { misses, holds: answer === undefined || answer.outcome === 'undecided' ? undefined : answer.outcome === 'passed' };
}

function whyNothing({ missing }: WantedFigure, places: number, { change }: FigureQuestion, { reason, outcome }: RequirementAnswer): string {
  return missing === places
    ? `What is demanded has no value with any \`${change}\` within the bounds${reason === undefined ? '' : `: ${reason}`}`
    : `What is demanded does not depend on \`${change}\` within the bounds: it is ${outcome === 'passed' ? '' : 'not '}met whatever that is`;
}

/** Yields as it goes. Undefined where it cannot be written. */
function* choiceOf(
  answers: Answers,
  unknown: Unknown,
  { value: root, comparison }: WantedRoot,
  answerAt: (value: number, digits?: number) => RequirementAnswer | undefined,
): Generator<undefined, FigureChoice | undefined> {
  const rounded = [0, 1, 2].flatMap((finer) => roundFigures(root, unknown.dimension, unknown.unit, finer));
  const exact = DIGITS.map((digits) => Number(root.toPrecision(digits)));
  let value = root;
  for (const each of [...rounded, ...exact]) {
    yield undefined;
    if (answerAt(each)?.outcome !== 'passed') continue;
    value = each;
    break;
  }
  const answer = answerAt(value);
  const edit = unknown.edit(answers.text, value);
  if (answer === undefined || edit === undefined) return undefined;
  yield undefined;
  const changed = solve(applyEdits(answers.text, [edit]));
  yield undefined;
  const effects = yield* comparing(answers, changed);
  return { root, value, comparison, answer, edits: [edit], effects };
}

/** Significant digits of what only an exact figure meets, such as one value being another. */
const DIGITS: readonly number[] = [6, 8, 10, 12];
