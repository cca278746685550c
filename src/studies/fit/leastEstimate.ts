/**
 * The least of the sums that lie to either side of a kink.
 *
 * Where a lever just leaves its stop, or a cable just comes taut, a reading changes with the dimensions to one side and stands still to the
 * other, so that the sum can have a least to each side, or one on the kink itself. So from an estimate each direction is gone along by some
 * standard deviations both ways; where a reading there is not what its slope says, a kink is near. What the other readings say by themselves
 * is where the least is, or leads to it from the other side: it is started again from there.
 */
import { covarianceOf } from '../../numeric/singularValues.ts';
import { estimate, leastOf, lengthIn, posteriorOf, stepOf, valuesOf, type Estimate, type Problem } from './estimate.ts';

/** As `estimate`; the car stands as found after it. */
export function* leastEstimate(problem: Problem, start: Float64Array, weights: Float64Array): Generator<undefined, Estimate | undefined> {
  let best = yield* estimate(problem, start, weights);
  for (let round = 0; best !== undefined && round < MOST_ROUNDS; round++) {
    const kinked = yield* kinkedReadings(problem, best, weights, REACH);
    if (kinked.size === 0) break;
    const others = yield* estimate(
      problem,
      best.x,
      weights.map((weight, i) => (kinked.has(i) ? 0 : weight)),
    );
    const again: Estimate | undefined = others && (yield* estimate(problem, others.x, weights));
    if (again === undefined) break;
    const before = sumOf(problem, best, weights);
    if (sumOf(problem, again, weights) < before) best = again;
    if (!best.settled) best = yield* besideKink(problem, best, weights);
    if (!(before - sumOf(problem, best, weights) > LEAST_FALL)) break;
  }
  if (best !== undefined) putEstimate(problem, best);
  return best;
}

/**
 * Slopes of one side lead across a kink, where they do not hold; so it is started again well on either side of it. Where that leads no lower, and
 * neither does a step along it, with the readings at it held where they are, the least is on it. The estimate is as it was otherwise.
 */
function* besideKink(problem: Problem, from: Estimate, weights: Float64Array): Generator<undefined, Estimate> {
  const n = problem.unknowns.length;
  const at = yield* kinkedReadings(problem, from, weights, NEAR);
  if (at.size === 0) return from;
  const posterior = posteriorOf(problem.unknowns, from, weights);
  const covariance = covarianceOf(posterior, leastOf(posterior));
  let best = from;
  for (const slope of at.values()) {
    const across = slope.map((_, j) =>
      problem.fixed?.has(j) === true ? 0 : slope.reduce((sum, each, k) => sum + covariance[j * n + k]! * each, 0),
    );
    const size = lengthIn(posterior, across);
    if (!(size > 0)) continue;
    for (const way of [ACROSS / size, -ACROSS / size]) {
      const tried = yield* estimate(
        problem,
        from.x.map((value, j) => value + way * across[j]!),
        weights,
      );
      if (tried !== undefined && sumOf(problem, tried, weights) < sumOf(problem, best, weights)) best = tried;
    }
  }
  if (best.settled || sumOf(problem, from, weights) - sumOf(problem, best, weights) > SAME_SUM) return best;
  const [jacobian, misses] = [Float64Array.from(best.jacobian), Float64Array.from(best.misses)];
  for (const [i, slope] of at) {
    misses[i] = 0;
    for (let j = 0; j < n; j++) jacobian[i * n + j] = HELD * slope[j]!;
  }
  return stepOf(problem, { x: best.x, jacobian, misses }, weights).length <= SAME_PLACE ? { ...best, settled: true } : best;
}

/** Standard deviations: what counts as at a kink, and how far from it is well beside it. */
const NEAR = 0.05;
const ACROSS = 0.5;
/** Times as closely as by its noise. */
const HELD = 1e3;

/** So that the car, with its travels, stands as an estimate has it. */
export function putEstimate({ car }: Problem, { values, fitted }: Estimate): void {
  car.put(values);
  car.read(new Float64Array(fitted.length));
}

const MOST_ROUNDS = 3;
/** Of the sum: less moves no figure by a tenth of its standard error. */
const LEAST_FALL = 0.01;

/** Of the sum, and standard deviations: nearer is the same. */
const SAME_SUM = 1e-3;
const SAME_PLACE = 0.1;

/** What is made least. */
export function sumOf({ unknowns }: Problem, { x, misses }: Estimate, weights: Float64Array): number {
  const known = unknowns.reduce((sum, { prior }, j) => sum + (prior === undefined ? 0 : x[j]! ** 2), 0);
  return misses.reduce((sum, miss, i) => sum + (weights[i]! > 0 ? miss * miss : 0), known);
}

/** Readings that count and within a reach, in standard deviations, do not change as their slopes say; of each its slope over that reach. */
function* kinkedReadings(
  { car, unknowns, targets }: Problem,
  at: Estimate,
  weights: Float64Array,
  reach: number,
): Generator<undefined, ReadonlyMap<number, Float64Array>> {
  const n = unknowns.length;
  const posterior = posteriorOf(unknowns, at, weights);
  const least = leastOf(posterior);
  const read = new Float64Array(targets.length);
  const found = new Map<number, Float64Array>();
  const middles = Array.from(targets, () => new Float64Array(n));
  for (const [k, direction] of posterior.directions.entries()) {
    const size = posterior.values[k]!;
    if (!(size > least)) continue;
    for (const way of [reach / size, -reach / size]) {
      yield undefined;
      car.put(
        valuesOf(
          unknowns,
          at.x.map((value, j) => value + way * direction[j]!),
        ),
      );
      car.read(read);
      for (let i = 0; i < targets.length; i++) {
        if (!(weights[i]! > 0)) continue;
        let wanted = 0;
        for (let j = 0; j < n; j++) wanted += at.jacobian[i * n + j]! * way * direction[j]!;
        const change = (read[i]! - at.fitted[i]!) / targets[i]!.noise;
        const most = Math.max(Math.abs(wanted), Math.abs(change));
        // Half of each side's: so it leads across the kink, wherever it is looked from.
        for (let j = 0; j < n; j++) middles[i]![j]! += (change * direction[j]!) / (2 * way);
        if (most > SEEN * (reach / REACH) && !(Math.abs(change - wanted) < KINKED * most)) found.set(i, middles[i]!);
      }
    }
  }
  return found;
}

/** Standard deviations. */
const REACH = 6;
/** Noises. */
const SEEN = 0.5;
/** Of a change: curves alone make less of a difference. */
const KINKED = 0.3;
