/**
 * Studies: what takes seconds and is asked for. Finding dimensions for a curve, what tolerances do, solving for one figure, fitting to
 * readings of the built car. What comes of one is a page of blocks, in words and in figures as they are read, and the changes of the text
 * that a person may choose from it.
 */
import type { Chart } from './charts.ts';
import type { Source } from './messages.ts';
import type { TextPlace } from './report.ts';

export type StudyKind = 'tune' | 'tolerance' | 'solve' | 'fit';

export const STUDY_KINDS: readonly StudyKind[] = ['tune', 'tolerance', 'solve', 'fit'];

/** How far one is. */
export interface StudyProgress {
  /** From 0 to 1 of what `note` says. */
  readonly share: number;
  /** What is being done, e.g. `random builds`. */
  readonly note: string;
}

/** What came of one. */
export interface StudyFound {
  readonly kind: StudyKind;
  /** In one line. */
  readonly verdict: string;
  readonly standing: Standing;
  /** In reading order. */
  readonly blocks: readonly StudyBlock[];
  /** How far the curves of the view's charts spread; undefined where the study says nothing of them. */
  readonly spread: StudySpread | undefined;
  readonly caution: string;
}

/** `undecided`: what was asked could not be checked. */
export type Standing = 'passed' | 'failed' | 'undecided';

export type StudyBlock = StudyLines | StudyTable | StudyCharts | StudyAnswer;

export interface StudyLines {
  readonly kind: 'lines';
  /** Empty where the lines belong to what stands above them. */
  readonly title: string;
  readonly lines: readonly StudyLine[];
}

export interface StudyLine {
  readonly text: string;
  /** Undefined for what is only told. */
  readonly sign: Standing | 'warning' | 'note' | undefined;
  /** Undefined where it speaks of no place of the text. */
  readonly place: TextPlace | undefined;
}

export interface StudyTable {
  readonly kind: 'table';
  readonly title: string;
  /** What is said of it in one line; empty where nothing is. */
  readonly hint: string;
  /** The first is that of the rows' names. */
  readonly columns: readonly string[];
  readonly rows: readonly StudyRow[];
}

export interface StudyRow {
  readonly name: string;
  readonly place: TextPlace | undefined;
  /** One for each column but the first. */
  readonly cells: readonly string[];
  /** Of the row's weight among all, 0 to 1, drawn as a bar; undefined where rows are not weighed. */
  readonly share: number | undefined;
}

/** Curves over the pedal's travel. */
export interface StudyCharts {
  readonly kind: 'charts';
  /** Pedal travels from 0 to 1, rising, of every curve. */
  readonly stations: Float64Array;
  readonly charts: readonly StudyChart[];
}

export interface StudyChart extends Omit<Chart, 'id'> {
  /** Each once in a study. */
  readonly id: string;
}

/** A change of the text that may be chosen. */
export interface StudyAnswer {
  readonly kind: 'answer';
  readonly title: string;
  readonly standing: Standing;
  readonly lines: readonly StudyLine[];
  /** Lines of the text that it changes; empty where it changes none. */
  readonly diff: readonly ChangedLine[];
  /** The figures that it writes; empty where it changes nothing. */
  readonly writes: readonly StudyWrite[];
}

export interface ChangedLine {
  /** From 1. */
  readonly line: number;
  readonly was: string;
  readonly is: string;
}

/** A figure of the text to be given another value; unit, tolerance and comment stay. */
export interface StudyWrite {
  readonly path: string;
  /** SI. */
  readonly value: number;
}

/** Between what the curves of the view's charts lie in most builds. */
export interface StudySpread {
  /** E.g. `Shaded beside a curve: 5 % of 1000 random builds lie below, 5 % above.` */
  readonly words: string;
  readonly stations: Float64Array;
  readonly columns: readonly SpreadColumn[];
}

export interface SpreadColumn {
  /** That of the chart's curve. */
  readonly column: string;
  /** In the chart's unit, one figure a station; NaN where there is none. */
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** Where a study stands. */
export type StudyStage =
  | {
      readonly stage: 'running';
      readonly progress: StudyProgress | undefined;
      /** s; undefined where that cannot be told yet. */ readonly left: number | undefined;
    }
  | { readonly stage: 'found'; readonly found: StudyFound }
  /** `why` is a sentence without a full stop. */
  | { readonly stage: 'refused'; readonly why: string }
  | { readonly stage: 'cancelled' };

/** What the view is told of a study. */
export interface ToldStudy {
  readonly kind: StudyKind;
  /** The text that it is of. */
  readonly source: Source;
  readonly now: StudyStage;
  /** Whether a file beside the text, on which it rests, has changed since it began. */
  readonly isOutrun: boolean;
  /** Whether a person asked for it elsewhere than in the view, and wants to be led there. */
  readonly show: boolean;
}

/** Writes the answer of a study. */
export interface WriteAnswer {
  readonly kind: StudyKind;
  /** The text that the study is of. */
  readonly source: Source;
  /** Place among the blocks of the study. */
  readonly block: number;
}
