/**
 * What the editor and the view say to each other. All that derives from text names the document and its version, so that what is stale
 * drops. What a person does in the view goes back as an intent: the editor makes the text edit, and the text comes back as a picture.
 */
import type { Chart, ChartId } from './charts.ts';
import type { Picture, Triple } from './picture.ts';
import type { Dial, PartKey, Report, ReportedFigure, TextPlace } from './report.ts';
import type { FailureKey, Returns, ReturnTrace, Tried, Working } from './returns.ts';
import type { StudyKind, ToldStudy, WriteAnswer } from './studies.ts';

/** Changes whenever the messages do, and stands in every envelope (`channel.ts`); the page and the editor come from one build, but a revived page may be older. */
export const PROTOCOL = 9;

/** The text that a message speaks of. */
export interface Source {
  readonly uri: string;
  readonly version: number;
}

/** A solved file, ready to be shown. */
export interface Shown {
  readonly picture: Picture;
  readonly charts: readonly Chart[];
  readonly report: Report;
  /** The `let` values that can be tried, in the order of the file, as they are written. */
  readonly dials: readonly Dial[];
}

/** What of a solved file may follow its drawing in messages of its own; the report follows without its facts. */
export type Coming = ChartId | 'report' | 'facts';

export const isChart = (coming: Coming): coming is ChartId => coming !== 'report' && coming !== 'facts';

/** What goes first: that of a report and of charts which is not in it follows. */
export interface Drawn extends Omit<Shown, 'report'> {
  /** Undefined where it is to follow: that of the text before stands until then. */
  readonly report: Report | undefined;
  /** What is not in here yet, be it that there is any. */
  readonly coming: readonly Coming[];
}

/** What has followed, of the text and the figures tried that it names: each of what was coming is told once. */
export interface Followed {
  readonly source: Source;
  readonly trial: Trial;
  /** With a figure for each station of the picture of that text. */
  readonly charts: readonly Chart[];
  /** Charts that were coming and turned out to have no curve. */
  readonly without: readonly ChartId[];
  /** Without facts; undefined where it is in another message. */
  readonly report: Report | undefined;
  /** Undefined where they are in another message. */
  readonly facts: readonly ReportedFigure[] | undefined;
}

/** What the editor has of texts in another language: each under its English text, with its gaps in braces. Plain text. */
export interface Translated {
  /** As a web page names it, e.g. `fr`. */
  readonly language: string;
  readonly texts: Readonly<Record<string, string>>;
}

export type ToView =
  /** The page's own words, before anything else; not sent where the editor shows the extension in English. */
  | ({ readonly type: 'words' } & Translated)
  /** The text as it stands has been solved; `trial` where figures are tried that are not written. What is coming stands in `follows`. */
  | ({ readonly type: 'show'; readonly source: Source; readonly fileName: string; readonly trial: Trial } & Drawn)
  | ({ readonly type: 'follows' } & Followed)
  /** The text has no picture of its own; the last good one stays, dimmed. `missing`: what is missing or wrong, in words. */
  | { readonly type: 'broken'; readonly source: Source; readonly fileName: string; readonly missing: readonly Missing[] }
  /** What was asked to be tried cannot be: why, in words. The page drops it; what it showed before stands. */
  | { readonly type: 'refused'; readonly source: Source; readonly trial: Trial; readonly reason: string }
  /** The cursor stands on a part, or on none; `step` where a command went there, and the card is wanted. */
  | {
      readonly type: 'select';
      readonly source: Source;
      readonly part: PartKey | undefined;
      readonly step: boolean;
      readonly dial: Dial | undefined;
    }
  /** Another state of the file to compare with; the newest takes the place of the one before. */
  | ({ readonly type: 'compare'; readonly source: Source } & Compared)
  | { readonly type: 'compare-ended'; readonly reason: string | undefined }
  /** How far the table of single failures is that was asked for and whose answer is still to come. */
  | ({ readonly type: 'working' } & Working)
  /** Where a study stands, each time that this changes; the newest of its kind takes the place of the one before. */
  | ({ readonly type: 'study' } & ToldStudy)
  /** The file was closed, deleted or is not a throttle file any more; why, in words. */
  | { readonly type: 'gone'; readonly reason: string };

export interface Missing {
  readonly message: string;
  readonly place: TextPlace;
}

export interface Compared {
  /** What it is compared with, e.g. `HEAD`, `3f2a91c`, `rev_a.throttle.yaml`. */
  readonly label: string;
  /** The other state; undefined where it cannot be drawn, which `changes` then says. */
  readonly other: Pick<Shown, 'picture' | 'charts'> | undefined;
  readonly changes: readonly ChangedValue[];
  /** What changed in the outcome, in words, what matters most first. */
  readonly effects: readonly string[];
}

/** A value or part that differs, and what this difference alone does to the outcome. */
export interface ChangedValue {
  /** E.g. `levers.crank.arms.out.radius`. */
  readonly path: string;
  /** As written; undefined where the thing does not stand there. */
  readonly was: string | undefined;
  readonly is: string | undefined;
  readonly effects: readonly string[];
  readonly place: TextPlace | undefined;
}

/** Figures to be tried, at most one for each path; empty where none are. */
export type Trial = readonly Change[];

export type Change =
  /** A figure, in the unit in which it is written. */
  | { readonly kind: 'value'; readonly path: string; readonly value: number }
  /**
   * A place, drawn position, m. `fine`: not rounded to 0.1 mm. `through`: the `let` to write where the place follows from one; nothing is
   * changed where that is needed and absent.
   */
  | { readonly kind: 'place'; readonly path: string; readonly to: Triple; readonly fine: boolean; readonly through: string | undefined };

export type ToEditor =
  /** The page listens. */
  | { readonly type: 'ready' }
  | { readonly type: 'reveal'; readonly source: Source; readonly place: TextPlace }
  /** Go to a place of the text and choose there among the fixes for what was found. */
  | { readonly type: 'mend'; readonly source: Source; readonly place: TextPlace }
  /** The newest change of the file: take it back, or make it again after that. */
  | { readonly type: 'undo' | 'redo' }
  | { readonly type: 'reveal-part'; readonly source: Source; readonly part: PartKey }
  /** Show what these figures would do; an empty list drops them. At most one is under way: the page waits for its `show`. */
  | { readonly type: 'try'; readonly source: Source; readonly trial: Trial }
  /** The charts that can be seen: they follow the drawing before the others. */
  | { readonly type: 'in-sight'; readonly charts: readonly ChartId[] }
  /** What should have followed and did not. */
  | { readonly type: 'follow'; readonly source: Source; readonly trial: Trial; readonly coming: readonly Coming[] }
  | { readonly type: 'step'; readonly way: 1 | -1 }
  | { readonly type: 'compare-with'; readonly other: 'head' | 'revision' | 'file' | 'nothing' }
  /** Begin a study of the text as it stands; of solving for a figure the editor asks what it is about. */
  | { readonly type: 'run-study'; readonly kind: StudyKind }
  | { readonly type: 'cancel-study'; readonly kind: StudyKind };

/** What the page asks and waits for: the name of the request, what it carries, what comes back. */
export interface Requests {
  /** Writes figures into the text, as one undo step; answers with the version that has them. */
  readonly write: { readonly asks: { readonly source: Source; readonly trial: Trial }; readonly answers: { readonly version: number } };
  /** Saves a file where the person chooses; `saved` is false where they chose nowhere. */
  readonly save: {
    readonly asks: { readonly name: string; readonly kind: 'svg' | 'png' | 'csv'; readonly content: string | Uint8Array };
    readonly answers: { readonly saved: boolean };
  };
  /** The table as CSV with all columns, of the text as shown. */
  readonly table: { readonly asks: { readonly source: Source; readonly trial: Trial }; readonly answers: { readonly csv: string } };
  /** Whether the plates come back, with nothing failed and after each single failure. Of several under way all but the newest are refused. */
  readonly returns: { readonly asks: Tried; readonly answers: Returns };
  /** How the levers move when the foot comes off, after a failure or with none, where it can be computed. The same. */
  readonly trace: { readonly asks: Tried & { readonly failure: FailureKey | undefined }; readonly answers: ReturnTrace };
  /** Writes an answer of a study into the text, as one undo step; answers with the version that has it. */
  readonly answer: { readonly asks: WriteAnswer; readonly answers: { readonly version: number } };
}
