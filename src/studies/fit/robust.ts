/** The estimate by the readings that go with each other: again without those that do not, until these stay the same. */
import { saying } from '../saying.ts';
import { estimate, type Estimate, type Problem } from './estimate.ts';
import { leastEstimate, putEstimate } from './leastEstimate.ts';
import { farthest, screen, type Screening } from './outliers.ts';
import { progress, type FitProgress } from './progress.ts';
import type { Taken } from './taken.ts';

export interface Found {
  readonly at: Estimate;
  /** 1 for readings that count. */
  readonly weights: Float64Array;
}

/**
 * Readings that are off are looked for about the file's own figures first: a wild one drags least squares so far that from there it may not
 * be seen. Past a kink a good one may look wild from there; so what comes of that is held against what comes of all readings.
 * Yields as it goes. @returns why, where nothing can be found; a sentence without a full stop @param usable 0 for readings that never count
 */
export function* robustEstimate(
  problem: Problem,
  readings: readonly Taken[],
  usable: Float64Array,
): Generator<FitProgress, Found | string> {
  const { unknowns } = problem;
  const start = new Float64Array(unknowns.length);
  const screening: Screening = { columns: readings.map(({ of }) => of), usable };
  const beginning = (): FitProgress => progress(0, 'the dimensions');
  const about = yield* saying(estimate(problem, start, usable, 0), beginning);
  if (about === undefined) return NO_VALUE;
  const screened = yield* saying(screen(unknowns, about, screening), beginning);
  const found = yield* settledFrom(problem, screened, screening);
  if (screened.every((weight, i) => weight === usable[i])) return found ?? NO_VALUE;
  const other = yield* settledFrom(problem, usable, screening);
  if (found === undefined || other === undefined) return found ?? other ?? NO_VALUE;
  if (cappedCost(problem, other, usable) < cappedCost(problem, found, usable)) return other;
  putEstimate(problem, found.at);
  return found;
}

const NO_VALUE = 'With every dimension in the middle of its tolerance the linkage has no value where some readings were taken';

/** Estimates and looks for readings that are off by turns, until these are the same. Begun from the file's figures wherever some more are. */
function* settledFrom(problem: Problem, first: Float64Array, screening: Screening): Generator<FitProgress, Found | undefined> {
  const { unknowns } = problem;
  const start = new Float64Array(unknowns.length);
  const beginning = (): FitProgress => progress(0, 'the dimensions');
  const saidScreening = (): FitProgress => progress(1, 'without readings that are off');
  let weights = first;
  let at = yield* saying(leastEstimate(problem, start, weights), beginning);
  if (at === undefined) return undefined;
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    const next: Float64Array = yield* saying(screen(unknowns, at, screening), saidScreening);
    if (next.every((weight, i) => weight === weights[i])) break;
    const isLess = next.some((weight, i) => weight < weights[i]!);
    const again: Estimate | undefined = yield* saying(leastEstimate(problem, isLess ? start : at.x, next), saidScreening);
    if (again === undefined) break;
    [weights, at] = [next, again];
  }
  return { at, weights };
}

const MOST_PASSES = 6;

/** The sum that is made least, with no reading further off than counts as off at all. */
function cappedCost({ unknowns }: Problem, { at: { x, misses } }: Found, usable: Float64Array): number {
  const most = farthest(usable.reduce((sum, each) => sum + each, 0)) ** 2;
  const known = unknowns.reduce((sum, { prior }, j) => sum + (prior === undefined ? 0 : x[j]! ** 2), 0);
  return misses.reduce((sum, miss, i) => sum + (usable[i]! > 0 ? Math.min(miss * miss, most) : 0), known);
}
