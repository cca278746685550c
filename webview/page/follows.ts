/**
 * What follows the drawing. Until a chart or the figures of the newest text have come, those of the text before stand there, marked as such:
 * each with the stations that it is of, so that no figure is read at another text's place.
 */
import { effect } from '@preact/signals';
import { CHART_IDS } from '../../src/protocol/charts.ts';
import type { Chart, ChartId } from '../../src/protocol/charts.ts';
import type { Coming, Followed, Shown, Source, ToView } from '../../src/protocol/messages.ts';
import type { Picture } from '../../src/protocol/picture.ts';
import type { Report, ReportedFigure } from '../../src/protocol/report.ts';
import { askToFollow } from '../send.ts';
import { gone, missing, shown } from '../state.ts';
import { keptFigures } from './keptFigures.ts';

/** A picture, and what of the one before it stands in for what has not come yet: the report in its own place, the rest in `former`. */
export interface ShownInParts extends Shown {
  readonly source: Source;
  /** The text that the report is of, and its places. */
  readonly reportSource: Source;
  readonly fileName: string;
  /** What is not in it yet, be it that there is any. */
  readonly coming: readonly Coming[];
  readonly former: Former;
}

export interface Former {
  readonly charts: readonly HeldChart[];
  readonly facts: readonly ReportedFigure[];
}

export interface HeldChart {
  readonly chart: Chart;
  /** Whose stations its figures are at. */
  readonly picture: Pick<Picture, 'stations'>;
}

const NOTHING: Former = { charts: [], facts: [] };

/**
 * @param before what was shown until now; of another file nothing of it stays
 * @returns undefined where nothing stands in for a report that is to follow: what came before has been lost
 */
export function taken(message: ToView & { readonly type: 'show' }, before: ShownInParts | undefined): ShownInParts | undefined {
  const { source, fileName, coming, dials } = message;
  const known = before?.source.uri === source.uri ? before : undefined;
  const { report, reportSource } = message.report === undefined ? { ...known } : { report: message.report, reportSource: source };
  if (report === undefined || reportSource === undefined) return undefined;
  const former = known === undefined ? NOTHING : { charts: heldCharts(known), facts: heldFacts(known).facts };
  const { picture, charts } = known === undefined ? message : keptFigures(message, former.charts);
  return { source, fileName, coming, dials, report, reportSource, picture, charts, former };
}

/** With what has followed. What was not waited for, has come before, or does not fit the stations is left aside. */
export function withFollowed(now: ShownInParts, { charts, without, report, facts }: Followed): ShownInParts {
  const { stations } = now.picture;
  const waited = (id: ChartId) => now.coming.includes(id);
  const fitting = charts.filter(({ id, curves }) => waited(id) && curves.every(({ values }) => values.length === stations.length));
  const come = new Set<Coming>([
    ...fitting.map(({ id }) => id),
    ...without.filter(waited),
    ...(report === undefined ? [] : (['report'] as const)),
    ...(facts === undefined ? [] : (['facts'] as const)),
  ]);
  const coming = now.coming.filter((each) => !come.has(each));
  if (coming.length === now.coming.length) return now;
  const kept = keptFigures({ picture: now.picture, charts: fitting }, now.former.charts).charts;
  return {
    ...now,
    coming,
    charts: kept.length === 0 ? now.charts : inOrder([...now.charts, ...kept]),
    ...withReport(now, report, facts),
  };
}

/** Facts that have come are those of the report, whichever of the two came first. */
function withReport(
  { coming, ...now }: ShownInParts,
  report: Report | undefined,
  facts: Followed['facts'],
): Pick<ShownInParts, 'report' | 'reportSource'> {
  const isNew = report !== undefined && coming.includes('report');
  const [body, reportSource] = isNew ? [report, now.source] : [now.report, now.reportSource];
  const areNew = facts !== undefined && coming.includes('facts');
  const known = areNew ? facts : coming.includes('facts') ? body.facts : now.report.facts;
  return { report: known === body.facts ? body : { ...body, facts: known }, reportSource };
}

/** Whether the report is of the text before, and its own is to follow. */
export const isReportLate = (now: Pick<ShownInParts, 'coming'> | undefined): boolean => now?.coming.includes('report') === true;

/** Every chart that there is to show, in their order; `isLate`: it is of the text before, and its own is to follow. */
export function heldCharts({ charts, picture, coming, former }: ShownInParts): readonly (HeldChart & { readonly isLate: boolean })[] {
  const all = [
    ...charts.map((chart) => ({ chart, picture, isLate: false })),
    ...former.charts.filter(({ chart }) => coming.includes(chart.id)).map((held) => ({ ...held, isLate: true })),
  ];
  return all.toSorted((one, other) => CHART_IDS.indexOf(one.chart.id) - CHART_IDS.indexOf(other.chart.id));
}

export function heldFacts({ report, coming, former }: ShownInParts): {
  readonly facts: readonly ReportedFigure[];
  readonly isLate: boolean;
} {
  return coming.includes('facts') ? { facts: former.facts, isLate: true } : { facts: report.facts, isLate: false };
}

/** Asks for what does not come. */
export function followFollowing(): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let asked = 0;
  let last: Source | undefined;
  effect(() => {
    const now = shown.value;
    clearTimeout(timer);
    if (now?.source !== last) asked = 0;
    last = now?.source;
    if (now === undefined || now.coming.length === 0 || missing.value !== undefined || gone.value !== undefined) return;
    const ask = () => {
      asked += 1;
      askToFollow(now.source, now.coming);
      if (asked < PATIENCE) timer = setTimeout(ask, WITHIN_MS);
    };
    if (asked < PATIENCE) timer = setTimeout(ask, WITHIN_MS);
  });
}

/** The largest file takes a second; what has not come by then is lost. */
const WITHIN_MS = 4_000;
/** So often it is asked for; then it stays marked. */
const PATIENCE = 3;

const inOrder = (charts: readonly Chart[]): readonly Chart[] =>
  [...charts].sort((one, other) => CHART_IDS.indexOf(one.id) - CHART_IDS.indexOf(other.id));
