/**
 * What the view shows of a file: the linkage with its motion, the charts, and the report in words, all from the answers about the text. A
 * person who types waits for the drawing and what can be seen beside it; what takes long and is out of sight may follow in pieces.
 */
import { CHART_IDS } from '../protocol/charts.ts';
import type { Chart, ChartId } from '../protocol/charts.ts';
import type { Coming, Shown } from '../protocol/messages.ts';
import type { ReportedFigure } from '../protocol/report.ts';
import type { Answers } from '../solve.ts';
import { drawChart, drawCharts } from './charts/charts.ts';
import { drawableOf } from './drawable.ts';
import { workOutFacts } from '../findings/facts.ts';
import { drawPicture } from './picture.ts';
import { reportFacts, reportOf } from './report.ts';

/**
 * All of it. Undefined where nothing can be drawn: no lever of the text has a place. A file that is not solved yet is drawn as it stands,
 * without charts. Nothing is solved again: the stations are those at which the answers were found. Never throws.
 */
export function showAnswers(answers: Answers): Shown | undefined {
  const drawable = drawableOf(answers);
  if (drawable === undefined) return undefined;
  return {
    picture: drawPicture(drawable),
    charts: answers.study === undefined ? [] : drawCharts(answers.study),
    report: reportOf(answers),
  };
}

/** What goes first, and the names of what is to follow: no chart and no fact is in both. */
export interface ShownFirst extends Shown {
  readonly coming: readonly Coming[];
}

/** The same without the charts that are out of sight, and without the facts, which take as long as all the rest. */
export function showFirst(answers: Answers, inSight: ReadonlySet<ChartId>): ShownFirst | undefined {
  const drawable = drawableOf(answers);
  if (drawable === undefined) return undefined;
  const { study } = answers;
  const later: readonly Coming[] = [...CHART_IDS.filter((id) => !inSight.has(id)), 'facts'];
  return {
    picture: drawPicture(drawable),
    charts: study === undefined ? [] : CHART_IDS.flatMap((id) => (inSight.has(id) ? (drawChart(study, id) ?? []) : [])),
    report: reportOf(answers, study === undefined),
    coming: study === undefined ? [] : later,
  };
}

/** A piece of what follows; a chart is undefined where it has no curve. */
export type Piece =
  /** Nothing whole yet. */
  | undefined
  | { readonly kind: 'chart'; readonly id: ChartId; readonly chart: Chart | undefined }
  | { readonly kind: 'facts'; readonly facts: readonly ReportedFigure[] };

/**
 * What follows, one piece each time that it is asked for the next.
 * @param answers of a file that is solved
 * @param inSight what can be seen by now, which goes before the rest
 */
export function* showRest(answers: Answers, coming: readonly Coming[], inSight: () => ReadonlySet<ChartId>): Generator<Piece, void> {
  const left = new Set(coming);
  while (left.size > 0) {
    const seen = inSight();
    const [first] = left;
    const next = [...left].find((each) => each !== 'facts' && seen.has(each)) ?? first!;
    left.delete(next);
    if (next === 'facts') {
      if (answers.study !== undefined) yield* workOutFacts(answers.study);
      yield { kind: 'facts', facts: reportFacts(answers) };
    } else yield { kind: 'chart', id: next, chart: answers.study && drawChart(answers.study, next) };
  }
}
