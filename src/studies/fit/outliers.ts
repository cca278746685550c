/**
 * Readings that do not go with the others.
 *
 * With h the leverage of a reading and t = miss / √(1 − h) its standardised miss, t² is by how much the sum of squares falls without it,
 * so of one wrong reading its own t is the greatest, however it drags the fit. Several together can hide each other; so it is begun from
 * a fit that no few of them can drag, least absolute misses first and the bisquare of J. W. Tukey from there (Technometrics 16 (1974)
 * 147; both from memory), all readings far off that are taken out, and those that go with the rest after all are taken back, one
 * by one. All of this linear, about the estimate. Where many of one column are off, it is not single readings that are wrong: none of it is
 * left out then.
 *
 * How far off is too far: as far as one of so many readings lies with a chance of one in a hundred, where all are as their noise says,
 * by the bound 2 φ(z)/z of the normal law's tails; times the scatter of the column itself where that is greater.
 */
import { solveLinear } from '../../numeric/linearSystem.ts';
import type { Estimate } from './estimate.ts';
import type { Unknown } from './unknowns.ts';

export interface Screening {
  /** Index of the column of each reading: columns have a scatter of their own. */
  readonly columns: readonly number[];
  /** 0 for readings that never count. */
  readonly usable: Float64Array;
}

/** Of many readings, in noises. */
export function farthest(count: number): number {
  let z = 3;
  for (let i = 0; i < 30; i++) z = Math.sqrt(2 * Math.log((Math.sqrt(2 / Math.PI) * Math.max(count, 1)) / (CHANCE * z)));
  return z;
}

/** Of accusing any reading at all, where none is wrong. */
const CHANCE = 0.01;

/** 1 for the readings that count, 0 for those that are too far off, and for those that never count. Where too many are off, none is accused. Yields as it goes. */
export function* screen(unknowns: readonly Unknown[], of: Estimate, screening: Screening): Generator<undefined, Float64Array> {
  const model = modelOf(unknowns, of);
  const weights = Float64Array.from(screening.usable);
  const count = weights.reduce((sum, each) => sum + each, 0);
  // Without more readings than unknowns that nothing else tells there is nothing to hold a reading against.
  const open = unknowns.filter(({ prior }) => prior === undefined).length;
  if (count <= open + 1) return weights;
  const robust = yield* robustSteps(model, screening);
  const scatter = scattersOf(model, robust, screening);
  const limit = farthest(count);
  const far = (i: number, miss: number): boolean => Math.abs(miss) > limit * scatter[screening.columns[i]!]!;
  const missAt = (i: number, step: Float64Array): number => model.misses[i]! + dot(model, i, step);
  for (let i = 0; i < model.m; i++) if (weights[i]! > 0 && far(i, missAt(i, robust))) weights[i] = 0;
  const most = Math.floor(count * MOST_OUT);
  const outOf = (column: number): number =>
    screening.columns.reduce((sum, each, i) => sum + (each === column && screening.usable[i]! > weights[i]! ? 1 : 0), 0);
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    yield undefined;
    const { step, covariance } = solve(model, weights);
    let [worst, worstBy] = [-1, 1];
    let [best, bestBy] = [-1, 1];
    let out = 0;
    for (let i = 0; i < model.m; i++) {
      if (!(screening.usable[i]! > 0)) continue;
      const spread = spreadOf(model, i, covariance);
      const isIn = weights[i]! > 0;
      // Of one that is left out, the fit's own spread comes on top of its noise.
      const scale = isIn ? Math.sqrt(Math.max(0, 1 - spread)) : Math.sqrt(1 + spread);
      if (!isIn) out++;
      // One that alone tells something cannot be held against anything.
      if (isIn && 1 - spread < ALONE) continue;
      const by = Math.abs(missAt(i, step)) / scale / (limit * scatter[screening.columns[i]!]!);
      if (isIn && by > worstBy) [worst, worstBy] = [i, by];
      if (!isIn && by < bestBy) [best, bestBy] = [i, by];
    }
    if (best >= 0) weights[best] = 1;
    else if (worst >= 0 && out < most) weights[worst] = 0;
    else break;
  }
  const left = weights.reduce((sum, each) => sum + each, 0);
  if (count - left > Math.max(1, most)) return Float64Array.from(screening.usable);
  const whole = new Set(
    [...new Set(screening.columns)].filter((column) => {
      const own = screening.columns.reduce((sum, each, i) => sum + (each === column ? screening.usable[i]! : 0), 0);
      return outOf(column) > Math.max(1, Math.floor(own * MOST_OUT));
    }),
  );
  return weights.map((weight, i) => (whole.has(screening.columns[i]!) ? screening.usable[i]! : weight));
}

/** Of the readings, and of those of a column; where more are off it is not single readings that are wrong. */
const MOST_OUT = 0.3;
const MOST_PASSES = 400;
/** 1 − leverage; what is left of such a reading's miss is rounding. */
export const ALONE = 0.01;

interface Model {
  readonly m: number;
  readonly n: number;
  readonly jacobian: Float64Array;
  readonly misses: Float64Array;
  readonly x: Float64Array;
  /** 1 for an unknown that has a tolerance. */
  readonly known: Float64Array;
}

function modelOf(unknowns: readonly Unknown[], { x, jacobian, misses }: Estimate): Model {
  const known = Float64Array.from(unknowns, ({ prior }) => (prior === undefined ? 0 : 1));
  return { m: misses.length, n: unknowns.length, jacobian, misses, x, known };
}

function dot({ n, jacobian }: Model, i: number, step: Float64Array): number {
  let sum = 0;
  for (let j = 0; j < n; j++) sum += jacobian[i * n + j]! * step[j]!;
  return sum;
}

function spreadOf({ n, jacobian }: Model, i: number, covariance: Float64Array): number {
  let sum = 0;
  for (let j = 0; j < n; j++) {
    for (let k = 0; k < n; k++) sum += jacobian[i * n + j]! * covariance[j * n + k]! * jacobian[i * n + k]!;
  }
  return sum;
}

/** The step to the least sum with the weights given, and the covariance of the unknowns. */
function solve(model: Model, weights: Float64Array): { readonly step: Float64Array; readonly covariance: Float64Array } {
  const { n } = model;
  const { squares, right } = normal(model, weights);
  const covariance = new Float64Array(n * n);
  const column = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    column.fill(0);
    column[j] = 1;
    solveLinear(Float64Array.from(squares), column, n);
    for (let k = 0; k < n; k++) covariance[k * n + j] = column[k]!;
  }
  solveLinear(squares, right, n);
  return { step: right, covariance };
}

function normal(
  { m, n, jacobian, misses, x, known }: Model,
  weights: Float64Array,
): { readonly squares: Float64Array; readonly right: Float64Array } {
  const squares = new Float64Array(n * n);
  const right = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    squares[j * n + j] = known[j]!;
    right[j] = -known[j]! * x[j]!;
  }
  for (let i = 0; i < m; i++) {
    const weight = weights[i]!;
    if (!(weight > 0)) continue;
    for (let j = 0; j < n; j++) {
      const rate = weight * jacobian[i * n + j]!;
      right[j] = right[j]! - rate * misses[i]!;
      for (let k = 0; k < n; k++) squares[j * n + k] = squares[j * n + k]! + rate * jacobian[i * n + k]!;
    }
  }
  return { squares, right };
}

/** A step from the estimate that no few readings can drag. */
function* robustSteps(model: Model, screening: Screening): Generator<undefined, Float64Array> {
  const weights = Float64Array.from(screening.usable);
  let step: Float64Array = new Float64Array(model.n);
  const again = (weigh: (i: number, miss: number) => number): void => {
    for (let i = 0; i < model.m; i++) {
      if (screening.usable[i]! > 0) weights[i] = weigh(i, Math.abs(model.misses[i]! + dot(model, i, step)));
    }
    const { squares, right } = normal(model, weights);
    solveLinear(squares, right, model.n);
    step = right;
  };
  for (let i = 0; i < ROBUST_STEPS; i++) {
    again((_, miss) => 1 / Math.max(miss, LEAST_MISS));
    yield undefined;
  }
  const scatter = scattersOf(model, step, screening);
  for (let i = 0; i < ROBUST_STEPS; i++) {
    again((j, miss) => {
      const share = miss / (BISQUARE * scatter[screening.columns[j]!]!);
      return share < 1 ? (1 - share * share) ** 2 : 0;
    });
    yield undefined;
  }
  return step;
}

const ROBUST_STEPS = 25;
/** In noises: nearer is near. */
const LEAST_MISS = 0.05;
/** As commonly taken: 95 % as good as least squares where nothing is wrong. */
const BISQUARE = 4.685;

/** Of each column in noises, 1 at least: by the median, which few wrong readings do not move. 1 where there are too few to tell. */
function scattersOf(model: Model, step: Float64Array, { columns, usable }: Screening): readonly number[] {
  // Of more readings than a call takes arguments.
  const count = columns.reduce((most, each) => Math.max(most, each), -1) + 1;
  const misses = Array.from({ length: count }, (): number[] => []);
  for (let i = 0; i < model.m; i++) if (usable[i]! > 0) misses[columns[i]!]!.push(Math.abs(model.misses[i]! + dot(model, i, step)));
  const total = misses.reduce((sum, each) => sum + each.length, 0);
  return misses.map((each) => {
    if (each.length < TELLING) return 1;
    // Unknowns take up some of the misses, each column's share of them.
    const left = 1 - Math.min(0.5, model.n / total);
    return Math.max(1, (MEDIAN * median(each)) / Math.sqrt(left));
  });
}

/** Readings of a column. */
const TELLING = 8;
/** From the median size to the standard deviation of a normal law. */
const MEDIAN = 1.4826;

function median(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
