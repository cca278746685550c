/**
 * What the page tells and asks the editor. Figures that are tried go out one trial at a time: while one is under way the newest waits, and
 * those between are never sent.
 */
import { openChannel } from '../src/protocol/channel.ts';
import type { Channel, Ignored, Port } from '../src/protocol/channel.ts';
import { isAnswered, isToView } from '../src/protocol/guards.ts';
import type { ChartId } from '../src/protocol/charts.ts';
import type { Coming, Requests, Source, ToEditor, ToView, Trial } from '../src/protocol/messages.ts';
import type { PartKey, TextPlace } from '../src/protocol/report.ts';
import type { StudyKind, WriteAnswer } from '../src/protocol/studies.ts';
import type { FailureKey, Returns, ReturnTrace, Tried } from '../src/protocol/returns.ts';
import { announcement, complaint, gone, missing, shown, shownTrial, trial, writtenTrial } from './state.ts';
import { WORDS } from './words.ts';

/** The editor answers at once; this is for one that has gone away. */
const ANSWER_WITHIN_MS = 10_000;
/** Within this a trial has been solved, whatever its file; else its answer is lost. */
const TRIAL_WITHIN_MS = 3_000;
/** Of what takes long; a linkage of a hundred parts takes some seconds. */
const WORKED_OUT_WITHIN_MS = 60_000;
/** So many trials in a row without an answer, and the page no longer asks. */
const PATIENCE = 3;

let channel: Channel<ToEditor, Requests> | undefined;
/** The trial that is under way, and the text that it is of. */
let under: { readonly trial: Trial; readonly source: Source; readonly stopTimer: () => void } | undefined;
let isWriting = false;
let unanswered = 0;

/** Opens the line to the editor; `receive` hears what comes. Called once. */
export function connect(port: Port, receive: (message: ToView) => void, onIgnored: (why: Ignored) => void): void {
  channel = openChannel<ToEditor, ToView, Requests, Readonly<Record<string, never>>>({
    port,
    setTimer,
    session: crypto.randomUUID(),
    isNotice: isToView,
    onNotice: receive,
    isAnswer: isAnswered,
    serves: {},
    onIgnored,
    onOtherProtocol: () => (complaint.value = WORDS.otherProtocol),
  });
  channel.notify({ type: 'ready' });
}

/** Something has been lost on the way: the page asks for all that there is, as one that has just come. */
export const askAnew = (): void => channel?.notify({ type: 'ready' });

/** Marks a place of the text in the editor; `of`: the text that it is a place of, that of the report where absent. */
export function reveal(place: TextPlace, of: Source | undefined = shown.value?.reportSource): void {
  if (of !== undefined) channel?.notify({ type: 'reveal', source: of, place });
}

/** Has the person choose among the fixes for what was found there. */
export function mend(place: TextPlace, of: Source | undefined = shown.value?.reportSource): void {
  if (of !== undefined) channel?.notify({ type: 'mend', source: of, place });
}

/** Takes the newest change of the file back, or makes it again. */
export const takeBack = (type: 'undo' | 'redo'): void => channel?.notify({ type });

/** Marks a part in the text. */
export function revealPart({ kind, name }: PartKey): void {
  const source = shown.value?.source;
  if (source !== undefined) channel?.notify({ type: 'reveal-part', source, part: { kind, name } });
}

/** To the next part in load-path order, or to the one before. */
export const step = (way: 1 | -1): void => channel?.notify({ type: 'step', way });

export const compareWith = (other: (ToEditor & { type: 'compare-with' })['other']): void =>
  channel?.notify({ type: 'compare-with', other });

/** These charts can be seen, and no others. */
export const tellInSight = (charts: readonly ChartId[]): void => channel?.notify({ type: 'in-sight', charts });

/** What should have followed the picture that is shown has not come. */
export const askToFollow = (source: Source, coming: readonly Coming[]): void =>
  channel?.notify({ type: 'follow', source, trial: shownTrial.peek(), coming });

/** Shows what these figures would do, without writing them; the newest wins. An empty list drops them. */
export function tryFigures(next: Trial): void {
  trial.value = next;
  sendTrial();
}

/** Writes figures into the text, as one undo step; then nothing is tried any more. @returns whether they stand there */
export async function writeFigures(figures: Trial = trial.value): Promise<boolean> {
  const source = shown.value?.source;
  if (source === undefined || channel === undefined || isWriting || figures.length === 0) return false;
  isWriting = true;
  try {
    const { version } = await channel.request('write', { source, trial: figures }, ANSWER_WITHIN_MS);
    if (trial.value === figures) trial.value = [];
    writtenTrial.value = { version, figures };
    announcement.value = WORDS.written(figures.length);
    return true;
  } catch (error) {
    complaint.value = WORDS.notWritten(messageOf(error));
    return false;
  } finally {
    isWriting = false;
    sendTrial();
  }
}

/** Has a file saved where the person chooses. */
export async function saveFile(asks: Requests['save']['asks']): Promise<void> {
  try {
    await channel?.request('save', asks, undefined);
  } catch (error) {
    complaint.value = WORDS.notSaved(messageOf(error));
  }
}

/** The whole table of what is shown, as CSV; undefined where the editor has none to give, which the page then says. */
export async function requestTable(): Promise<string | undefined> {
  const source = shown.value?.source;
  if (source === undefined) return undefined;
  try {
    return (await channel?.request('table', { source, trial: shownTrial.value }, ANSWER_WITHIN_MS))?.csv;
  } catch (error) {
    complaint.value = WORDS.notSaved(messageOf(error));
    return undefined;
  }
}

/** What the picture shows: the text, and the figures tried in it; undefined where it is of neither any more. */
export function triedNow(): Tried | undefined {
  const source = shown.value?.source;
  if (source === undefined || missing.value !== undefined || gone.value !== undefined) return undefined;
  return { source, trial: shownTrial.value };
}

/** Whether two are of the same text and figures. */
export const isSameTried = (a: Tried, b: Tried | undefined): boolean =>
  a.source.uri === b?.source.uri && a.source.version === b.source.version && isSameTrial(a.trial, b.trial);

/** Every single failure; rejects with why it cannot be told. */
export const requestReturns = (of: Tried): Promise<Returns> => asked('returns', of);

/** A snap-back; rejects with why there is none. */
export const requestTrace = (of: Tried, failure: FailureKey | undefined): Promise<ReturnTrace> => asked('trace', { ...of, failure });

/** Begins a study of the text as it stands; what comes of it is told. */
export const runStudy = (kind: StudyKind): void => channel?.notify({ type: 'run-study', kind });

export const cancelStudy = (kind: StudyKind): void => channel?.notify({ type: 'cancel-study', kind });

/** Writes an answer of a study, as one undo step; rejects with why nothing was written. @returns the version that has it */
export async function requestAnswer(answer: WriteAnswer): Promise<number> {
  if (channel === undefined) throw new Error(WORDS.noLine);
  return (await channel.request('answer', answer, ANSWER_WITHIN_MS)).version;
}

async function asked<Name extends 'returns' | 'trace'>(name: Name, asks: Requests[Name]['asks']): Promise<Requests[Name]['answers']> {
  if (channel === undefined) throw new Error(WORDS.noLine);
  return channel.request(name, asks, WORKED_OUT_WITHIN_MS);
}

/** A picture has come, with the figures tried in it: is it what was asked for, and what is asked next? */
export function trialShown(of: Trial, source: Source): void {
  shownTrial.value = of;
  if (under !== undefined) {
    // An older picture than the one asked for: its own is still to come.
    if (!isSameTrial(of, under.trial) && source.uri === under.source.uri && source.version <= under.source.version) return;
    endTrial();
    unanswered = 0;
  }
  sendTrial();
}

/** The text has no picture of its own, so neither has a trial. */
export function trialBroken(): void {
  endTrial();
  shownTrial.value = trial.value;
}

/** What is under way cannot be tried: it is dropped. */
export function trialRefused(of: Trial, why: string): void {
  if (under === undefined || !isSameTrial(of, under.trial)) return;
  const isStillWanted = isSameTrial(trial.value, under.trial);
  endTrial();
  unanswered = 0;
  if (isStillWanted) {
    trial.value = shownTrial.value;
    complaint.value = why;
  }
  sendTrial();
}

function sendTrial(): void {
  const source = shown.value?.source;
  if (under !== undefined || isWriting || source === undefined || isSameTrial(trial.value, shownTrial.value)) return;
  under = { trial: trial.value, source, stopTimer: setTimer(trialLost, TRIAL_WITHIN_MS) };
  channel?.notify({ type: 'try', source, trial: trial.value });
}

function endTrial(): void {
  under?.stopTimer();
  under = undefined;
}

function trialLost(): void {
  endTrial();
  unanswered += 1;
  if (unanswered < PATIENCE) return sendTrial();
  unanswered = 0;
  trial.value = shownTrial.value;
  complaint.value = WORDS.trialLost;
}

export const isSameTrial = (a: Trial, b: Trial) => JSON.stringify(a) === JSON.stringify(b);

function setTimer(callback: () => void, milliseconds: number): () => void {
  const id = setTimeout(callback, milliseconds);
  return () => clearTimeout(id);
}

export const messageOf = (error: unknown) => (error instanceof Error ? error.message : String(error));
