/**
 * What the view shows of a file: the linkage with its motion, the charts, and the report in words, all from the answers about the text. A
 * person who types waits for the drawing; what was found out and the charts that can be seen follow it at once, and the rest after them.
 */
import { CHART_IDS } from '../protocol/charts.ts';
import type { Chart, ChartId } from '../protocol/charts.ts';
import { isChart, type Coming, type Drawn, type Shown } from '../protocol/messages.ts';
import type { Report, ReportedFigure } from '../protocol/report.ts';
import type { Answers } from '../solve.ts';
import { drawChart, drawCharts } from './charts/charts.ts';
import { dialsOf } from './dials.ts';
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
    dials: dialsOf(answers),
  };
}

/**
 * What goes first, and the names of what is to follow: nothing is in both. Forces, charts and findings, which take longest, are not worked out.
 * @param withReport whether the report goes too, without its facts: to a page that has none of this file yet
 */
export function showFirst(answers: Answers, withReport: boolean): Drawn | undefined {
  const drawable = drawableOf(answers);
  if (drawable === undefined) return undefined;
  const drawn = { picture: drawPicture(drawable), charts: [], dials: dialsOf(answers) };
  if (answers.study === undefined) return { ...drawn, report: reportOf(answers), coming: [] };
  const later: readonly Coming[] = [...CHART_IDS, 'facts'];
  return withReport
    ? { ...drawn, report: reportOf(answers, false), coming: later }
    : { ...drawn, report: undefined, coming: ['report', ...later] };
}

/** A piece of what follows; a chart is undefined where it has no curve. */
export type Piece =
  /** Nothing whole yet. */
  | undefined
  | { readonly kind: 'chart'; readonly id: ChartId; readonly chart: Chart | undefined }
  /** Without facts. */
  | { readonly kind: 'report'; readonly report: Report }
  /** What comes after this is out of sight. */
  | { readonly kind: 'seen' }
  | { readonly kind: 'facts'; readonly facts: readonly ReportedFigure[] };

/**
 * What follows, one piece each time that it is asked for the next: the charts that can be seen, the report, and the rest.
 * @param answers of a file that is solved
 * @param inSight what can be seen by now
 */
export function* showRest(answers: Answers, coming: readonly Coming[], inSight: () => ReadonlySet<ChartId>): Generator<Piece, void> {
  const left = new Set(coming);
  const nextSeen = (): Coming | undefined => {
    const seen = inSight();
    return [...left].find((each) => isChart(each) && seen.has(each)) ?? (left.has('report') ? 'report' : undefined);
  };
  let isAllSeen = false;
  while (left.size > 0) {
    const seen = nextSeen();
    if (seen === undefined && !isAllSeen) yield { kind: 'seen' };
    isAllSeen ||= seen === undefined;
    const next = seen ?? nextSeen() ?? [...left][0]!;
    left.delete(next);
    if (next === 'facts') yield* facts(answers);
    else if (next === 'report') yield* report(answers);
    else yield { kind: 'chart', id: next, chart: answers.study && drawChart(answers.study, next) };
  }
}

function* report(answers: Answers): Generator<Piece, void> {
  // Findings, requirements and figures of the parts take about as long each.
  for (const workOut of [() => answers.findings, () => answers.requirements]) {
    workOut();
    yield;
  }
  yield { kind: 'report', report: reportOf(answers, false) };
}

function* facts(answers: Answers): Generator<Piece, void> {
  if (answers.study !== undefined) yield* workOutFacts(answers.study);
  yield { kind: 'facts', facts: reportFacts(answers) };
}
