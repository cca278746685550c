/**
 * Least squares within bounds, by the method of Levenberg and Marquardt.
 *
 * The damping follows H. B. Nielsen, "Damping parameter in Marquardt's method", IMM-REP-1999-05, Technical University of Denmark (1999),
 * from memory; unknowns are damped in parts of their bounds, whatever their units. An unknown that stands on a bound, and that the slope
 * would push beyond it, is held there for that step; a step is cut off at the bounds.
 */
import { solveLinear } from './linearSystem.ts';

/** Least and greatest of each unknown; one whose bounds are equal is held there. */
export interface Bounds {
  readonly from: Float64Array;
  readonly to: Float64Array;
}

export interface LeastSquares extends Bounds {
  /** How many residuals there are. */
  readonly count: number;
  /** Fills in the residuals at x; false where there are none. */
  evaluate(x: Float64Array, residuals: Float64Array): boolean;
  /**
   * Fills in d residual / d unknown, one row a residual; yields as it goes. Where an entry is not finite the search ends.
   * @param residuals at x
   */
  differentiate(x: Float64Array, residuals: Float64Array, jacobian: Float64Array): Generator<undefined, void>;
}

export interface Minimum {
  readonly x: Float64Array;
  /** Half the sum of squares. */
  readonly cost: number;
  readonly steps: number;
}

export interface Patience {
  /** Steps tried, at most. */
  readonly steps: number;
  /** Ends where half the sum of squares is below this. */
  readonly enough: number;
  /** Ends where no unknown moves by more than this part of its bounds. */
  readonly still: number;
}

/** Yields after each look and as it differentiates. Undefined where there are no residuals at the start. @param start within the bounds */
export function* leastSquares(problem: LeastSquares, start: Float64Array, patience: Patience): Generator<undefined, Minimum | undefined> {
  const { count, from, to } = problem;
  const n = start.length;
  let x = Float64Array.from(start);
  let residuals = new Float64Array(count);
  if (!problem.evaluate(x, residuals)) return undefined;
  yield undefined;
  let cost = half(residuals);
  const jacobian = new Float64Array(count * n);
  let other = new Float64Array(count);
  let damping = 0;
  let growth = 2;
  let steps = 0;
  let fresh = false;
  const gradient = new Float64Array(n);
  const squares = new Float64Array(n * n);
  while (steps < patience.steps && cost > patience.enough) {
    if (!fresh) {
      yield* problem.differentiate(x, residuals, jacobian);
      gather(jacobian, residuals, gradient, squares);
      if (!gradient.every(Number.isFinite) || !squares.every(Number.isFinite)) break;
      if (steps === 0) damping = FIRST_DAMPING * greatestOnDiagonal(squares, from, to);
      fresh = true;
    }
    steps++;
    const step = dampedStep(squares, gradient, damping, x, from, to);
    const next = x.map((value, i) => Math.min(to[i]!, Math.max(from[i]!, value + step[i]!)));
    const moved = next.map((value, i) => value - x[i]!);
    if (moved.every((by, i) => Math.abs(by) <= patience.still * (to[i]! - from[i]!))) break;
    const predicted = -slopeAlong(gradient, moved) - half(product(jacobian, moved, count));
    const found = problem.evaluate(next, other) ? half(other) : Infinity;
    yield undefined;
    const gain = (cost - found) / predicted;
    if (found < cost) {
      x = next;
      [residuals, other] = [other, residuals];
      cost = found;
      damping *= predicted > 0 ? Math.max(1 / 3, 1 - (2 * gain - 1) ** 3) : 1;
      growth = 2;
      fresh = false;
    } else {
      damping = Math.max(damping, Number.MIN_VALUE) * growth;
      growth *= 2;
      if (!Number.isFinite(damping) || growth > MOST_GROWTH) break;
    }
  }
  return { x, cost, steps };
}

const FIRST_DAMPING = 1e-3;
const MOST_GROWTH = 2 ** 40;

function half(residuals: Float64Array): number {
  let sum = 0;
  for (const residual of residuals) sum += residual * residual;
  return sum / 2;
}

function gather(jacobian: Float64Array, residuals: Float64Array, gradient: Float64Array, squares: Float64Array): void {
  const n = gradient.length;
  gradient.fill(0);
  squares.fill(0);
  for (let row = 0; row < residuals.length; row++) {
    for (let i = 0; i < n; i++) {
      const slope = jacobian[row * n + i]!;
      gradient[i] = gradient[i]! + slope * residuals[row]!;
      for (let j = 0; j < n; j++) squares[i * n + j] = squares[i * n + j]! + slope * jacobian[row * n + j]!;
    }
  }
}

/** With each unknown counted in parts of its bounds. */
function greatestOnDiagonal(squares: Float64Array, from: Float64Array, to: Float64Array): number {
  const n = from.length;
  let greatest = 0;
  for (let i = 0; i < n; i++) greatest = Math.max(greatest, squares[i * n + i]! * (to[i]! - from[i]!) ** 2);
  return greatest;
}

function dampedStep(
  squares: Float64Array,
  gradient: Float64Array,
  damping: number,
  x: Float64Array,
  from: Float64Array,
  to: Float64Array,
): Float64Array {
  const n = x.length;
  const isHeld = (i: number): boolean =>
    !(from[i]! < to[i]!) || (x[i]! <= from[i]! && gradient[i]! > 0) || (x[i]! >= to[i]! && gradient[i]! < 0);
  const free = [...x.keys()].filter((i) => !isHeld(i));
  const width = (i: number): number => to[i]! - from[i]!;
  const a = new Float64Array(free.length * free.length);
  const b = new Float64Array(free.length);
  // In parts of the bounds: as the unknowns come, a small one beside a large one would pass for one that does not count.
  free.forEach((i, row) => {
    free.forEach((j, column) => {
      a[row * free.length + column] = squares[i * n + j]! * width(i) * width(j) + (i === j ? damping : 0);
    });
    b[row] = -gradient[i]! * width(i);
  });
  solveLinear(a, b, free.length);
  const step = new Float64Array(n);
  free.forEach((i, row) => (step[i] = b[row]! * width(i)));
  return step;
}

function slopeAlong(gradient: Float64Array, moved: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < gradient.length; i++) sum += gradient[i]! * moved[i]!;
  return sum;
}

function product(jacobian: Float64Array, moved: Float64Array, count: number): Float64Array {
  const n = moved.length;
  const into = new Float64Array(count);
  for (let row = 0; row < count; row++) for (let i = 0; i < n; i++) into[row] = into[row]! + jacobian[row * n + i]! * moved[i]!;
  return into;
}
