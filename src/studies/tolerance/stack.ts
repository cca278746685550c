/**
 * Tolerances added up: all against one at once (worst case), and as what is independent adds up (root of the sum of squares). Linear, from
 * the effects; and exactly, with every dimension at one of its ends, where these corners are few enough to go through.
 *
 * The root of the sum of squares stands for three standard deviations where each tolerance does.
 */
import type { Mechanism } from '../../kinematics/model.ts';
import { createGauge } from './gauge.ts';
import type { Outcome } from './outcomes.ts';
import { createPlacing } from './placing.ts';
import type { Effect } from './sensitivity.ts';
import type { Toleranced } from '../../kinematics/toleranced.ts';

/** How far off its middle an outcome comes, SI; NaN where an effect has no value. */
export interface Stack {
  /** Signed: how far down and how far up with everything against it. */
  readonly lowest: number;
  readonly highest: number;
  readonly rootSumSquare: number;
  /** Whether an effect has a kink: the root of the sum of squares then tells little, and random builds have to be looked at. */
  readonly kinked: boolean;
}

/** @param effects each dimension's once */
export function stackOf(effects: readonly Effect[]): Stack {
  let [lowest, highest] = [0, 0];
  for (const { growing, shrinking, of } of effects) {
    const [grown, shrunk] = [growing * of.half, -shrinking * of.half];
    lowest += Math.min(grown, shrunk, 0);
    highest += Math.max(grown, shrunk, 0);
  }
  const rootSumSquare = rootSumSquareOf(effects.map(({ swing }) => swing));
  return { lowest, highest, rootSumSquare, kinked: effects.some(({ kinked }) => kinked) };
}

export function rootSumSquareOf(swings: readonly number[]): number {
  return Math.sqrt(swings.reduce((sum, swing) => sum + swing * swing, 0));
}

/** Least and greatest of an outcome over all corners, SI; those corners are left out in which it has no value. */
export interface CornerRange {
  readonly least: number;
  readonly most: number;
  /** Corners in which it has no value. */
  readonly missing: number;
}

/** More dimensions have too many corners. */
export const MOST_CORNERED = 12;

/** How far a study has come. */
export interface Progress {
  readonly done: number;
  readonly of: number;
}

/**
 * Yields after each build.
 * @returns in the order of the outcomes; undefined with more than `MOST_CORNERED` dimensions. With no corner that has a value the least is
 * Infinity and the greatest −Infinity
 */
export function* corners(
  mechanism: Mechanism,
  outcomes: readonly Outcome[],
  toleranced: readonly Toleranced[],
): Generator<Progress, readonly CornerRange[] | undefined> {
  if (toleranced.length > MOST_CORNERED) return undefined;
  const { build, put } = createPlacing(mechanism, toleranced, true);
  const offsets = new Float64Array(toleranced.length);
  const gauge = createGauge(build, outcomes);
  const found = new Float64Array(outcomes.length);
  const ranges = outcomes.map(() => ({ least: Infinity, most: -Infinity, missing: 0 }));
  const count = 2 ** toleranced.length;
  for (let corner = 0; corner < count; corner++) {
    toleranced.forEach(({ half }, bit) => (offsets[bit] = corner & (1 << bit) ? half : -half));
    put(offsets);
    gauge.read(found);
    ranges.forEach((range, i) => {
      const value = found[i]!;
      if (Number.isNaN(value)) range.missing++;
      else {
        range.least = Math.min(range.least, value);
        range.most = Math.max(range.most, value);
      }
    });
    yield { done: corner + 1, of: count };
  }
  return ranges;
}
