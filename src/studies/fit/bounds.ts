/**
 * What the file format bounds: a slack, a radius and a friction are 0 or more. Readings of a car that has none of it want less as often as
 * more; where that is within what they tell, it is held at 0, and all else is found with that. Far below, readings or file are wrong.
 */
import { saying } from '../saying.ts';
import { covarianceOf } from '../../numeric/singularValues.ts';
import { leastOf, posteriorOf, startOf, type Problem } from './estimate.ts';
import { leastEstimate } from './leastEstimate.ts';
import { progress, type FitProgress } from './progress.ts';
import type { Found } from './robust.ts';

export interface Bounded {
  readonly found: Found;
  /** Indices of the unknowns that are held at 0. */
  readonly held: ReadonlySet<number>;
}

/** Yields as it goes. */
export function* withinBounds(problem: Problem, found: Found): Generator<FitProgress, Bounded> {
  const told = (): FitProgress => progress(2, 'what cannot be less than nothing');
  let now: Bounded = { found, held: new Set() };
  for (let round = 0; round < problem.unknowns.length; round++) {
    const below = belowNothing(problem, now);
    if (below.length === 0) break;
    const held = new Set([...now.held, ...below]);
    const { at, weights } = now.found;
    const start = at.x.map((x, j) => (held.has(j) ? -startOf(problem.unknowns[j]!) / problem.unknowns[j]!.scale : x));
    const next = yield* saying(leastEstimate({ ...problem, fixed: held }, start, weights), told);
    if (next === undefined) break;
    const values = next.values.map((value, j) => (held.has(j) ? 0 : value));
    now = { found: { at: { ...next, values }, weights }, held };
  }
  return now;
}

function belowNothing({ car: { mechanism }, unknowns }: Problem, { found: { at, weights }, held }: Bounded): readonly number[] {
  const below = unknowns.flatMap(({ index }, j) =>
    !held.has(j) && at.values[j]! < 0 && BOUNDED.test(mechanism.dimensions[index]!.path) ? [j] : [],
  );
  if (below.length === 0) return [];
  const posterior = posteriorOf(unknowns, at, weights);
  const covariance = covarianceOf(posterior, leastOf(posterior));
  return below.filter((j) => -at.values[j]! <= SURE * unknowns[j]!.scale * Math.sqrt(covariance[j * unknowns.length + j]!));
}

const BOUNDED = /\.(?:slack|radius|friction)$/;
/** Standard errors: as far below is told as what no car has. */
const SURE = 3;
