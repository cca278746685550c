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

/**
 * All that the steps allow, where that is little enough to be looked at one by one: the nearest to the curve, best first; what has no steps
 * goes to its least squares from where it stands. Empty where nothing has steps or they allow too much. Yields as it goes.
 */
export function* onAllSteps(trial: Trial, start: Float64Array): Generator<undefined, readonly Found[]> {
  const { free } = trial.case;
  const counts = free.map(({ from, to, step }) => (step === undefined ? 1 : Math.floor((to - from) / step + STEP_SLOP) + 1));
  const total = counts.reduce((product, count) => product * count, 1);
  if (free.every(({ step }) => step === undefined) || total > MOST_COMBINATIONS) return [];
  const problem = trial.problem(trial.ownWeights);
  const residuals = new Float64Array(problem.count);
  const looked: { readonly x: Float64Array; readonly cost: number }[] = [];
  for (let number = 0; number < total; number++) {
    let left = number;
    const x = start.map((value, i) => {
      const { from, to, step } = free[i]!;
      if (step === undefined) return value;
      const at = left % counts[i]!;
      left = Math.floor(left / counts[i]!);
      return (at * step) / (to - from);
    });
    if (problem.evaluate(x, residuals)) looked.push({ x, cost: residuals.reduce((sum, each) => sum + each * each, 0) });
    if (number % PIECE === PIECE - 1) yield undefined;
  }
  const found: Found[] = [];
  for (const { x } of looked.sort((a, b) => a.cost - b.cost).slice(0, SETTLED)) {
    const met = free.every(({ step }) => step !== undefined)
      ? undefined
      : yield* leastSquares({ ...problem, ...heldOn(free, x) }, x, AFTER_STEP);
    const each = measure(trial, met?.x ?? x);
    if (Number.isFinite(each.error)) found.push(each);
    yield undefined;
  }
  return found.sort((a, b) => (isBetter(a, b) ? -1 : isBetter(b, a) ? 1 : 0));
}

/** A look takes some tenths of a millisecond. */
const MOST_COMBINATIONS = 2000;
/** Looks between two yields. */
const PIECE = 16;
/** Of all, by their sums of squares. */
const SETTLED = 24;

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
