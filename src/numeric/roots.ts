/**
 * The root of a function of one variable between two places where its signs differ.
 *
 * T. R. Chandrupatla, "A new hybrid quadratic/bisection algorithm for finding the zero of a nonlinear function without using
 * derivatives", Advances in Engineering Software 28 (1997) 145: inverse quadratic steps where they are safe, bisection elsewhere,
 * so it never takes more than about twice the steps of bisection.
 */

/**
 * @param atLow value at `low`; @param atHigh value at `high`, of the other sign or zero
 * @param close absolute width at which the bracket is narrow enough
 * @returns the better end of the last bracket; `low` where a value turns out not to be a number
 */
export function bracketedRoot(f: (x: number) => number, low: number, atLow: number, high: number, atHigh: number, close: number): number {
  if (atLow === 0) return low;
  if (atHigh === 0) return high;
  let a = high;
  let b = low;
  let fa = atHigh;
  let fb = atLow;
  let c: number;
  let fc: number;
  let t = 0.5;
  for (let step = 0; step < MOST_STEPS; step++) {
    const x = a + t * (b - a);
    const fx = f(x);
    if (Number.isNaN(fx)) return low;
    if (fx > 0 === fa > 0 && fx !== 0) {
      c = a;
      fc = fa;
    } else {
      c = b;
      fc = fb;
      b = a;
      fb = fa;
    }
    a = x;
    fa = fx;
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const tolerance = 0.5 * close + 2 * Number.EPSILON * Math.abs(best);
    const least = tolerance / Math.abs(b - a);
    if (fa === 0 || fb === 0 || !(least < 0.5)) return best;
    const xi = (a - b) / (c - b);
    const phi = (fa - fb) / (fc - fb);
    t =
      phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi
        ? (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb))
        : 0.5;
    t = Math.min(1 - least, Math.max(least, t));
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}

/** Bisection from the whole range of doubles down to neighbours takes fewer. */
const MOST_STEPS = 200;

/**
 * The place nearest to `without` at which a function that is a number at `withValue` still is one: the edge of its domain, to the last
 * bit.
 */
export function lastWithValue(f: (x: number) => number, withValue: number, without: number): number {
  let inside = withValue;
  let outside = without;
  for (let step = 0; step < HALVINGS; step++) {
    const middle = (inside + outside) / 2;
    if (middle === inside || middle === outside) break;
    if (Number.isNaN(f(middle))) outside = middle;
    else inside = middle;
  }
  return inside;
}

/** Halving a stretch that often leaves neighbouring numbers. */
const HALVINGS = 64;

/** Solutions of A cos φ + B sin φ = C in (−π, π], rising; equal ones once; none where there is no solution. */
export function turnRoots(a: number, b: number, c: number): readonly number[] {
  const square = a * a + b * b;
  const rest = square - c * c;
  if (!(square > 0) || !(rest >= 0)) return [];
  const s = Math.sqrt(rest);
  const one = Math.atan2(b * c - a * s, a * c + b * s);
  const other = Math.atan2(b * c + a * s, a * c - b * s);
  return one === other ? [one] : one < other ? [one, other] : [other, one];
}
