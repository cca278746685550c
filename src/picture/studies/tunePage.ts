/** What a search for dimensions found, for the view: answers, best first, each with what it gives up; the curves; what stands in the way. */
import { applyEdits } from '../../definition/edit.ts';
import type { Study } from '../../findings/study.ts';
import { CAUTION } from '../../outputs/caution.ts';
import { figureDigits, travelText } from '../../outputs/figure.ts';
import { besidesWords, errorText, curveWords, judgementText, keptWords, obstacleWords, verdictWords } from '../../outputs/tunedText.ts';
import type { ChartCurve } from '../../protocol/charts.ts';
import type { StudyAnswer, StudyChart, StudyCharts, StudyFound, StudyLine } from '../../protocol/studies.ts';
import { solve, type Answers } from '../../solve.ts';
import { isSound, type TunedAnswer } from '../../studies/tune/answers.ts';
import { wantedIn } from '../../studies/tune/setting.ts';
import { errorsOf } from '../../studies/tune/news.ts';
import { isMet, type Tuned } from '../../studies/tune/tune.ts';
import type { Wanted } from '../../studies/tune/wanted.ts';
import type { Column } from '../../table/column.ts';
import { diffOf, editsOfWrites, line, lines, standingOf } from './blocks.ts';

/** @param answers of the text that was searched */
export function tunePage(answers: Answers, tuned: Tuned): StudyFound {
  const figure = (value: number): string => errorText(answers, tuned, value);
  const [best] = tuned.answers;
  return {
    kind: 'tune',
    verdict: verdictWords(tuned, figure),
    standing: best === undefined ? 'undecided' : standingOf(isMet(best, tuned.enough)),
    blocks: [
      ...lines('', [
        line(
          tuned.before === undefined
            ? `As the file stands ${tuned.column} has no value somewhere along the curve`
            : `As the file stands ${tuned.column} is up to ${figure(tuned.before.error)} off the curve, ${travelText(tuned.before.at)}`,
        ),
        ...curveWords(answers, tuned, figure).map((words) => line(words, 'note')),
      ]),
      ...tuned.answers.map((answer, i) => answerBlock(answers, tuned, answer, i + 1)),
      ...(isMet(best, tuned.enough)
        ? []
        : lines(
            'What stands in the way',
            obstacleWords(tuned, figure).map((words) => line(words, 'note')),
          )),
      ...curves(answers, tuned),
    ],
    spread: undefined,
    caution: CAUTION,
  };
}

function answerBlock(answers: Answers, tuned: Tuned, answer: TunedAnswer, number: number): StudyAnswer {
  const { text, study } = answers;
  const figure = (value: number): string => errorText(answers, tuned, value);
  const writes = answer.values.map(({ name, value }) => ({ path: `let.${name}`, value }));
  const isNear = answer.error <= tuned.enough;
  const onBound = answer.values.flatMap(({ name, bound }) =>
    bound === undefined ? [] : [line(`${name} stands on the ${bound === 'from' ? 'least' : 'greatest'} value of its bounds`, 'note')],
  );
  return {
    kind: 'answer',
    title: `Answer ${number}`,
    standing: standingOf(isNear && isSound(answer)),
    lines: [
      line(
        `up to ${figure(answer.error)} off the curve, ${travelText(answer.at)}${isNear ? ': as good as on it' : ''}`,
        standingOf(isNear),
      ),
      ...keptLines(answer),
      ...besidesWords(answer).map((words) => line(words, errorsOf(answer.news) > 0 ? 'failed' : 'note')),
      ...onBound,
    ],
    diff: study === undefined ? [] : diffOf(text, study, writes),
    writes,
  };
}

function keptLines(answer: TunedAnswer): readonly StudyLine[] {
  const { judgements } = answer;
  if (judgements.length === 0) return [line('nothing had to be kept')];
  const kept = judgements.filter(({ shortfall }) => shortfall === 0).map(keptWords);
  return [
    ...(kept.length === 0 ? [] : [line(`keeps ${kept.join(', ')}`, 'passed')]),
    ...judgements
      .filter(({ shortfall }) => shortfall !== 0)
      .map((judgement) => line(judgementText(judgement), Number.isNaN(judgement.shortfall) ? 'undecided' : 'failed')),
  ];
}

/** Wanted, as written and of each answer, and how far each of them is off. */
function curves(answers: Answers, { answers: found, column: name }: Tuned): readonly StudyCharts[] {
  const { text, study } = answers;
  const tuning = study && wantedIn(study);
  const column = study?.columns.get(name);
  if (study === undefined || tuning === undefined || column === undefined) return [];
  const stations = stationsOf(tuning.wanted);
  const shown = found.flatMap(({ values }, i) => {
    const writes = values.map(({ name: of, value }) => ({ path: `let.${of}`, value }));
    const edits = editsOfWrites(text, study, writes);
    const solved = edits && solve(applyEdits(text, edits)).study;
    return solved === undefined ? [] : [{ label: `answer ${i + 1}`, values: figuresAlong(solved, name, stations) }];
  });
  const all = [{ label: 'as written', values: figuresAlong(study, name, stations) }, ...shown];
  const wanted = stations.map((at) => tuning.wanted.value(at) * column.scale);
  const charts = [
    chartOf('curve', `${name}, wanted and found`, column, [{ label: 'wanted', values: wanted }, ...all]),
    chartOf(
      'off',
      `${name}, off the curve, weights left out`,
      column,
      all.map(({ label, values }) => ({ label, values: values.map((value, i) => value - wanted[i]!) })),
    ),
  ].filter((chart) => chart !== undefined);
  return charts.length === 0 ? [] : [{ kind: 'charts', stations, charts }];
}

/** Those that the file names among them. */
function stationsOf({ points }: Wanted): Float64Array {
  return Float64Array.from(new Set([...Array.from({ length: STATIONS }, (_, i) => i / (STATIONS - 1)), ...points])).sort();
}

const STATIONS = 101;

function figuresAlong({ columns, travel }: Study, name: string, stations: Float64Array): Float64Array {
  const column = columns.get(name);
  return stations.map((at) => (column === undefined ? NaN : column.read(travel.build, travel.poseAt(at)) * column.scale));
}

interface Series {
  readonly label: string;
  readonly values: Float64Array;
}

function chartOf(
  id: string,
  title: string,
  { name, owner, unit, scale, dimension }: Column,
  series: readonly Series[],
): StudyChart | undefined {
  const curves = series
    .map(({ label, values }): ChartCurve => {
      const finite = values.map((value) => (Number.isFinite(value) ? value : NaN));
      const size = finite.reduce((most, value) => Math.max(most, Math.abs(value) || 0), 0);
      const digits = unit === '%' ? 2 : figureDigits({ value: size / scale, dimension }) + 1;
      return { column: `${name} ${label}`, label, part: owner, values: finite, digits };
    })
    .filter(({ values }) => values.some((value) => !Number.isNaN(value)));
  return curves.length === 0 ? undefined : { id: `tune-${id}`, title, unit, curves, bands: [], straight: false };
}
