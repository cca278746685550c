/**
 * What follows the drawing: the report and the charts that can be seen, then charts out of sight and the facts. Worked out in short pieces
 * between the editor's turns, and dropped as soon as the text or the figures that are tried are others. What takes long waits until nothing
 * has come for a while, and so does what is out of sight where figures are tried.
 */
import { showRest, type Piece } from '../../src/picture/showAnswers.ts';
import type { Chart, ChartId } from '../../src/protocol/charts.ts';
import type { Coming, Followed, Source, Trial } from '../../src/protocol/messages.ts';
import type { Report } from '../../src/protocol/report.ts';
import type { Answers } from '../../src/solve.ts';
import { PIECE_MS } from '../turns.ts';
import type { Notify } from './line.ts';

/** A picture that the page has. */
export interface Followable {
  readonly source: Source;
  readonly trial: Trial;
  readonly answers: Answers;
  readonly coming: readonly Coming[];
  /** A report about the answers, with places of the text as it is written. */
  readonly reported: (report: Report) => Report;
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
  /** Whether what is left is out of sight. */
  isSeen: boolean;
  spentMs: number;
}

/** How a turn of work has ended. */
type End = 'done' | 'seen' | 'on';

/** @param inSight the charts that can be seen, which go before the others */
export function keepFollowing(notify: Notify, isWatched: () => boolean, inSight: () => ReadonlySet<ChartId>): Following {
  let written: Job | undefined;
  let tried: Job | undefined;
  /** What the page has been shown of each, whether it is still being worked on or not. */
  let known: readonly Followable[] = [];
  let timer: number | undefined;
  /** What the last took: what can be seen, and what cannot. */
  const lastMs = { seen: 0, unseen: 0 };

  const soon = (ms: number): void => {
    clearTimeout(timer);
    timer = setTimeout(turn, ms);
  };
  const turn = (): void => {
    timer = undefined;
    const job = tried ?? written;
    if (job === undefined || !isWatched()) return;
    const end = work(job);
    if (end === 'done' && job === tried) tried = undefined;
    else if (end === 'done') written = undefined;
    // A hand that drags has the next picture before what is out of sight of this one were there.
    const waits = end === 'seen' && (job === tried || lastMs.unseen > LONG_MS);
    if (tried !== undefined || written !== undefined) soon(waits ? REST_MS : 0);
  };
  /** One piece at least. */
  const work = (job: Job): End => {
    const start = Date.now();
    const { source, trial, reported } = job.picture;
    const told: Told = { charts: [], without: [], report: undefined, facts: undefined };
    let end: End;
    do {
      const { value: piece, done } = job.work.next();
      end = done === true ? 'done' : piece?.kind === 'seen' ? 'seen' : 'on';
      add(piece ?? undefined, told, reported);
    } while (end === 'on' && Date.now() - start < PIECE_MS);
    job.spentMs += Date.now() - start;
    lastMs[job.isSeen ? 'unseen' : 'seen'] = job.spentMs;
    if (end === 'seen') [job.isSeen, job.spentMs] = [true, 0];
    if (told.charts.length + told.without.length > 0 || told.report !== undefined || told.facts !== undefined)
      notify({ type: 'follows', source, trial, ...told });
    return end;
  };
  const start = (picture: Followable): void => {
    const work = showRest(picture.answers, picture.coming, inSight);
    const job: Job | undefined = picture.coming.length === 0 ? undefined : { picture, work, isSeen: false, spentMs: 0 };
    if (picture.trial.length > 0) tried = job;
    else written = job;
    const waits = lastMs.seen > LONG_MS;
    // What took long once may not again: under a hand that drags no rest comes in which that would be seen.
    lastMs.seen /= 2;
    soon(waits ? REST_MS : 0);
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

/** What is told at once. */
interface Told {
  readonly charts: Chart[];
  readonly without: ChartId[];
  report: Followed['report'];
  facts: Followed['facts'];
}

function add(piece: Piece, told: Told, reported: Followable['reported']): void {
  if (piece?.kind === 'facts') told.facts = piece.facts;
  else if (piece?.kind === 'report') told.report = reported(piece.report);
  else if (piece?.kind !== 'chart') return;
  else if (piece.chart === undefined) told.without.push(piece.id);
  else told.charts.push(piece.chart);
}

/** What takes longer waits for a rest: begun at each key it would be done in vain. Common practice, no source. */
const LONG_MS = 30;
/** Longer than from key to key of who types on. */
const REST_MS = 250;
