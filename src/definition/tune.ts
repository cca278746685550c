/**
 * The block `tune`, understood: which values are free, the curve that is wanted, and what must hold. SI inside.
 *
 * What could not be read is absent here and named by `unread`; a search must not be started while there is any.
 */
import type { ColumnReference, LimitKey, Named, Unread, Value } from './definition.ts';
import type { Span } from './span.ts';

/** What is asked of a search for dimensions. */
export interface Tune {
  /** The key. */
  readonly nameSpan: Span;
  /** From the key to the end of the block. */
  readonly span: Span;
  /** In file order, each `let` once. */
  readonly free: readonly Free[];
  /** Absent where the file gives none, or none that could be read; a problem then says so. */
  readonly curve?: TuneCurve;
  /** Absent where the file does not say: then all that it gives holds. */
  readonly keep?: readonly Kept[];
  /** Places within the block that were given and could not be read. Empty where all was. */
  readonly unread: readonly Unread[];
}

/** A value of `let` that may be chosen: a plain figure there, on which a dimension of the linkage rests. */
export interface Free extends Named {
  /** Index into `Definition.lets`; the name is that of the `let` value. */
  readonly let: number;
  /** Of the dimension of the `let` value. */
  readonly from: Value;
  /** Greater than `from`. */
  readonly to: Value;
  /** Greater than 0 and not above `to` − `from`. Only from, from + step, from + 2 step … up to `to` may be chosen. */
  readonly step?: Value;
}

/** The curve that is wanted of one column against pedal travel. */
export type TuneCurve = {
  /** The key. */
  readonly nameSpan: Span;
  readonly span: Span;
  /** An opening, an area or fraction of plates, `pedal.effort` or `pedal.release`. */
  readonly of: ColumnReference;
} & (
  | {
      readonly kind: 'through';
      /** Travels strictly rising, two points at least, joined by a monotone cubic (PCHIP). Values of an opening, area or fraction do not fall. */
      readonly points: readonly CurvePoint[];
    }
  | {
      readonly kind: 'slopes';
      /** Slope at no travel, as a multiple of the straight line's from closed to full opening; not negative. */
      readonly tipIn: Value;
      /** Slope at full travel, as a multiple of the same. */
      readonly end: Value;
    }
);

/** A point of the wanted curve. */
export interface CurvePoint {
  readonly span: Span;
  /** Of the pedal's travel, 0 to 1. */
  readonly travel: Value;
  /** SI, of the column's dimension. */
  readonly value: Value;
  /** Not negative; 1 where absent. */
  readonly weight?: Value;
}

/** Something that must hold of an answer. */
export type Kept =
  | { readonly kind: 'limit'; readonly key: LimitKey; readonly span: Span }
  | { readonly kind: 'word'; readonly word: KeptWord; readonly span: Span }
  /** Name of a line of `require`. */
  | { readonly kind: 'requirement'; readonly name: string; readonly span: Span };

/**
 * `full_opening`: shafts with plates reach their full opening. `clearance`: what stands in the way is cleared.
 * `closing_torque`: the plates close with each spring off in turn.
 */
export type KeptWord = 'full_opening' | 'clearance' | 'closing_torque';
