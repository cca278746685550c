/**
 * The block `measured`, understood: readings of the built car, and which dimensions are to be found from them. SI inside.
 *
 * What could not be read is absent here and named by `unread`; readings that are left out because of it are not few.
 */
import type { ColumnReference, Named, Reference, Unread, Value } from './definition.ts';
import type { Span } from './span.ts';

/** What was measured. */
export interface Measured {
  /** The key. */
  readonly nameSpan: Span;
  /** From the key to the end of the block. */
  readonly span: Span;
  /** Absent where the file does not say: then every dimension with a tolerance is to be found. */
  readonly fit?: readonly FitDimension[];
  /** In file order. */
  readonly runs: readonly Run[];
  /** Places within the block that were given and could not be read. Empty where all was. */
  readonly unread: readonly Unread[];
}

/** A dimension that is to be found. */
export interface FitDimension {
  /** As written: a name of `let`, or `part.key`, such as `drag_link.length`. */
  readonly name: string;
  /** The dimension's path, such as `let.reach` or `rods.drag_link.length`: that of a `MechanismDimension` or of what is attached. */
  readonly path: string;
  readonly span: Span;
}

/** Readings that were taken together. */
export interface Run extends Named {
  /**
   * The first is the pedal's position: `pedal.travel` or the `pull` of a cable; each once, two at least. Absent for a file whose first
   * line says them.
   */
  readonly columns?: readonly ColumnReference[];
  readonly readings: RunReadings;
  /** Of the columns but the first. A column that is not here has the noise that its kind of reading commonly has. */
  readonly noise: readonly Noise[];
}

/** Where the readings of a run stand. */
export type RunReadings =
  | { readonly kind: 'rows'; readonly span: Span; readonly rows: readonly ReadingRow[] }
  /** Name of a CSV file beside the throttle file: no folders, no drive, no address. */
  | { readonly kind: 'file'; readonly file: Reference };

/** One line of readings. */
export interface ReadingRow {
  readonly span: Span;
  /** As many as the run has columns; undefined where it was not taken, which the first never is. */
  readonly values: readonly (Value | undefined)[];
}

/** How far readings of a column scatter. */
export interface Noise {
  readonly column: ColumnReference;
  /** One standard deviation, SI, greater than 0. */
  readonly deviation: Value;
}
