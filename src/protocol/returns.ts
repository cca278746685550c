/**
 * Whether the plates come back: what is left with nothing failed and after each single failure, in words, as a person asks for it; and how
 * the levers move when the foot comes off at once.
 */
import type { Source, Trial } from './messages.ts';
import type { PartKey, ReportedMark } from './report.ts';

/** One part that is lost while all others stand, or a cable that seizes. */
export interface FailureKey {
  readonly kind: 'spring-lost' | 'rod-lost' | 'cable-lost' | 'slot-lost' | 'coupling-lost' | 'cable-seized';
  /** Name of the part. */
  readonly part: string;
}

/** The text, and the figures tried in it, that something was worked out of. */
export interface Tried {
  readonly source: Source;
  readonly trial: Trial;
}

/** Work that is under way on what was asked for: never more done than there is. */
export interface Working extends Tried {
  readonly done: number;
  /** One at least. */
  readonly all: number;
}

export interface Returns {
  /** What of it came to be, in one line. */
  readonly verdict: string;
  /** With nothing failed first, then each failure. Empty where nothing could be looked at, which `verdict` then says. */
  readonly rows: readonly ReturnRow[];
  /** What the rows have that no other finding tells, worst first. */
  readonly marks: readonly ReportedMark[];
  /** How the linkage stands to the figures of rules. */
  readonly statements: readonly ReturnStatement[];
  /** What all of it rests on that is not in the file, sentences without a full stop. */
  readonly assumptions: readonly string[];
}

export type ReturnOutcome = 'closes' | 'stays-open' | 'not-checked';

export interface ReturnRow {
  /** Undefined where nothing has failed. */
  readonly failure: FailureKey | undefined;
  /** What fails, e.g. `rod link`, `cable main seized`; empty where nothing has. */
  readonly name: string;
  /** The part that fails, as the report has it; undefined where nothing fails, and where the report has no such part. */
  readonly part: PartKey | undefined;
  /** The worst of its plates. */
  readonly outcome: ReturnOutcome;
  /** Every shaft with plates that the pedal opens, those that close together once. */
  readonly plates: readonly ReturnPlates[];
  /** Which lever is let go, which way it turns and what catches it, a sentence; undefined where none is. */
  readonly freed: string | undefined;
}

export interface ReturnPlates {
  /** Levers whose plates close together, e.g. `front + rear`. */
  readonly levers: string;
  readonly outcome: ReturnOutcome;
  /** E.g. `stays open`. */
  readonly outcomeText: string;
  /** Where the least is left to close them; undefined where that is not known, and where a seized cable holds them. */
  readonly weakest: ReturnWeakest | undefined;
  /** Why they stay open and how far, or why that was not checked, clauses; empty where they close. */
  readonly why: readonly string[];
  /** Until they are closed and stay so, with its unit, e.g. `0.0885 s`; undefined where that is not known. */
  readonly time: string | undefined;
  /** Whether it rests on inertias that are estimated and not given. */
  readonly isEstimated: boolean;
  /** Why no time is known, or what would make it longer and is left out; undefined where there is nothing to say besides. */
  readonly timeNote: string | undefined;
  /** How they come onto their closed stops, e.g. `onto the stop at 1240 deg/s, 2 bounces`; undefined where they never met one. */
  readonly stop: string | undefined;
}

export interface ReturnWeakest {
  /** E.g. `2.27 × friction at pedal at 0° of opening: 568 N·mm against 251 N·mm`. */
  readonly text: string;
  /** Pedal travel at which the whole linkage has that opening, a fraction; undefined where it never has. */
  readonly travel: number | undefined;
}

export interface ReturnStatement {
  readonly standing: 'meets' | 'does-not-meet' | 'not-checked';
  /** E.g. `meets the figure of … (from memory): …`. */
  readonly text: string;
  /** What of the rule is not looked at, or is read in this way; undefined where nothing is left out. */
  readonly note: string | undefined;
}

/** How all levers move after the foot came off at full pedal. */
export interface ReturnTrace {
  /** s after the foot came off, rising from 0. */
  readonly times: Float64Array;
  /** Rotation since drawn of each lever of the picture, rad, one figure a time. */
  readonly rotations: readonly Float64Array[];
  /** The levers whose plates are to close, as indices of the picture. */
  readonly shafts: readonly number[];
  /** s after which every plate is closed and stays so; undefined where one does not close. */
  readonly closed: number | undefined;
  /** What became of it, e.g. `closed after 0.0885 s`, `bank stands still before it is closed, at 34°`. */
  readonly outcome: string;
}

/** The most moments that a trace has. */
export const MOST_MOMENTS = 240;
