/**
 * What the column beside the drawing tells of. While figures are tried, pictures come as fast as a hand moves, and the drawing follows each.
 * The column, whose lists and charts take as long, follows in frames of its own in which no picture has come, first the lists, then the
 * charts; where every frame has one, in turns, each fifth of a second both. All else is told at once.
 */
import { batch, computed, effect, signal, type Signal } from '@preact/signals';
import { isChart } from '../../src/protocol/messages.ts';
import { shown, shownTrial } from '../state.ts';
import { isReportLate } from './follows.ts';

type Told = Signal<typeof shown.value>;

/** For findings, requirements, load path and figures. */
export const toldReport: Told = signal(undefined);
export const toldCharts: Told = signal(undefined);

/** Whether what `toldReport` tells is of the text before, and what was found out about this one is to follow. */
export const isReportComing = computed(() => isReportLate(shown.value));

const ALL = [toldReport, toldCharts];
const LATEST_MS = 100;

export function followShown(): void {
  let due: Told[] = [];
  /** When the first of those that are due became so, or the last was told. */
  let since = 0;
  let frame: number | undefined;
  let hadPicture = false;
  effect(() => {
    const now = shown.value;
    hadPicture = true;
    if (!isOfTrial(now, toldReport.peek())) {
      due = [];
      batch(() => {
        if (!isReportLate(now) && !hasSameReport(now, toldReport.peek())) toldReport.value = now;
        if (!hasSameCharts(now, toldCharts.peek())) toldCharts.value = now;
      });
      return;
    }
    if (due.length === 0) since = performance.now();
    due.push(...ALL.filter((told) => !due.includes(told)));
    frame ??= requestAnimationFrame(next);
  });

  function next(at: number): void {
    frame = undefined;
    if (!hadPicture || at - since >= LATEST_MS) {
      const [first, ...rest] = due;
      due = rest;
      since = at;
      const now = shown.peek();
      if (first === toldCharts || (first === toldReport && !isReportLate(now))) first.value = now;
    }
    hadPicture = false;
    if (due.length > 0) frame = requestAnimationFrame(next);
  }
}

/** The same text as before, with figures tried in it. */
function isOfTrial(now: typeof shown.value, before: typeof shown.value): boolean {
  const [a, b] = [now?.source, before?.source];
  return shownTrial.peek().length > 0 && a !== undefined && a.uri === b?.uri && a.version === b.version;
}

/** What has followed a picture is of one of them as a rule: what shows the other stays. */
const hasSameReport = (now: typeof shown.value, before: typeof shown.value): boolean =>
  now !== undefined && now.report === before?.report && now.coming.includes('facts') === before.coming.includes('facts');

const hasSameCharts = (now: typeof shown.value, before: typeof shown.value): boolean =>
  now !== undefined &&
  now.charts === before?.charts &&
  now.picture === before.picture &&
  now.coming.filter(isChart).length === before.coming.filter(isChart).length;
