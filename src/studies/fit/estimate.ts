/**
 * The dimensions that the readings and the tolerances together make likeliest, by the method of Gauss and Newton.
 *
 * With each unknown counted in its scale, x = (d − middle) / scale, and each reading's miss in its noise, the sum
 *     Σ w² ((y(d) − read) / noise)² + Σ x²  over the unknowns that have a tolerance
 * is brought to its least. Each step is the shortest that solves the linear problem, so what neither readings nor tolerances tell stays
 * as the file has it; a step that does not lower the sum is halved. `numeric/leastSquares.ts` is not used: its damping moves such
 * directions too, and it cannot be gone through in pieces.
 */
import { shortestSolution, singularOf, triangleOf, type Singular } from '../../numeric/singularValues.ts';
import type { Car, Side } from './car.ts';
import type { Unknown } from './unknowns.ts';

/** A reading as the estimate needs it. */
export interface Target {
  /** SI. */
  readonly value: number;
  /** One standard deviation, SI. */
  readonly noise: number;
}

export interface Problem {
  readonly car: Car;
  readonly unknowns: readonly Unknown[];
  readonly targets: readonly Target[];
  /** Indices of unknowns that stay where an estimate starts; none where absent. */
  readonly fixed?: ReadonlySet<number>;
}

export interface Estimate {
  /** In scales from the start. */
  readonly x: Float64Array;
  /** SI. */
  readonly values: Float64Array;
  /** Of every reading, of those left out too, SI. */
  readonly fitted: Float64Array;
  /** (fitted − read) / noise of every reading. */
  readonly misses: Float64Array;
  /** d miss / d x, one row a reading. */
  readonly jacobian: Float64Array;
  /** Whether the last step was too small to matter. */
  readonly settled: boolean;
}

/** How the misses change about a place. */
type Linear = Pick<Estimate, 'x' | 'jacobian' | 'misses'>;

/** SI value of an unknown at x = 0. */
export function startOf({ prior, nominal }: Unknown): number {
  return prior?.middle ?? nominal;
}

/**
 * Yields as it goes.
 * @param start in scales @param weights 1 for readings that count, 0 for those left out @param most steps; with none it is the start itself
 * @returns undefined where a reading that counts has no value at the start
 */
export function* estimate(
  { car, unknowns, targets, fixed }: Problem,
  start: Float64Array,
  weights: Float64Array,
  most: number = MOST_STEPS,
): Generator<undefined, Estimate | undefined> {
  const n = unknowns.length;
  const m = targets.length;
  const fitted = new Float64Array(m);
  const evaluate = (at: Float64Array, misses: Float64Array): number => {
    car.put(valuesOf(unknowns, at));
    car.read(fitted);
    let cost = 0;
    for (let i = 0; i < m; i++) {
      misses[i] = (fitted[i]! - targets[i]!.value) / targets[i]!.noise;
      if (weights[i]! > 0) cost += misses[i]! * misses[i]!;
    }
    unknowns.forEach(({ prior }, j) => (cost += prior === undefined ? 0 : at[j]! * at[j]!));
    return Number.isNaN(cost) ? Infinity : cost;
  };
  let x = Float64Array.from(start);
  let misses = new Float64Array(m);
  let other = new Float64Array(m);
  let cost = evaluate(x, misses);
  if (cost === Infinity) return undefined;
  const jacobian = new Float64Array(m * n);
  const differentiate = function* (side: Side): Generator<undefined, void> {
    yield* car.differentiate(side, jacobian);
    for (let i = 0; i < m; i++) for (let j = 0; j < n; j++) jacobian[i * n + j]! *= unknowns[j]!.scale / targets[i]!.noise;
  };
  let settled = false;
  let side: Side = 'growing';
  for (let step = 0; step <= most; step++) {
    yield* differentiate(side);
    if (step === most) break;
    const { r, c } = stackOf(unknowns, x, jacobian, misses, weights, fixed);
    const singular = singularOf({ n, r });
    const along = shortestSolution(singular, c, leastOf(singular));
    // In standard deviations of what is then known: a step along what is not told would be long whatever it does.
    if (lengthIn(singular, along) <= STILL) {
      settled = true;
      break;
    }
    let share = 1;
    let lower = false;
    for (let halving = 0; halving < MOST_HALVINGS && !lower; halving++, share /= 2) {
      yield undefined;
      const next = x.map((value, j) => value + share * along[j]!);
      const found = evaluate(next, other);
      if (!(found < cost)) continue;
      lower = true;
      [x, misses, other, cost] = [next, other, misses, found];
    }
    if (lower) {
      side = 'growing';
      continue;
    }
    evaluate(x, misses);
    // Where a lever just meets a stop the change may be another to each side: both are tried before giving up.
    if (side === 'both') {
      settled = lengthIn(singular, along) <= NEARLY_STILL;
      break;
    }
    side = 'both';
  }
  return { x, values: valuesOf(unknowns, x), fitted: Float64Array.from(fitted), misses, jacobian, settled };
}

const MOST_STEPS = 40;
const MOST_HALVINGS = 14;
/** Standard deviations. */
const STILL = 1e-4;
/** The same, where rounding lets the sum fall no further. */
const NEARLY_STILL = 1e-2;

export function valuesOf(unknowns: readonly Unknown[], x: Float64Array): Float64Array {
  return Float64Array.from(unknowns, (unknown, j) => startOf(unknown) + unknown.scale * x[j]!);
}

/** Readings that count and, below them, the tolerances, as a triangle; c is of what a step is to make up for. */
function stackOf(
  unknowns: readonly Unknown[],
  x: Float64Array,
  jacobian: Float64Array,
  misses: Float64Array,
  weights: Float64Array,
  fixed: ReadonlySet<number> = NONE,
): { readonly r: Float64Array; readonly c: Float64Array } {
  const n = unknowns.length;
  const known = unknowns.flatMap(({ prior }, j) => (prior === undefined || fixed.has(j) ? [] : [j]));
  const counted = [...weights.keys()].filter((i) => weights[i]! > 0);
  const rows = new Float64Array((counted.length + known.length) * n);
  const right = new Float64Array(counted.length + known.length);
  counted.forEach((i, row) => {
    rows.set(jacobian.subarray(i * n, i * n + n), row * n);
    // What changes nothing is not stepped along.
    for (const j of fixed) rows[row * n + j] = 0;
    right[row] = -misses[i]!;
  });
  known.forEach((j, k) => {
    rows[(counted.length + k) * n + j] = 1;
    right[counted.length + k] = -x[j]!;
  });
  return triangleOf(rows, right, n);
}

/** The step to the least of the linear sum, in scales, and its length in standard deviations. */
export function stepOf(
  { unknowns, fixed }: Problem,
  { x, jacobian, misses }: Linear,
  weights: Float64Array,
): { readonly step: Float64Array; readonly length: number } {
  const { r, c } = stackOf(unknowns, x, jacobian, misses, weights, fixed);
  const singular = singularOf({ n: unknowns.length, r });
  const step = shortestSolution(singular, c, leastOf(singular));
  return { step, length: lengthIn(singular, step) };
}

const NONE: ReadonlySet<number> = new Set();

/** Of readings and tolerances, at an estimate. */
export function posteriorOf(unknowns: readonly Unknown[], { x, jacobian, misses }: Linear, weights: Float64Array): Singular {
  return singularOf({ n: unknowns.length, r: stackOf(unknowns, x, jacobian, misses, weights).r });
}

/** Of the readings alone. */
export function informationOf(unknowns: readonly Unknown[], { jacobian, misses }: Linear, weights: Float64Array): Singular {
  const open = unknowns.map((unknown) => ({ ...unknown, prior: undefined }));
  return singularOf({ n: unknowns.length, r: stackOf(open, new Float64Array(unknowns.length), jacobian, misses, weights).r });
}

/** Size of a singular value that is nothing but the rounding of derivatives. */
export function leastOf({ values }: Singular): number {
  return Math.max(ROUNDING * (values[0] ?? 0), NOTHING);
}

/** Of the greatest. */
const ROUNDING = 1e-7;
/** Noises a scale: where the greatest itself is no more than rounding, it tells nothing either. */
const NOTHING = 1e-6;

/** Of a step, in standard deviations. */
export function lengthIn({ values, directions }: Singular, step: Float64Array): number {
  let square = 0;
  directions.forEach((direction, k) => {
    let along = 0;
    for (let i = 0; i < step.length; i++) along += direction[i]! * step[i]!;
    square += (along * values[k]!) ** 2;
  });
  return Math.sqrt(square);
}
