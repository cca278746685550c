/** What has been found out about the file, in words: the view's text beside the drawing. Nothing in it is markup. */

/** A stretch of the text, UTF-16 offsets of the version that the message names. */
export interface TextPlace {
  readonly start: number;
  readonly end: number;
}

export type Severity = 'error' | 'warning' | 'note';

export type PartKind = 'pedal' | 'cable' | 'rod' | 'slot' | 'coupling' | 'lever' | 'plates' | 'sensor' | 'spring' | 'keep-out';

/** A part of the load path, or what must stay free of it. */
export interface PartKey {
  readonly kind: PartKind;
  readonly name: string;
}

export interface Report {
  /** Of the file; undefined where it has none. */
  readonly title: string | undefined;
  /** E.g. `2 errors, 1 warning, no notes; 2 requirements passed`. */
  readonly verdict: string;
  /** The worst that there is; undefined where nothing is amiss. */
  readonly severity: Severity | undefined;
  readonly caution: string;
  /**
   * In load-path order, the order of stepping; then what the pedal does not move, keep-outs among it, in the order of the text. The lever
   * that the foot moves is the part `pedal`.
   */
  readonly parts: readonly ReportedPart[];
  /** Mistakes in the text first, then findings; worst first. */
  readonly marks: readonly ReportedMark[];
  readonly requirements: readonly ReportedRequirement[];
  readonly facts: readonly ReportedFigure[];
  readonly notChecked: readonly string[];
}

export interface ReportedPart extends PartKey {
  readonly place: TextPlace;
  /** 0 for the pedal. */
  readonly depth: number;
  /** What goes in, e.g. `crank turns 62°`; empty for the pedal. */
  readonly takes: string;
  /** What comes out. */
  readonly gives: string;
  /** The figures that matter, the first foremost. */
  readonly figures: readonly ReportedFigure[];
  /** Limits that hold for it and stand beside none of its figures, e.g. `end tilt: error above 12°`. */
  readonly limits: readonly string[];
  /** Dimensions as written, for hover, e.g. `length 71.5 mm`. */
  readonly dimensions: readonly string[];
  /** What was not checked about it, and why. */
  readonly notChecked: readonly string[];
}

export interface ReportedFigure {
  readonly label: string;
  /** With its unit, without the place where it holds. */
  readonly text: string;
  /** Pedal travel where it holds, a fraction; undefined where it is of no single place. */
  readonly travel: number | undefined;
  /** What limits it, e.g. `warning below 40°, error below 25°`; absent where nothing does or it stands elsewhere. */
  readonly limit?: string | undefined;
}

export interface ReportedMark {
  readonly severity: Severity;
  readonly code: string;
  /** Name of the part; undefined for a mistake in the text. */
  readonly part: string | undefined;
  readonly message: string;
  /** What only follows from it, of its own part or another: told with it, and no mark of its own. */
  readonly following: readonly { readonly part: string; readonly message: string }[];
  readonly cure: string | undefined;
  /** Whether the editor has fixes for such a mark. */
  readonly isMendable: boolean;
  readonly place: TextPlace;
  /** Where along the pedal it holds, fractions. */
  readonly ranges: readonly { readonly from: number; readonly to: number }[];
  /** Pedal travel of the worst, a fraction. */
  readonly worst: number | undefined;
}

export interface ReportedRequirement {
  readonly name: string;
  readonly outcome: 'passed' | 'failed' | 'undecided';
  /** Expected, actual and margin, or why it is undecided. */
  readonly text: string;
  readonly place: TextPlace;
  readonly travel: number | undefined;
}

/** A figure of the file that can be tried before it is written. */
export interface Dial {
  /** Of the value in the file, e.g. `let.reach`. */
  readonly path: string;
  readonly label: string;
  /** As written, in `unit`. */
  readonly value: number;
  /** Empty for a plain number. */
  readonly unit: string;
  /** What one step is, and sensible ends; all in `unit`. */
  readonly step: number;
  readonly least: number;
  readonly greatest: number;
  readonly place: TextPlace;
}
