/** An answer that falls short of a demand, brought nearer to keeping all of them by least squares over the curve and the demands together. */
import { differences } from '../../numeric/differences.ts';
import { leastSquares, type LeastSquares, type Patience } from '../../numeric/leastSquares.ts';
import type { SolveWith } from './answers.ts';
import { judge, type Demand } from './demands.ts';
import type { Trial } from './trial.ts';

/** Towards keeping all demands while following the curve; undefined where it comes no nearer. Yields after each file that is solved. */
export function* mend(
  trial: Trial,
  demands: readonly Demand[],
  solveWith: SolveWith,
  start: Float64Array,
): Generator<undefined, Float64Array | undefined> {
  const curve = trial.problem(trial.ownWeights);
  const count = curve.count + demands.length;
  const evaluate = (x: Float64Array, into: Float64Array): boolean => {
    if (!curve.evaluate(x, into.subarray(0, curve.count))) return false;
    judge(solveWith([...trial.valuesAt(x)]), demands).forEach(({ shortfall }, i) => {
      into[curve.count + i] = DEMAND_WEIGHT * (Number.isNaN(shortfall) ? 1 : shortfall);
    });
    return true;
  };
  const { from, to } = curve;
  const problem: LeastSquares = {
    count,
    from,
    to,
    evaluate,
    differentiate: (x, residuals, jacobian) => differences(evaluate, x, residuals, { from, to, step: MEND_DIFFERENCE }, jacobian),
  };
  const residuals = new Float64Array(count);
  const before = evaluate(start, residuals) ? squares(residuals) : Infinity;
  yield undefined;
  const found = yield* leastSquares(problem, start, MENDING);
  return found !== undefined && 2 * found.cost < before ? found.x : undefined;
}

const MENDING: Patience = { steps: 8, enough: 1e-12, still: 1e-6 };
/** A demand missed by its whole limit weighs as much as three heights of the curve. */
const DEMAND_WEIGHT = 3;
/** Of the bounds; findings have edges, which a finer difference would not see past. */
const MEND_DIFFERENCE = 1e-4;

const squares = (values: Float64Array): number => values.reduce((sum, each) => sum + each * each, 0);
