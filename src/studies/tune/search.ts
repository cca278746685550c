/**
 * The search for free dimensions with which a column follows the wanted curve.
 *
 * In rounds: places drawn evenly within the bounds, and designs known beforehand, are looked at; from the best of them, and never twice
 * from nearly the same, least squares go to the nearest minimum. What is met is held against the curve everywhere, not at the stations
 * alone. The best are then drawn towards the least greatest error by the method of C. L. Lawson (thesis, UCLA, 1961, from memory):
 * the weights of least squares are multiplied by the errors left, again and again. The same seed gives the same answers.
 */
import { leastSquares, type Bounds, type Patience } from '../../numeric/leastSquares.ts';
import { randomOf } from '../../numeric/random.ts';
import { greatestOf, type Along } from '../../travel/extremes.ts';
import { saying } from '../saying.ts';
import type { Trial } from './trial.ts';
import type { Wanted } from './wanted.ts';

export interface Found extends Distance {
  /** Free dimensions in parts of their bounds. */
  readonly x: Float64Array;
  /** How far guarded angles are below their limits at the stations, rad in all. */
  readonly trespass: number;
}

export interface Effort {
  readonly seed: number;
  readonly rounds: number;
  /** SI: this near to the curve everywhere is as good as on it. */
  readonly enough: number;
  /** Distinct places this near that end the search. */
  readonly answers: number;
}

export interface Progress {
  readonly done: number;
  readonly of: number;
  /** The least error so far of one that keeps its angles, SI; undefined where none was met. */
  readonly best: number | undefined;
}

/**
 * Yields after each look at a place.
 * @param designs places to begin from, in parts of the bounds; the first is the file as it stands
 * @returns distinct places, best first; those that keep their angles before those that do not. Empty where nothing can be assembled
 */
export function* search(trial: Trial, designs: readonly Float64Array[], effort: Effort): Generator<Progress, readonly Found[]> {
  const n = trial.case.free.length;
  const random = randomOf(effort.seed, STREAM);
  const problem = trial.problem(trial.ownWeights);
  const residuals = new Float64Array(problem.count);
  const costAt = (x: Float64Array): number => {
    if (!problem.evaluate(x, residuals)) return Infinity;
    return residuals.reduce((sum, each) => sum + each * each, 0);
  };
  const standing = designs.slice(0, 1).map((x) => measure(trial, x));
  let pool = standing.reduce(withNew, []);
  const begun: Float64Array[] = [];
  const total = effort.rounds * DESCENTS;
  let done = 0;
  const said = (): Progress => ({ done, of: total, best: pool.find(({ trespass }) => trespass === 0)?.error });
  for (let round = 0; round < effort.rounds; round++) {
    const drawn = Array.from({ length: SAMPLES }, (_, i) => {
      return Float64Array.from({ length: n }, (__, j) => random.uniform(round * SAMPLES + i, j));
    });
    const places = round === 0 ? [...designs, ...drawn] : drawn;
    const looked: { readonly x: Float64Array; readonly cost: number }[] = [];
    for (const x of places) {
      looked.push({ x, cost: costAt(x) });
      yield said();
    }
    const ranked = looked.filter(({ cost }) => cost < Infinity).sort((a, b) => a.cost - b.cost);
    // What the file has now, and designs made for the curve, are always begun from.
    const known = round === 0 ? looked.slice(0, designs.length).flatMap(({ x, cost }) => (cost < Infinity ? [x] : [])) : [];
    const starts = [...known, ...ranked.map(({ x }) => x)];
    let descents = 0;
    for (const start of starts) {
      if (descents >= DESCENTS) break;
      if (begun.some((other) => distance(other, start) < APART)) continue;
      begun.push(start);
      descents++;
      const found = yield* saying(leastSquares(problem, start, COARSE), said);
      if (found !== undefined) pool = withNew(pool, measure(trial, found.x));
      done++;
      yield said();
    }
    if (isEnough(pool, effort)) break;
  }
  done = total;
  for (const each of trespassing(pool)) pool = withNew(pool, yield* saying(keepAngles(trial, each), said));
  const polished: Found[] = [];
  const first = pool.slice(0, POLISHED);
  // Least squares from the file as it stands may lead away from the least greatest error that is next to it.
  const finishes = isEnough(first, effort)
    ? first
    : [...first, ...standing.filter((each) => Number.isFinite(each.error) && !first.includes(each))];
  for (const each of finishes) polished.push(yield* saying(polish(trial, each, effort.enough), said));
  return [...polished, ...pool.slice(POLISHED)].reduce(withNew, []);
}

/** Those that would be better than the best that keeps its angles, the best first. */
function trespassing(pool: readonly Found[]): readonly Found[] {
  const kept = pool.find(({ trespass }) => trespass === 0)?.weighted ?? Infinity;
  return pool.filter(({ trespass, weighted }) => trespass > 0 && weighted < kept).slice(0, BROUGHT_BACK);
}

const BROUGHT_BACK = 6;

/** Where the curve and the angles are balanced, an angle ends a little below its limit: again with the angles weighed more, until they are kept. */
function* keepAngles(trial: Trial, found: Found): Generator<undefined, Found> {
  let at = found;
  for (const firmness of FIRMER) {
    const next = yield* leastSquares(trial.problem(trial.ownWeights, firmness), at.x, COARSE);
    if (next === undefined) break;
    at = measure(trial, next.x);
    if (at.trespass === 0) break;
  }
  return at;
}

const FIRMER: readonly number[] = [10, 100, 1000];

function isEnough(pool: readonly Found[], { enough, answers }: Effort): boolean {
  return pool.filter(({ error, trespass }) => trespass === 0 && error <= enough).length >= answers;
}

/** Keeps the draws of this search apart from those of others with the same seed. */
const STREAM = 1;
const SAMPLES = 256;
const DESCENTS = 12;
/** Parts of the bounds, greatest of all free dimensions: nearer together are one. */
export const APART = 0.02;
const COARSE: Patience = { steps: 60, enough: 1e-16, still: 1e-9 };
const POLISHED = 6;
const POOL = 24;

function distance(a: Float64Array, b: Float64Array): number {
  return a.reduce((most, value, i) => Math.max(most, Math.abs(value - b[i]!)), 0);
}

/** Best first, without what is nearly one that is better. */
function withNew(pool: readonly Found[], found: Found): readonly Found[] {
  if (!Number.isFinite(found.error)) return pool;
  const like = pool.find(({ x }) => distance(x, found.x) < APART);
  if (like !== undefined && !isBetter(found, like)) return pool;
  return [...pool.filter((each) => each !== like), found].sort((a, b) => (isBetter(a, b) ? -1 : isBetter(b, a) ? 1 : 0)).slice(0, POOL);
}

/** What keeps its angles goes before what does not. */
export function isBetter(a: Found, b: Found): boolean {
  if (a.trespass > 0 !== b.trespass > 0) return a.trespass === 0;
  return a.weighted < b.weighted;
}

/** Holds a place against the curve everywhere. */
export function measure(trial: Trial, x: Float64Array): Found {
  const { wanted } = trial.case;
  const travel = trial.travelAt(x);
  const distance = distanceOf(wanted, trial.stations, (at) => trial.errorAt(travel, at));
  const trespass = trial.trespassAt(x);
  return distance === undefined || !Number.isFinite(trespass)
    ? { x, error: NaN, at: NaN, weighted: NaN, trespass }
    : { x, ...distance, trespass };
}

export interface Distance {
  /** Greatest distance from the curve where it counts, whatever the weights there, SI, and where along the pedal. */
  readonly error: number;
  readonly at: number;
  /** Greatest distance times the curve's weight there, SI. */
  readonly weighted: number;
}

/** How far a column is off the curve over all of it; undefined where it has no value at a station. @param errorAt off the curve at a travel, SI */
export function distanceOf({ weight }: Wanted, stations: readonly number[], errorAt: Along): Distance | undefined {
  const off = (at: number): number => Math.abs(errorAt(at));
  if (!stations.every((at) => Number.isFinite(off(at)))) return undefined;
  const greatest = greatestOf((at) => (weight(at) > 0 ? off(at) : 0), stations);
  if (greatest === undefined) return undefined;
  const isEven = stations.every((at) => weight(at) === 1);
  const weighted = isEven ? greatest : greatestOf((at) => weight(at) * off(at), stations);
  return { error: greatest.value, at: greatest.travel, weighted: weighted?.value ?? greatest.value };
}

/** Towards the least greatest weighted error, as long as it gets less. @param bounds where some dimensions are held */
export function* polish(trial: Trial, found: Found, enough: number, bounds?: Bounds): Generator<undefined, Found> {
  let best = found;
  let weights = Float64Array.from(trial.ownWeights);
  let x = found.x;
  for (let i = 0; i < LAWSON_STEPS && best.error > enough * POINTLESS; i++) {
    const travel = trial.travelAt(x);
    const off = trial.stations.map((at, k) => trial.ownWeights[k]! * Math.abs(trial.errorAt(travel, at)));
    const mean = off.reduce((sum, each) => sum + each, 0) / off.length;
    if (!(mean > 0)) break;
    // Lawson's weights are of squares; residuals take their roots.
    weights = weights.map((weight, k) => weight * Math.sqrt(Math.max(off[k]! / mean, LEAST_SHARE)));
    const scale = Math.max(...weights);
    weights = weights.map((weight) => weight / scale);
    const next = yield* leastSquares({ ...trial.problem(weights), ...bounds }, x, FINE);
    if (next === undefined) break;
    x = next.x;
    const measured = measure(trial, x);
    if (isBetter(measured, best)) best = measured;
    yield undefined;
  }
  return best;
}

const LAWSON_STEPS = 25;
/** A station that is met exactly must be able to come back. */
const LEAST_SHARE = 1e-3;
const FINE: Patience = { steps: 12, enough: 0, still: 1e-10 };
/** Of what is enough: nearer than this no one can tell the difference. */
const POINTLESS = 0.1;
