/** How a linkage stands and moves while its equation of motion is followed, and what that is followed with. */
import type { Dynamics } from './dynamics.ts';
import type { GapState } from './gaps.ts';
import type { Knock } from './impact.ts';
import type { ModeSolver } from './mode.ts';
import type { PlateTimes } from './plateTimes.ts';

export interface Motion {
  readonly dynamics: Dynamics;
  readonly solver: ModeSolver;
  readonly plates: PlateTimes;
  /** Speed after a stop over the speed before. */
  readonly restitution: number;
  /** By body: coordinate and speed of the last event, and inertia. */
  readonly q: Float64Array;
  readonly v: Float64Array;
  readonly masses: Float64Array;
  /** Coordinates, then speeds of the bodies, and last what friction has taken, J. */
  readonly y: Float64Array;
  /** By gap: that it overlaps because a cable is stretched; it pulls as a spring then and does not press. */
  readonly overlaps: boolean[];
  readonly knocked: Knock;
  /** Fastest of the bodies so far, rad/s or m/s. */
  fastest: number;
  /** Whether the mode agrees with itself; where it does not, it is decided anew after each step. */
  agrees: boolean;
}

/** Puts the bodies where a vector such as `y` has them. @returns false where they cannot be assembled, or a spring is not known */
export function placeAt({ dynamics }: Motion, at: Float64Array): boolean {
  const { count } = dynamics.bodies;
  return dynamics.place(at.subarray(0, count), at.subarray(count, 2 * count));
}

/** m or rad; a gap this small is shut. */
export const SHUT = 1e-9;
/** Relative to the fastest so far: slower is standing. */
export const STILL = 1e-7;

export function createGapState(): GapState {
  return { g: 0, rate: 0, change: 0 };
}
