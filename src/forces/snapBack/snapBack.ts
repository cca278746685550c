/**
 * Snap-back: the foot comes off at once, and springs bring the linkage back against its inertia and its friction. How long until every
 * plate is closed and stays so, how fast it meets its stop, and how often it leaves it again.
 *
 * A part can be lost in the same instant (`without`), or a cable seize (`seized`): the linkage is then taken as it stood with the part,
 * and goes on without it.
 */
import type { Build } from '../../kinematics/build.ts';
import type { Assumption } from './assumed.ts';
import { snapBackByPlanck } from './byPlanck.ts';
import { solveMotion } from './solveMotion.ts';

export interface SnapBackOptions {
  /** Pedal travel at which the foot comes off, a fraction; 1 where absent. */
  readonly from?: number;
  /** Names of springs, rods, cables, slots and couplings that are lost as the foot comes off. Unknown names lose nothing. */
  readonly without?: readonly string[];
  /** Names of cables whose inner slides no more: it can hold, as far as it reached, and never moves. */
  readonly seized?: readonly string[];
  /** Speed after a stop over the speed before, 0 … 1; `RESTITUTION` where absent. */
  readonly restitution?: number;
  /** The equation of motion where absent; planck is a second way, slower and only for planar linkages. */
  readonly method?: 'equation-of-motion' | 'planck';
  /** Longest step, s; each method has its own where absent. */
  readonly step?: number;
  /** Error that a step of the equation of motion may have, rad, and relative to speeds; 1e-8 where absent. Looser is faster. */
  readonly tolerance?: number;
  /** How long it is followed, s; `HORIZON` where absent. */
  readonly horizon?: number;
}

/** Why plates do not come closed, as far as that was followed. */
export type WhyNever =
  /** It stands still away from its stop: friction holds it, or what it hangs on. */
  | 'sticks'
  /** A part that holds it moves no more, or can be assembled no further. */
  | 'jams'
  /** It still moves, or opens again, when the time followed is over. */
  | 'still-moving';

export interface PlateReturn {
  /** Of the set of plates. */
  readonly name: string;
  /** Index of its lever. */
  readonly lever: number;
  /** s after the foot came off from which on it is within `band` of closed; 0 where it was from the first. Undefined where it never is. */
  readonly time: number | undefined;
  /** Set where `time` is undefined. */
  readonly why: WhyNever | undefined;
  /** Opening at the end of what was followed, rad. */
  readonly opening: number;
  /** How near to its closed stop counts as closed, rad: 1 % of its full opening. */
  readonly band: number;
  /** Speed at which it first met its closed stop, rad/s, positive; undefined where it never did. */
  readonly stopSpeed: number | undefined;
  /** How often it left its closed stop again. */
  readonly bounces: number;
}

/** Where the springs' work went, J. The springs gave out what the rest took, but for `residual`. */
export interface EnergyBalance {
  /** That the springs and stretched cables gave out. */
  readonly springs: number;
  /** Still moving at the end. */
  readonly kinetic: number;
  readonly friction: number;
  /** At stops. */
  readonly stops: number;
  /** As cables and free play came tight. */
  readonly jerks: number;
  /** springs − kinetic − friction − stops − jerks: what the computation lost or made. */
  readonly residual: number;
}

/** For playing it in slow motion: how all levers stood, moment by moment. */
export interface Trace {
  /** s after the foot came off, rising; the first is 0. */
  readonly times: Float64Array;
  /** Rotation of each lever since drawn, rad, by lever index, one figure a time. */
  readonly rotations: readonly Float64Array[];
}

export interface SnapBack {
  readonly method: 'equation-of-motion' | 'planck';
  /** In the order of the file; empty where there are none. */
  readonly plates: readonly PlateReturn[];
  /** The last of the plates' times, s; undefined where one never comes closed, and where there are no plates. */
  readonly time: number | undefined;
  /** Of all plates. */
  readonly bounces: number;
  /** The fastest of the plates', rad/s; undefined where none met its stop. */
  readonly stopSpeed: number | undefined;
  readonly energy: EnergyBalance;
  /** What the figures rest on that is not in the file. */
  readonly assumed: readonly Assumption[];
  readonly trace: Trace;
  /** s that were followed. */
  readonly followed: number;
}

/** A snap-back that could not be computed. */
export interface NotComputed {
  readonly method: undefined;
  /** E.g. `the linkage cannot be assembled at 80 % of the pedal`. */
  readonly reason: string;
}

/** @param build with its open stops settled, as that of a `Travel` is; without a lost part: that is told by `options` */
export function snapBack(build: Build, options: SnapBackOptions = {}): SnapBack | NotComputed {
  if (options.method === 'planck') return snapBackByPlanck(build, options);
  const steps = solveMotion(build, options);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/** The same by the equation of motion, followed a little further from one step to the next. */
export function snapBackInPieces(build: Build, options: Omit<SnapBackOptions, 'method'> = {}): Generator<void, SnapBack | NotComputed> {
  return solveMotion(build, options);
}
