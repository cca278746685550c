/**
 * The values of one figure at which a demand is just met, as text: what is changed and what is demanded, each value with what it gives and
 * what else it does, where the demand holds, how it was looked for; the caution, and in the last line how it stands.
 */
import { readQuantity } from '../definition/quantity/quantity.ts';
import type { RequirementAnswer } from '../requirements/requirement.ts';
import { FIGURE_DIGITS, shownFigure } from '../figureBounds.ts';
import type { FigureChoice, FigureSolved } from '../solveFigure.ts';
import type { Comparison } from '../studies/compare/comparison.ts';
import type { Stretch } from '../studies/wantedFigure.ts';
import { CAUTION } from './caution.ts';
import { countText } from './figure.ts';
import { plain, printable, type Paint } from './paint.ts';
import { answerText } from './requirementText.ts';
import { wrap } from './width.ts';

export interface SolvedFigureTextOptions {
  /** As the person gave it. */
  readonly file: string;
  readonly paint?: Paint;
  /** Columns of the terminal. */
  readonly width?: number;
}

/** With a line ending. */
export function solvedFigureText(solved: FigureSolved, { file, paint = plain, width = 110 }: SolvedFigureTextOptions): string {
  const lines = (items: readonly string[]): string[] =>
    items.flatMap((item) => wrap(printable(item), width - 4).map((line, i) => (i === 0 ? `  ${line}` : `    ${line}`)));
  const { change, demand, now, choices } = solved;
  const sections = [
    [paint('strong', printable(file))],
    [
      paint('strong', 'What is asked'),
      ...lines([
        `change ${change.name} (now ${shown(solved, change.present, NOW)}) within ${boundsWords(solved)}`,
        `for ${demand.name === undefined ? '' : `${demand.name}: `}${demand.text}`,
        `as the file stands: ${answerText(now)}`,
      ]),
    ],
    ...choices.map((choice) => [
      paint('strong', printable(`${change.name}: ${shown(solved, choice.value)}`)),
      ...lines([...gives(solved, choice), `besides: ${effectsText(choice.effects, demand.name)}`]),
    ]),
    choices.length > 0 ? [] : [paint('strong', 'No value'), ...lines(nearestWords(solved))],
    [paint('strong', 'Where it holds'), ...lines([holdingWords(solved)])],
    [paint('strong', 'How it was looked for'), ...lines(searchWords(solved))],
    wrap(`Caution. ${CAUTION}`, width),
    [`${printable(file)}: ${verdictWords(solved)}`],
  ];
  return `${sections
    .filter((section) => section.length > 0)
    .map((section) => section.join('\n'))
    .join('\n\n')}\n`;
}

export function shown({ change }: FigureSolved, value: number, digits = FIGURE_DIGITS): string {
  return shownFigure(value, change, digits);
}

export function boundsWords(solved: FigureSolved): string {
  const { from, to, by } = solved.bounds;
  const range = `${shown(solved, from, ROUGH)} to ${shown(solved, to, ROUGH)}`;
  switch (by) {
    case 'asked':
      return range;
    case 'tune':
      return `${range}, the bounds in \`tune\``;
    case 'usual':
      return `${range}, the usual bounds (common practice, no source), as far as the format and \`adjust\` let it`;
  }
}

/** Significant digits of the figure as it is. */
const NOW = 8;
/** Of one that is only told. */
const ROUGH = 5;

export function gives(solved: FigureSolved, { root, value, answer }: FigureChoice): readonly string[] {
  const rounded = value === root ? '' : `, written round; just met at ${shown(solved, root)}`;
  return [`${answerText(answer)}${rounded}`];
}

/** What a value does to the rest of the file, in one line. @param asked the requirement that it is for, told by itself */
export function effectsText({ findings, requirements, problems }: Comparison, asked: string | undefined): string {
  const told = ({ severity }: { readonly severity: string }): boolean => severity !== 'note';
  const named = ({ code, part }: { readonly code: string; readonly part: string }): string => `${code} of ${part}`;
  const outcome = (name: string, is: RequirementAnswer['outcome']): string =>
    `${name} ${is === 'passed' ? 'is met' : is === 'failed' ? 'is no longer met' : 'is no longer decidable'}`;
  const items = [
    ...requirements.flatMap(({ name, was, is }) =>
      name === asked || is === undefined || was?.outcome === is.outcome ? [] : [outcome(name, is.outcome)],
    ),
    ...problems.added.filter(told).map(({ message }) => `new ${message}`),
    ...findings.added.filter(told).map((mark) => `new ${mark.severity} ${named(mark)}`),
    ...findings.kept
      .filter(({ was, is }) => was.severity !== is.severity && (told(was) || told(is)))
      .map(({ was, is }) => `${named(is)} ${was.severity} → ${is.severity}`),
    ...findings.gone.filter(told).map((mark) => `${named(mark)} gone`),
  ];
  return items.length === 0 ? 'no requirement, error or warning changes' : items.join('; ');
}

export function nearestWords(solved: FigureSolved): readonly string[] {
  const { nearest, holding } = solved;
  if (isEverywhere(solved)) return ['it holds with every value that was looked at, and is nowhere just met'];
  if (nearest === undefined) return ['it has no value anywhere within the bounds'];
  const miss = `nearest: ${shown(solved, nearest.value, ROUGH)} gives ${answerText(nearest.answer)}`;
  return holding.length > 0 ? ['it is nowhere just met: where it begins to hold there is a jump', miss] : [miss];
}

function isEverywhere({ holding: [first], bounds, search }: FigureSolved): boolean {
  return first?.from === bounds.from && first.to === bounds.to && search.missing === 0;
}

export function holdingWords(solved: FigureSolved): string {
  const { holding } = solved;
  if (holding.length === 0) return 'nowhere within the bounds';
  return holding
    .map(({ from, to, open }: Stretch) =>
      from === to
        ? `at ${shown(solved, from, NOW)} alone`
        : `from ${open.from ? 'about ' : ''}${within(solved, from, to)} to ${open.to ? 'about ' : ''}${within(solved, to, from)}`,
    )
    .join('; ');
}

/** An end of a stretch, rounded to where it holds still. @param other its other end */
function within(solved: FigureSolved, end: number, other: number): string {
  let aim = end;
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const text = shown(solved, aim, ROUGH);
    const reading = readQuantity(text, 0, solved.change.dimension);
    const told = reading.form === 'quantity' ? (reading.quantity?.nominal ?? NaN) : NaN;
    if (!((told - end) * (other - end) < 0)) return text;
    aim = aim === end ? 2 * end - told : end + 2 * (aim - end);
  }
  return shown(solved, end);
}

/** Each goes twice as far, from the last bits of a figure to where it is rounded the other way. */
const MOST_TRIES = 60;

export function searchWords(solved: FigureSolved): readonly string[] {
  const { bounds, search } = solved;
  const apart = shown(solved, (bounds.to - bounds.from) / (search.places - 1), 2);
  const finer = `and finer wherever the two sides cross or come near: no guarantee, two crossings nearer together than ${apart} can be missed`;
  return [
    search.whole
      ? `at ${search.places} whole numbers evenly within the bounds`
      : `at ${search.places} values evenly within the bounds, ${finer}`,
    ...(search.missing > 0
      ? [`${search.missing} of them have no value: the linkage is not assembled there, or what is asked for is never reached`]
      : []),
  ];
}

export function verdictWords(solved: FigureSolved): string {
  const { choices, change } = solved;
  if (choices.length > 0) return `${countText(choices.length, 'value')} of ${change.name} found`;
  return isEverywhere(solved)
    ? `holds with any ${change.name} within the bounds`
    : `no value of ${change.name} within the bounds just meets it`;
}
