/**
 * Tolerances that the readings contradict. A tolerance pulls what it holds towards its middle, and all else that goes with it; so each is
 * held against the readings by how much the whole sum falls without it. With C the variance that is left of a dimension, counted in its
 * deviation, that is x² / (1 − C), to first order; where all is as file and noise say it has the law of chi², one degree of freedom.
 */
import { covarianceOf } from '../../numeric/singularValues.ts';
import { leastOf, posteriorOf, type Problem } from './estimate.ts';
import { leastEstimate, sumOf } from './leastEstimate.ts';
import { progress, type FitProgress } from './progress.ts';
import { saying } from '../saying.ts';
import type { Found } from './robust.ts';
import { openScale } from './unknowns.ts';

export interface WithoutContradicted {
  /** The unknowns of contradicted tolerances have none. */
  readonly problem: Problem;
  readonly found: Found;
}

/** The worst is dropped first, and only where an estimate without it bears it out. Yields as it goes. */
export function* withoutContradicted(problem: Problem, found: Found): Generator<FitProgress, WithoutContradicted> {
  let now: WithoutContradicted = { problem, found };
  const told = (): FitProgress => progress(2, 'tolerances held against the readings');
  for (let round = 0; round < problem.unknowns.length; round++) {
    const worst = worstOf(now);
    if (worst === undefined) break;
    const unknowns = now.problem.unknowns.map((each, j) => (j === worst ? { ...each, prior: undefined, scale: openScale(each) } : each));
    const next: Problem = { ...now.problem, unknowns };
    // From where it was: of the others each is counted as before.
    const { at, weights } = now.found;
    const start = at.x.map((x, j) => (j === worst ? (at.values[j]! - unknowns[j]!.nominal) / unknowns[j]!.scale : x));
    const without = yield* saying(leastEstimate(next, start, weights), told);
    if (without === undefined || !(sumOf(now.problem, at, weights) - sumOf(next, without, weights) > FALL)) break;
    now = { problem: next, found: { at: without, weights } };
  }
  now.problem.car.put(now.found.at.values);
  now.problem.car.read(new Float64Array(now.found.at.fitted.length));
  return now;
}

/** Of the sum: three standard deviations. */
const FALL = 9;

/** Index of the unknown whose tolerance costs most; undefined where none costs too much. */
function worstOf({ problem: { unknowns }, found: { at, weights } }: WithoutContradicted): number | undefined {
  const posterior = posteriorOf(unknowns, at, weights);
  const covariance = covarianceOf(posterior, leastOf(posterior));
  let [worst, most]: [number | undefined, number] = [undefined, FALL];
  unknowns.forEach(({ prior }, j) => {
    const told = 1 - covariance[j * unknowns.length + j]!;
    if (prior === undefined || told < LEAST_TOLD) return;
    const fall = at.x[j]! ** 2 / told;
    // A part that is just at the end of its tolerance, within what the readings tell, is none that is beyond it.
    const alone = Math.abs(at.x[j]!) / told;
    const error = Math.sqrt((1 - told) / told);
    if (fall > most && (alone - error) * prior.deviation > prior.half) [worst, most] = [j, fall];
  });
  return worst;
}

/** Of a tolerance: less told, and what is left of its figure is rounding. */
const LEAST_TOLD = 1e-6;
