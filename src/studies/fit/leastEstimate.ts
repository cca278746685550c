/**
 * The least of the sums that lie to either side of a kink.
 *
 * Where a lever just leaves its stop, or a cable just comes taut, a reading changes with the dimensions to one side and stands still to the
 * other, so that the sum can have a least to each side, or one on the kink itself. So from an estimate each direction is gone along by some
 * standard deviations both ways; where a reading there is not what its slope says, a kink is near. What the other readings say by themselves
 * is where the least is, or leads to it from the other side: it is started again from there.
 */
import { estimate, leastOf, lengthIn, posteriorOf, valuesOf, type Estimate, type Problem } from './estimate.ts';

/** As `estimate`; the car stands as found after it. */
export function* leastEstimate(problem: Problem, start: Float64Array, weights: Float64Array): Generator<undefined, Estimate | undefined> {
  let best = yield* estimate(problem, start, weights);
  for (let round = 0; best !== undefined && round < MOST_ROUNDS; round++) {
    const kinked = yield* kinkedReadings(problem, best, weights);
    if (kinked.size === 0) break;
    const others = yield* estimate(
      problem,
      best.x,
      weights.map((weight, i) => (kinked.has(i) ? 0 : weight)),
    );
    const again: Estimate | undefined = others && (yield* estimate(problem, others.x, weights));
    if (again === undefined) break;
    const fall: number = sumOf(problem, best, weights) - sumOf(problem, again, weights);
    // From either side to the same place, where slopes of both sides lead no lower: the least is on the kink itself.
    const isOnKink: boolean = others!.settled && Math.abs(fall) < SAME_SUM && distance(problem, best, again, weights) < SAME_PLACE;
    if (fall > 0) best = again;
    if (isOnKink) best = { ...best, settled: true };
    if (!(fall > LEAST_FALL)) break;
  }
  if (best !== undefined) putEstimate(problem, best);
  return best;
}

/** So that the car, with its travels, stands as an estimate has it. */
export function putEstimate({ car }: Problem, { values, fitted }: Estimate): void {
  car.put(values);
  car.read(new Float64Array(fitted.length));
}

const MOST_ROUNDS = 3;
/** Of the sum: less moves no figure by a tenth of its standard error. */
const LEAST_FALL = 0.01;

const SAME_SUM = 1e-3;
/** Standard deviations. */
const SAME_PLACE = 0.1;

/** In standard deviations. */
function distance({ unknowns }: Problem, from: Estimate, to: Estimate, weights: Float64Array): number {
  return lengthIn(
    posteriorOf(unknowns, from, weights),
    to.x.map((value, j) => value - from.x[j]!),
  );
}

/** What is made least. */
export function sumOf({ unknowns }: Problem, { x, misses }: Estimate, weights: Float64Array): number {
  const known = unknowns.reduce((sum, { prior }, j) => sum + (prior === undefined ? 0 : x[j]! ** 2), 0);
  return misses.reduce((sum, miss, i) => sum + (weights[i]! > 0 ? miss * miss : 0), known);
}

/** Readings that count and near by do not change as their slopes say. */
function* kinkedReadings(
  { car, unknowns, targets }: Problem,
  at: Estimate,
  weights: Float64Array,
): Generator<undefined, ReadonlySet<number>> {
  const n = unknowns.length;
  const posterior = posteriorOf(unknowns, at, weights);
  const least = leastOf(posterior);
  const read = new Float64Array(targets.length);
  const found = new Set<number>();
  for (const [k, direction] of posterior.directions.entries()) {
    const size = posterior.values[k]!;
    if (!(size > least)) continue;
    for (const way of [REACH / size, -REACH / size]) {
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
        if (most > SEEN && !(Math.abs(change - wanted) < KINKED * most)) found.add(i);
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
