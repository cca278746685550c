/**
 * What follows the drawing: charts out of sight, and the facts. Worked out in short pieces between the editor's turns, and dropped as soon as
 * the text or the figures that are tried are others. Where figures are tried, or it takes long, it waits until nothing has come for a while.
 */
import { showRest, type Piece } from '../../src/picture/showAnswers.ts';
import type { Chart, ChartId } from '../../src/protocol/charts.ts';
import type { Coming, Followed, Source, Trial } from '../../src/protocol/messages.ts';
import type { Answers } from '../../src/solve.ts';
import { PIECE_MS } from '../turns.ts';
import type { Notify } from './line.ts';

/** A picture that the page has. */
export interface Followable {
  readonly source: Source;
  readonly trial: Trial;
  readonly answers: Answers;
  readonly coming: readonly Coming[];
}

export interface Following {
  /** Of the text as it is written, or of figures tried in it; takes the place of the last of the same kind. */
  begin(picture: Followable): void;
  /** The page lacks some of it still. */
  again(source: Source, trial: Trial, coming: readonly Coming[]): void;
  /** The text is another. */
  drop(): void;
}

interface Job {
  readonly picture: Followable;
  readonly work: Iterator<Piece, void>;
  spentMs: number;
}

/** @param inSight the charts that can be seen, which go before the others */
export function keepFollowing(notify: Notify, isWatched: () => boolean, inSight: () => ReadonlySet<ChartId>): Following {
  let written: Job | undefined;
  let tried: Job | undefined;
  /** What the page has been shown of each, whether it is still being worked on or not. */
  let known: readonly Followable[] = [];
  let timer: number | undefined;
  /** What the last of each kind took. */
  let lastMs = 0;

  const soon = (waits: boolean): void => {
    clearTimeout(timer);
    timer = setTimeout(turn, waits ? REST_MS : 0);
  };
  const turn = (): void => {
    timer = undefined;
    const job = tried ?? written;
    if (job === undefined || !isWatched()) return;
    const isDone = work(job);
    if (isDone && job === tried) tried = undefined;
    else if (isDone) written = undefined;
    if (tried !== undefined || written !== undefined) soon(false);
  };
  /** One piece at least. @returns whether that was all */
  const work = (job: Job): boolean => {
    const start = Date.now();
    const charts: Chart[] = [];
    const without: ChartId[] = [];
    let facts: Followed['facts'];
    let isDone: boolean;
    do {
      const { value: piece, done } = job.work.next();
      isDone = done === true;
      if (piece === undefined) continue;
      if (piece.kind === 'facts') facts = piece.facts;
      else if (piece.chart === undefined) without.push(piece.id);
      else charts.push(piece.chart);
    } while (!isDone && Date.now() - start < PIECE_MS);
    job.spentMs += Date.now() - start;
    lastMs = job.spentMs;
    const { source, trial } = job.picture;
    if (charts.length + without.length > 0 || facts !== undefined) notify({ type: 'follows', source, trial, charts, without, facts });
    return isDone;
  };
  const start = (picture: Followable): void => {
    const job = picture.coming.length === 0 ? undefined : { picture, work: showRest(picture.answers, picture.coming, inSight), spentMs: 0 };
    if (picture.trial.length > 0) tried = job;
    else written = job;
    // A hand that drags has the next picture before the rest of this one were there.
    soon(picture.trial.length > 0 || lastMs > LONG_MS);
  };

  return {
    begin(picture) {
      known = picture.trial.length > 0 ? [...known.filter(({ trial }) => trial.length === 0), picture] : [picture];
      tried = undefined;
      start(picture);
    },
    again(source, trial, coming) {
      const words = JSON.stringify([source, trial]);
      const picture = known.find((each) => JSON.stringify([each.source, each.trial]) === words);
      if (picture !== undefined) start({ ...picture, coming: picture.coming.filter((each) => coming.includes(each)) });
    },
    drop() {
      clearTimeout(timer);
      timer = undefined;
      [written, tried, known] = [undefined, undefined, []];
    },
  };
}

/** What takes longer waits for a rest: begun at each key it would be done in vain. Common practice, no source. */
const LONG_MS = 30;
/** Longer than from key to key of who types on. */
const REST_MS = 250;
