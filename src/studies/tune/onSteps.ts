/** Free values that have steps, brought onto them. */
import { leastSquares, type Bounds, type Patience } from '../../numeric/leastSquares.ts';
import { isBetter, measure, polish, type Found } from './search.ts';
import type { FreeDimension, Trial } from './trial.ts';

/**
 * With the values that have steps on one of them: first all to the nearest, then each to its neighbour as long as that is better; what has
 * none then goes to the least greatest error. Yields as it goes. @param enough as in `Effort`
 */
export function* stepped(trial: Trial, found: Found, enough: number): Generator<undefined, Found> {
  const { free } = trial.case;
  const chosen = free.flatMap(({ step }, i) => (step === undefined ? [] : [i]));
  if (chosen.length === 0) return found;
  const settle = function* (start: Float64Array): Generator<undefined, Found> {
    const problem = { ...trial.problem(trial.ownWeights), ...heldOn(free, start) };
    const met = chosen.length === free.length ? undefined : yield* leastSquares(problem, start, AFTER_STEP);
    yield undefined;
    return measure(trial, met?.x ?? start);
  };
  const onStep = (x: Float64Array, i: number, by: number): Float64Array => {
    const next = Float64Array.from(x);
    next[i] = stepNear(free[i]!, x[i]!, by);
    return next;
  };
  const x = snapped(trial, found.x);
  let best = yield* settle(x);
  for (let pass = 0; pass < STEP_PASSES; pass++) {
    const before = best;
    for (const i of chosen) {
      for (const by of [-1, 1]) {
        const next = yield* settle(onStep(best.x, i, by));
        if (!(best.weighted <= next.weighted) && next.trespass <= Math.max(0, best.trespass)) best = next;
      }
    }
    if (best === before) break;
  }
  const plain = measure(trial, x);
  if (isBetter(plain, best)) best = plain;
  return chosen.length === free.length ? best : yield* polish(trial, best, enough, heldOn(free, best.x));
}

/** The whole of the bounds, but for values that have steps: these are held where they stand. */
export function heldOn(free: readonly FreeDimension[], x: Float64Array): Bounds {
  return {
    from: x.map((value, i) => (free[i]!.step === undefined ? 0 : value)),
    to: x.map((value, i) => (free[i]!.step === undefined ? 1 : value)),
  };
}

/** With the values that have steps on the nearest of them, and nothing else changed. */
export function snapped({ case: { free } }: Trial, x: Float64Array): Float64Array {
  return x.map((value, i) => (free[i]!.step === undefined ? value : stepNear(free[i]!, value, 0)));
}

const AFTER_STEP: Patience = { steps: 20, enough: 1e-16, still: 1e-9 };
const STEP_PASSES = 6;

/** The step nearest to a share of the bounds, and so many further on; within the bounds. */
function stepNear({ from, to, step }: FreeDimension, x: number, by: number): number {
  const size = step! / (to - from);
  const most = Math.floor(1 / size + STEP_SLOP);
  return Math.min(most, Math.max(0, Math.round(x / size) + by)) * size;
}

/** Of a step: bounds that are a whole number of steps apart may miss by rounding. */
const STEP_SLOP = 1e-9;
