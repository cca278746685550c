/**
 * What a search for dimensions found, as text: answers, best first, each with the values to write, how near to the curve it comes and what it
 * gives up; what stands in the way where none keeps everything; the caution, and in the last line how it stands.
 */
import { formatQuantity } from '../definition/edit.ts';
import type { Answers } from '../solve.ts';
import { isSound, isUnchanged, keepsAll, type TunedAnswer, type TunedValue } from '../studies/tune/answers.ts';
import type { Judgement } from '../studies/tune/demands.ts';
import { errorsOf } from '../studies/tune/news.ts';
import { endsOf, wantedIn } from '../studies/tune/setting.ts';
import { isMet, type Tuned } from '../studies/tune/tune.ts';
import { rangeWords } from '../travel/words.ts';
import { CAUTION } from './caution.ts';
import { figureText, listWords, percentText, travelText } from './figure.ts';
import { plain, printable, type Paint } from './paint.ts';
import { answerText } from './requirementText.ts';
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
  const figure = (value: number): string => errorText(answers, tuned, value);
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
        ...curveWords(answers, tuned, figure),
      ]),
    ],
    ...tuned.answers.map((answer, i) => [
      paint('strong', `Answer ${i + 1}`),
      ...lines([
        ...answer.values.map((value) => valueWords(answers, value)),
        `up to ${figure(answer.error)} off the curve, ${travelText(answer.at)}${answer.error <= tuned.enough ? ': as good as on it' : ''}`,
        ...judgementWords(answer),
        ...besidesWords(answer),
      ]),
    ]),
    isMet(tuned.answers[0], tuned.enough) ? [] : [paint('strong', 'What stands in the way'), ...lines(obstacleWords(tuned, figure))],
    wrap(`Caution. ${CAUTION}`, width),
    [`${printable(file)}: ${verdictWords(tuned, figure)}`],
  ];
  return `${sections
    .filter((section) => section.length > 0)
    .map((section) => section.join('\n'))
    .join('\n\n')}\n`;
}

export function obstacleWords(tuned: Tuned, figure: (value: number) => string): readonly string[] {
  const { obstacles, answers, beyond, erring } = tuned;
  const [best] = answers;
  const ends = (best?.values ?? []).flatMap(({ name, bound }) => (bound === undefined ? [] : [name]));
  const bounds = ends.length === 0 ? [] : [`in the first answer ${ends.join(', ')} ${ends.length === 1 ? 'stands' : 'stand'} on a bound`];
  const stop =
    beyond === undefined
      ? []
      : [`the curve asks for ${figure(beyond.wanted)} ${travelText(beyond.at)}, and the open stop allows ${figure(beyond.full)}`];
  const demands = obstacles.map(
    ({ demand, error }) => `without ${demand.name} it would come within ${figure(error)} of the curve, or nearer`,
  );
  const errors = erring?.news.findings.filter(({ severity }) => severity === 'error').map(({ message }) => message) ?? [];
  if (erring !== undefined && erring !== best)
    demands.push(`what comes within ${figure(erring.error)} of the curve brings an error: ${errors.join('; ')}`);
  const none = best === undefined ? [] : [isSound(best) ? 'none nearer was found that keeps as much' : noneKeeps(tuned)];
  return [...stop, ...(demands.length > 0 ? demands : none), ...bounds];
}

/** A distance from the curve, SI, in the unit of its column. */
export function errorText({ columns }: Answers, { column }: Pick<Tuned, 'column'>, value: number): string {
  const { dimension = 'number', unit } = columns.find(({ name }) => name === column) ?? {};
  return unit === '%' ? percentText(value, PERCENT_DIGITS) : figureText({ value, dimension }, 1);
}

/** An answer counts as on the curve within half a percent. */
const PERCENT_DIGITS = 3;

/** What the distances of a curve rest on, where its text alone does not say so. */
export function curveWords(answers: Answers, tuned: Pick<Tuned, 'column'>, figure: (value: number) => string): readonly string[] {
  const weightless = answers.study === undefined ? [] : (wantedIn(answers.study)?.wanted.weightless ?? []);
  return [
    ...fullWords(answers, tuned, figure),
    ...(weightless.length === 0 ? [] : [`the curve does not count beside points of weight 0: ${rangeWords(weightless)}`]),
  ];
}

/** Where the curve is given by its slopes, and the file does not say what full opening is: which is taken. */
export function fullWords({ study }: Answers, tuned: Pick<Tuned, 'column'>, figure: (value: number) => string): readonly string[] {
  if (study?.definition.tune?.curve?.kind !== 'slopes') return [];
  const { full, isFound } = endsOf(study, tuned.column);
  return isFound ? [`its slopes count to ${figure(full)}, the greatest as the file stands: it does not say what is full opening`] : [];
}

function valueWords({ definition }: Answers, { name, value, was, bound }: TunedValue): string {
  const unit = definition?.lets.find((each) => each.name === name)?.value.unit ?? '';
  const shown = (figure: number): string => formatQuantity(figure, unit) ?? String(figure);
  const end = bound === undefined ? '' : `, ${bound === 'from' ? 'the least' : 'the greatest'} that its bounds allow`;
  return `${name}: ${shown(value)} (${value === was ? 'as now' : `now ${shown(was)}`})${end}`;
}

function judgementWords(answer: TunedAnswer): readonly string[] {
  if (answer.judgements.length === 0) return ['nothing had to be kept'];
  if (keepsAll(answer)) return [`keeps ${answer.judgements.map(keptWords).join(', ')}`];
  return answer.judgements.filter(({ shortfall }) => shortfall !== 0).map(judgementText);
}

/** E.g. `closing_torque (without friction, of which the file gives none)`. */
export function keptWords({ demand, without }: Judgement): string {
  return without === undefined ? demand.name : `${demand.name} (${without})`;
}

export function judgementText(judgement: Judgement): string {
  return `gives up ${judgement.demand.name}: ${shortWords(judgement)}`;
}

/** What is in the way of a demand, with figures; empty where it is kept. */
export function shortWords({ words, answer }: Pick<Judgement, 'words' | 'answer'>): string {
  return (answer === undefined ? '' : answerText(answer)) || words;
}

/** What an answer brings that the file as it stands does not have, and that no demand speaks of. */
export function besidesWords({ news: { findings, problems, lost } }: TunedAnswer): readonly string[] {
  return [
    ...problems.map(({ severity, message }) => `besides: new ${severity} in the text: ${message}`),
    ...findings.map(({ severity, message }) => `besides: new ${severity}: ${message}`),
    ...lost.map((answer) => `besides: ${answer.requirement.name} is no longer met: ${answerText(answer)}`),
  ];
}

export function verdictWords(tuned: Tuned, figure: (value: number) => string): string {
  const { answers, enough, column } = tuned;
  const [best] = answers;
  if (best === undefined) {
    return `nothing that was looked at within the bounds has ${column}, and every angle that must be kept, along the whole curve`;
  }
  if (errorsOf(best.news) > 0)
    return `every answer that was found brings an error that the file as it stands does not have${asNow(tuned, figure)}`;
  if (!keepsAll(best)) return `${noneKeeps(tuned)}; the first falls least short${asNow(tuned, figure)}`;
  const far = `up to ${figure(best.error)} off the curve`;
  if (best.error > enough) {
    return isUnchanged(best)
      ? `none nearer was found than the file as it stands, ${far}`
      : `the best found that keeps everything is ${far}${asNow(tuned, figure)}`;
  }
  const good = answers.filter((answer) => isMet(answer, enough)).length;
  return `${good === 1 ? 'one answer keeps' : `${good} answers keep`} everything and ${good === 1 ? 'lies' : 'lie'} on the curve within ${figure(enough)}`;
}

function noneKeeps({ answers }: Tuned): string {
  return `no answer that was found keeps everything${answers.some(keepsAll) ? ' and brings no error that the file as it stands does not have' : ''}`;
}

/** Where the file as it stands comes nearer than the first answer: that it does, and why it is none. */
function asNow({ before, answers: [best] }: Tuned, figure: (value: number) => string): string {
  if (
    before === undefined ||
    best === undefined ||
    isUnchanged(best) ||
    before.error >= best.error ||
    figure(before.error) === figure(best.error)
  )
    return '';
  const why = [
    ...(before.short.length === 0 ? [] : [`gives up ${listWords(before.short.map(({ name }) => name))}`]),
    ...(before.isWithin ? [] : ['is not within the bounds and on the steps']),
    ...(before.weighted > best.weighted ? ['is farther by the weights of the curve'] : []),
  ];
  const but = why.length === 0 ? '' : `, but ${listWords(why)}`;
  return `; the file as it stands is nearer, ${figure(before.error)}${but}`;
}
