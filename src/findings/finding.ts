/**
 * What is wrong with the linkage, or worth knowing: the answer of one rule, as data.
 */
import type { FigureDimension } from '../definition/dimensions.ts';
import type { Span } from '../definition/span.ts';
import type { FindingCode } from './codes.ts';

export type FindingSeverity = 'error' | 'warning' | 'note';

/** A figure with its kind; SI. */
export interface Figure {
  readonly value: number;
  readonly dimension: FigureDimension;
}

/** A stretch of the pedal's travel, both ends fractions of the whole, `from` not above `to`. */
export interface TravelRange {
  readonly from: number;
  readonly to: number;
}

export interface Finding {
  readonly code: FindingCode;
  readonly severity: FindingSeverity;
  /** Name of the part it is about, as in the file. */
  readonly part: string;
  /** The value or name in the text that it is about. */
  readonly span: Span;
  /** Cause first, with figure, unit and pedal range; a sentence without a full stop. */
  readonly message: string;
  /** What would help, where that is known; a sentence without a full stop. */
  readonly cure?: string;
  /** Where along the pedal it holds, rising; absent where it has nothing to do with the pedal's position. */
  readonly ranges?: readonly TravelRange[];
  readonly worst?: Figure & { readonly travel: number };
  readonly limit?: Figure & { readonly from: string };
  /** Name of the spring that is taken off for it; absent where it holds with all springs on. */
  readonly without?: string;
  /** One figure that would mend it: vary `unknown` until `outcome` is `target`. */
  readonly mend?: Mend;
  readonly related?: readonly { readonly span: Span; readonly message: string }[];
  /** Findings that only follow from this one, in their order; each is told among `related`, and is no finding of its own. */
  readonly following?: readonly Finding[];
}

export interface Mend {
  /** Path of a dimension, e.g. `rods.link_a.length`; with the outcome `itself`, of any plain figure of the file. */
  readonly unknown: string;
  readonly outcome: Outcome;
  /** SI. */
  readonly target: number;
}

/** A figure that a dimension can be solved for. */
export type Outcome =
  /** The unknown's own value: the target is what to write. */
  { readonly kind: 'itself' } | ColumnOutcome;

/** A figure of the solved linkage. */
export type ColumnOutcome =
  /** A column at a pedal travel (fraction). */
  | { readonly kind: 'at'; readonly column: string; readonly travel: number }
  /** Its least or greatest over the travel; of a lever's `margin` also with a spring off, which is named. */
  | { readonly kind: 'least' | 'greatest'; readonly column: string; readonly without?: string };

/** What could not be checked, and why. */
export interface NotChecked {
  readonly part: string;
  readonly span: Span;
  /** What was not checked and what is missing for it; a sentence without a full stop. */
  readonly message: string;
}

/** Something worth knowing that is no finding. */
export interface Fact {
  readonly key: string;
  readonly part: string;
  /** In words, e.g. `pedal travel at half opening`. */
  readonly label: string;
  /** Undefined where it is never reached or cannot be told; `why` then says so. */
  readonly figure?: Figure;
  /** Pedal travel where it holds, a fraction. */
  readonly travel?: number;
  readonly why?: string;
  /** What published guidance says of such a figure, with its source; no judgement. */
  readonly guidance?: string;
}
