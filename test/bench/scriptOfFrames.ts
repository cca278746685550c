/**
 * What a page's script takes of each frame, by Chromium's own tracing: the time that the page's thread has run, which a busy machine does not
 * lengthen as it does the clock.
 *
 * Counted is what runs of one script, each call of it from outside (frames, timers, pointer, messages, observers) with layout that it asks for,
 * and the promises left behind. A frame is what lies between two paintings.
 */
import type { DevTools } from '../../scripts/editorHosts/chromium.mjs';

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** µs, on the clock. */
  readonly ts: number;
  readonly dur?: number;
  /** µs in which the thread ran. */
  readonly tdur?: number;
  readonly args: { readonly data?: { readonly url?: string } };
}

/** @returns ms of each frame that had any, in their order */
export async function scriptOfFrames(devTools: DevTools, script: string, act: () => Promise<void>): Promise<readonly number[]> {
  const events: TraceEvent[] = [];
  const hear = ({ value }: { readonly value: readonly TraceEvent[] }) => void events.push(...value);
  devTools.on('Tracing.dataCollected', hear);
  const traceConfig = { includedCategories: ['devtools.timeline', 'v8'], recordMode: 'recordAsMuchAsPossible' };
  await devTools.send('Tracing.start', { transferMode: 'ReportEvents', traceConfig });
  await act();
  const ended = new Promise((done) => devTools.once('Tracing.tracingComplete', done));
  await devTools.send('Tracing.end');
  await ended;
  devTools.off('Tracing.dataCollected', hear);
  return sums(events, script);
}

function sums(events: readonly TraceEvent[], script: string): readonly number[] {
  const isOfScript = ({ name, ph, args }: TraceEvent) => ph === 'X' && name === 'FunctionCall' && args.data?.url?.endsWith(script) === true;
  const first = events.find(isOfScript);
  const onThread = events
    .filter(({ pid, tid }) => pid === first?.pid && tid === first.tid)
    .sort((one, other) => one.ts - other.ts || (other.dur ?? 0) - (one.dur ?? 0));
  const frames: number[] = [];
  let sum = 0;
  let until = 0;
  let isAfterScript = false;
  for (const event of onThread) {
    if (event.name === PAINTED) {
      if (sum > 0) frames.push(sum / 1000);
      sum = 0;
    }
    if (event.ts < until || event.ph !== 'X') continue;
    const counts = isOfScript(event) || (event.name === 'RunMicrotasks' && isAfterScript);
    if (!counts) continue;
    if (event.tdur === undefined) throw new Error('This Chromium does not tell how long a thread has run');
    sum += event.tdur;
    until = event.ts + (event.dur ?? 0);
    isAfterScript = event.name === 'FunctionCall';
  }
  return frames;
}

/** The last that a frame with something to paint does on the page's thread. */
const PAINTED = 'Layerize';
