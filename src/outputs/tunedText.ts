/**
 * What a search for dimensions found, as text: answers, best first, each with the values to write, how near to the curve it comes and what it
 * gives up; what stands in the way where none keeps everything; the caution, and in the last line how it stands.
 */
import { formatQuantity } from '../definition/edit.ts';
import type { Figure } from '../findings/finding.ts';
import type { Answers } from '../solve.ts';
import { keepsAll, type TunedAnswer, type TunedValue } from '../studies/tune/answers.ts';
import type { Judgement } from '../studies/tune/demands.ts';
import type { Tuned } from '../studies/tune/tune.ts';
import { CAUTION } from './caution.ts';
import { figureText, travelText } from './figure.ts';
import { plain, printable, type Paint } from './paint.ts';
import { wrap } from './width.ts';

export interface TunedTextOptions {
  /** As the person gave it. */
  readonly file: string;
  readonly paint?: Paint;
  /** Columns of the terminal. */
  readonly width?: number;
}

/** With a line ending. @param answers of the file as it stands */
export function tunedText(answers: Answers, tuned: Tuned, { file, paint = plain, width = 110 }: TunedTextOptions): string {
  const figure = (value: number): string => figureText(errorFigure(answers, tuned, value), 1);
  const lines = (items: readonly string[]): string[] =>
    items.flatMap((item) => wrap(printable(item), width - 4).map((line, i) => (i === 0 ? `  ${line}` : `    ${line}`)));
  const sections = [
    [paint('strong', printable(file))],
    [
      paint('strong', 'As the file stands'),
      ...lines([
        tuned.before === undefined
          ? `${tuned.column} has no value somewhere along the curve`
          : `${tuned.column} is up to ${figure(tuned.before.error)} off the curve, ${travelText(tuned.before.at)}`,
      ]),
    ],
    ...tuned.answers.map((answer, i) => [
      paint('strong', `Answer ${i + 1}`),
      ...lines([
        ...answer.values.map((value) => valueWords(answers, value)),
        `up to ${figure(answer.error)} off the curve, ${travelText(answer.at)}${answer.error <= tuned.enough ? ': as good as on it' : ''}`,
        ...judgementWords(answer),
      ]),
    ]),
    isOnCurve(tuned) ? [] : [paint('strong', 'What stands in the way'), ...lines(obstacleWords(tuned, figure))],
    wrap(`Caution. ${CAUTION}`, width),
    [`${printable(file)}: ${verdictWords(tuned, figure)}`],
  ];
  return `${sections
    .filter((section) => section.length > 0)
    .map((section) => section.join('\n'))
    .join('\n\n')}\n`;
}

export function isOnCurve({ answers: [best], enough }: Tuned): boolean {
  return best !== undefined && best.error <= enough;
}

export function obstacleWords({ obstacles, answers: [best] }: Tuned, figure: (value: number) => string): readonly string[] {
  const ends = (best?.values ?? []).flatMap(({ name, bound }) => (bound === undefined ? [] : [name]));
  const bounds = ends.length === 0 ? [] : [`in the first answer ${ends.join(', ')} ${ends.length === 1 ? 'stands' : 'stand'} on a bound`];
  if (obstacles.length > 0) {
    return [
      ...obstacles.map(({ demand, error }) => `without ${demand.name} it would come within ${figure(error)} of the curve`),
      ...bounds,
    ];
  }
  return ['no demand on angles: with these values free the linkage comes no nearer to this curve', ...bounds];
}

/** A distance from the curve in the unit of its column; percent columns are fractions. */
export function errorFigure({ columns }: Answers, { column }: Tuned, value: number): Figure {
  const { dimension = 'number' } = columns.find(({ name }) => name === column) ?? {};
  return { value, dimension };
}

function valueWords({ definition }: Answers, { name, value, was, bound }: TunedValue): string {
  const unit = definition?.lets.find((each) => each.name === name)?.value.unit ?? '';
  const shown = (figure: number): string => formatQuantity(figure, unit) ?? String(figure);
  const end = bound === undefined ? '' : `, ${bound === 'from' ? 'the least' : 'the greatest'} that its bounds allow`;
  return `${name}: ${shown(value)} (now ${shown(was)})${end}`;
}

function judgementWords(answer: TunedAnswer): readonly string[] {
  if (answer.judgements.length === 0) return ['nothing had to be kept'];
  if (keepsAll(answer)) return [`keeps ${answer.judgements.map(({ demand }) => demand.name).join(', ')}`];
  return answer.judgements.filter(({ shortfall }) => shortfall !== 0).map(judgementText);
}

export function judgementText({ demand, words }: Judgement): string {
  return `gives up ${demand.name}: ${words}`;
}

export function verdictWords({ answers, enough }: Tuned, figure: (value: number) => string): string {
  const [best] = answers;
  if (best === undefined) return 'no values within the bounds could be assembled along the whole curve';
  if (!keepsAll(best)) return 'no answer keeps everything; the nearest gives up what is told of it';
  if (best.error > enough) return `the best that keeps everything is up to ${figure(best.error)} off the curve`;
  const good = answers.filter((answer) => keepsAll(answer) && answer.error <= enough).length;
  return `${good === 1 ? 'one answer keeps' : `${good} answers keep`} everything and ${good === 1 ? 'lies' : 'lie'} on the curve within ${figure(enough)}`;
}
