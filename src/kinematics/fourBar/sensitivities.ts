/**
 * What small errors of the links do to the output angle of a planar four-bar.
 *
 * From the loop equation, differentiated by every dimension at once (our derivation; the linear-sensitivity method itself is
 * standard, e.g. Hartenberg and Denavit, Kinematic Synthesis of Linkages, from memory):
 *   dθ4 = [−cos(θ2−θ3)·da − db + cos(θ4−θ3)·dc + cos θ3·dd + a·sin(θ2−θ3)·dθ2] / (c·sin(θ4−θ3))
 * The denominator holds the sine of the transmission angle: near a toggle every error grows without bound.
 */
import type { FourBar } from './fourBar.ts';
import { TOGGLE_SINE } from './position.ts';
import type { Position } from './position.ts';

/** Rise of θ4, radians, per unit of length and, for `theta2`, per radian. */
export interface Sensitivities {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly theta2: number;
}

/** How far each dimension may be off either way; what is left out is exact. */
export type Tolerances = Partial<Sensitivities>;

export interface ToleranceStack {
  /** All errors at their limits and in the worst directions, to first order; radians. */
  readonly worstCase: number;
  /** Root of the sum of squares: errors independent and normal, each tolerance as many standard deviations as the result; radians. */
  readonly rootSumSquare: number;
}

/** `undefined` at a toggle of the input. */
export function outputSensitivities({ a, c }: FourBar, { theta2, theta3, theta4 }: Position): Sensitivities | undefined {
  const sine = Math.sin(theta4 - theta3);
  if (!(Math.abs(sine) > TOGGLE_SINE) || c === 0) return undefined;
  const scale = 1 / (c * sine);
  return {
    a: -Math.cos(theta2 - theta3) * scale,
    b: -scale,
    c: Math.cos(theta4 - theta3) * scale,
    d: Math.cos(theta3) * scale,
    theta2: a * Math.sin(theta2 - theta3) * scale,
  };
}

export function stackTolerances(sensitivities: Sensitivities, tolerances: Tolerances): ToleranceStack {
  let worstCase = 0;
  let squares = 0;
  for (const name of DIMENSIONS) {
    const share = Math.abs(sensitivities[name] * (tolerances[name] ?? 0));
    worstCase += share;
    squares += share * share;
  }
  return { worstCase, rootSumSquare: Math.sqrt(squares) };
}

const DIMENSIONS = ['a', 'b', 'c', 'd', 'theta2'] as const;
