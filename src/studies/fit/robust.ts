/** The estimate by the readings that go with each other: again without those that do not, until these stay the same. */
import { saying } from '../saying.ts';
import { estimate, type Estimate, type Problem } from './estimate.ts';
import { screen } from './outliers.ts';
import { progress, type FitProgress } from './progress.ts';
import type { Taken } from './taken.ts';

export interface Found {
  readonly at: Estimate;
  /** 1 for readings that count. */
  readonly weights: Float64Array;
}

/** Yields as it goes. @returns why, where nothing can be found; a sentence without a full stop @param usable 0 for readings that never count */
export function* robustEstimate(
  problem: Problem,
  readings: readonly Taken[],
  usable: Float64Array,
): Generator<FitProgress, Found | string> {
  const { unknowns } = problem;
  const beginning = (): FitProgress => progress(0, 'the dimensions');
  const screening = (): FitProgress => progress(1, 'without readings that are off');
  let weights = usable;
  let at = yield* saying(estimate(problem, new Float64Array(unknowns.length), weights), beginning);
  if (at === undefined)
    return 'With every dimension in the middle of its tolerance the linkage has no value where some readings were taken';
  const columns = readings.map(({ of }) => of);
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    const next: Float64Array = yield* saying(screen(unknowns, at, { columns, usable }), screening);
    if (next.every((weight, i) => weight === weights[i])) break;
    const again: Estimate | undefined = yield* saying(estimate(problem, at.x, next), screening);
    if (again === undefined) break;
    [weights, at] = [next, again];
  }
  return { at, weights };
}

const MOST_PASSES = 6;
