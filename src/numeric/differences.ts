/** Derivatives by differences, for what has none of its own. */

/** Fills in what stands at x; false where there is nothing. */
export type Evaluate = (x: Float64Array, into: Float64Array) => boolean;

export interface DifferenceOptions {
  readonly from: Float64Array;
  readonly to: Float64Array;
  /** How far to each side, in the unit of the unknowns; less where a bound is nearer. */
  readonly step: number;
  /** The first row that is filled in; those before it are left as they are. */
  readonly firstRow?: number;
}

/**
 * d value / d unknown, one row a value: central, and one-sided at a bound and where there is nothing on the other side. 0 where there is
 * nothing on either side. Yields after each look.
 * @param values at x
 */
export function* differences(
  evaluate: Evaluate,
  x: Float64Array,
  values: Float64Array,
  { from, to, step, firstRow = 0 }: DifferenceOptions,
  jacobian: Float64Array,
): Generator<undefined, void> {
  const n = x.length;
  const count = values.length;
  const moved = Float64Array.from(x);
  const [beyond, short] = [new Float64Array(count), new Float64Array(count)];
  for (let j = 0; j < n; j++) {
    const side = (at: number, into: Float64Array): number => {
      moved[j] = at;
      const isThere = at !== x[j]! && evaluate(moved, into);
      moved[j] = x[j]!;
      if (isThere) return at;
      into.set(values);
      return x[j]!;
    };
    const high = side(Math.min(to[j]!, x[j]! + step), beyond);
    yield undefined;
    const low = side(Math.max(from[j]!, x[j]! - step), short);
    yield undefined;
    for (let row = firstRow; row < count; row++) jacobian[row * n + j] = high === low ? 0 : (beyond[row]! - short[row]!) / (high - low);
  }
}
