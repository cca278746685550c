/** What the file demands and how the linkage stands to it, as data. */
import type { Dimension } from '../definition/dimensions.ts';
import type { Requirement } from '../definition/formula/formula.ts';
import type { Span } from '../definition/span.ts';

/** `undecided`: it could not be decided, which counts as not passed. */
export type RequirementOutcome = 'passed' | 'failed' | 'undecided';

/** How a linkage stands to one line of `require`. */
export interface RequirementAnswer {
  readonly requirement: Requirement;
  readonly outcome: RequirementOutcome;
  /** Why it is undecided; for a failed one, that a position it speaks of is never reached. A sentence without a full stop. */
  readonly reason?: string;
  /** Every comparison that stands by itself, in the order of the text; those within a `where` are none. Empty where not understood. */
  readonly comparisons: readonly Comparison[];
}

export type ComparisonOperator = '<' | '<=' | '>' | '>=' | '==' | '!=';

/** One comparison of a requirement. */
export interface Comparison {
  /** As written. */
  readonly text: string;
  readonly span: Span;
  /** What is demanded: actual OPERATOR demanded. Turned round where the file has the actual side on the right, and under `not`. */
  readonly operator: ComparisonOperator;
  /** The side that speaks of the travel; the left one where both do, or neither. Absent where it has no value. */
  readonly actual?: ComparedFigure;
  /** The other side. */
  readonly demanded?: ComparedFigure;
  /**
   * How far the actual figure lies within the limit, negative beyond it, 0 where both count as equal. For `==` the difference that is
   * allowed less the one that there is, for `!=` the other way round. Absent where a side has no value.
   */
  readonly margin?: ComparedFigure;
  /** Undefined where it cannot be decided. False where a `where` in it never holds. */
  readonly holds: boolean | undefined;
  /** Why it cannot be decided, or what is never reached. */
  readonly reason?: string;
  /** Pedal travel, a fraction, at which the actual figure was met; absent where that is no single place. */
  readonly travel?: number;
}

/** A figure of any kind, SI. */
export type ComparedFigure =
  /** `percent`: a fraction that is shown in percent. */
  | { readonly value: number; readonly dimension: Dimension; readonly percent?: true }
  /** A quantity that no place of the file knows, such as an energy; in `unit`, e.g. `J`, `m³/rad`. */
  | { readonly value: number; readonly dimension?: undefined; readonly unit: string };
