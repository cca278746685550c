/**
 * Torsion springs of round wire: the wire is bent.
 *
 *     rate per radian     k = E d⁴ / (64 D n)
 *     bending stress      σ = Kᵢ 32 M / (π d³), at the inside of the coil
 *     coil as it winds    D′ = D n / (n + θ / 2π): the wire keeps its length and makes more turns
 *
 * The rate is that of the theory, which EN 13906-3 has too (from memory). Practice often takes 10.8 in place of the 64 / 2π = 10.19 of a whole
 * turn, for the friction between turns (Shigley’s Mechanical Engineering Design, chapter 10, from memory): 6 % less. All SI.
 */
import { innerBendingFactor } from './factors.ts';

/** Round wire, coiled. m; the turns are those that give way. */
export interface Coil {
  readonly diameter: number;
  readonly meanCoil: number;
  readonly activeTurns: number;
}

/** N·m/rad. @param modulus of elasticity, Pa */
export function torsionRate({ diameter, meanCoil, activeTurns }: Coil, modulus: number): number {
  return (modulus * diameter ** 4) / (64 * meanCoil * activeTurns);
}

/** What practice takes of the rate of the theory, as a share. */
export const PRACTICE_SHARE = 64 / (2 * Math.PI) / 10.8;

/** Pa for each N·m. */
export function coilBending({ diameter, meanCoil }: Coil): number {
  return (innerBendingFactor(meanCoil / diameter) * 32) / (Math.PI * diameter ** 3);
}

/** Inside diameter of the coil, m, wound up by an angle (rad, negative where it is unwound) from free. */
export function woundInside({ diameter, meanCoil, activeTurns }: Coil, twist: number): number {
  return (meanCoil * activeTurns) / (activeTurns + twist / (2 * Math.PI)) - diameter;
}
