/** An answer that falls short of a demand, brought nearer to keeping all of them by least squares over the curve and the demands together. */
import { differences } from '../../numeric/differences.ts';
import { leastSquares, type Bounds, type LeastSquares, type Patience } from '../../numeric/leastSquares.ts';
import type { Court } from './answers.ts';
import { judge } from './demands.ts';
import { errorShortfall } from './news.ts';

/**
 * Towards keeping all demands, without errors that the file as it stands does not have, while following the curve; undefined where it comes
 * no nearer. Yields after each file that is solved.
 * @param bounds where some dimensions are held
 * @param firmly until all is kept, with a little to spare, whatever the curve
 */
export function* mend(
  { trial, demands, solveWith, standing }: Court,
  start: Float64Array,
  bounds?: Bounds,
  firmly = false,
): Generator<undefined, Float64Array | undefined> {
  const curve = trial.problem(trial.ownWeights);
  const count = curve.count + demands.length + 1;
  const weigh = (shortfall: number): number => {
    if (Number.isNaN(shortfall)) return DEMAND_WEIGHT;
    return DEMAND_WEIGHT * (firmly && shortfall > 0 ? shortfall + TO_SPARE : shortfall);
  };
  // A curve that is far off would outweigh what is left of a demand.
  let curveWeight = CURVE_WEIGHT;
  const evaluate = (x: Float64Array, into: Float64Array): boolean => {
    if (!curve.evaluate(x, into.subarray(0, curve.count))) return false;
    const answered = solveWith([...trial.valuesAt(x)]);
    judge(answered, demands).forEach(({ shortfall }, i) => {
      into[curve.count + i] = weigh(shortfall);
    });
    into[count - 1] = weigh(errorShortfall(answered, standing));
    if (firmly) for (let i = 0; i < trial.stations.length; i++) into[i]! *= curveWeight;
    return true;
  };
  const { from, to } = bounds ?? curve;
  const problem: LeastSquares = {
    count,
    from,
    to,
    evaluate,
    differentiate: (x, residuals, jacobian) => differences(evaluate, x, residuals, { from, to, step: MEND_DIFFERENCE }, jacobian),
  };
  const residuals = new Float64Array(count);
  if (curve.evaluate(start, residuals.subarray(0, curve.count))) {
    curveWeight /= Math.max(1, Math.sqrt(squares(residuals.subarray(0, trial.stations.length))));
  }
  const before = evaluate(start, residuals) ? squares(residuals) : Infinity;
  yield undefined;
  const found = yield* leastSquares(problem, start, firmly ? FIRM : MENDING);
  return found !== undefined && 2 * found.cost < before ? found.x : undefined;
}

const MENDING: Patience = { steps: 8, enough: 1e-12, still: 1e-6 };
const FIRM: Patience = { ...MENDING, steps: 24 };
/** A demand missed by its whole limit weighs as much as three heights of the curve. */
const DEMAND_WEIGHT = 3;
/** Where demands come first; of a curve that is no more than its height off. */
const CURVE_WEIGHT = 0.003;
/** In parts of the limit: what is aimed at beyond it, since a step to the very limit may end short of it. */
const TO_SPARE = 0.003;
/** Of the bounds; findings have edges, which a finer difference would not see past. */
const MEND_DIFFERENCE = 1e-4;

const squares = (values: Float64Array): number => values.reduce((sum, each) => sum + each * each, 0);
