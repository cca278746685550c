/**
 * Extension and compression springs of round wire: the wire is twisted.
 *
 *     rate              R = G d⁴ / (8 D³ n)
 *     shear stress      τ = K_B 8 F D / (π d³), at the inside of the coil
 *     solid length      turns in all × d, turn on turn; with ends that are not ground one wire more
 *
 * EN 13906-1 and -2 have the same, from memory. All SI.
 */
import { coilTwistFactor } from './factors.ts';
import type { Coil } from './torsion.ts';

/** N/m. @param modulus of shear, Pa */
export function helicalRate({ diameter, meanCoil, activeTurns }: Coil, modulus: number): number {
  return (modulus * diameter ** 4) / (8 * meanCoil ** 3 * activeTurns);
}

/** Pa for each N. */
export function coilShear(coil: Coil): number {
  return coilTwistFactor(coil.meanCoil / coil.diameter) * plainShear(coil);
}

/** Pa for each N, the bend of the wire left out: how initial stress is told. */
export function plainShear({ diameter, meanCoil }: Coil): number {
  return (8 * meanCoil) / (Math.PI * diameter ** 3);
}

/** m, of a compression spring with ground ends. @param totalTurns with those at the ends */
export function solidLength({ diameter }: Coil, totalTurns: number): number {
  return diameter * totalTurns;
}
