/**
 * Hooks of extension springs: where most of them break.
 *
 *     bent, in the loop            σ = F ((K)_A 16 D / (π d³) + 4 / (π d²)), (K)_A = Kᵢ of C₁ = 2 r₁ / d
 *     twisted, where it leaves     τ = (K)_B 8 F D / (π d³),                 C₂ = 2 r₂ / d
 *
 * r₁ is the mean radius of the loop, taken as that of the coil (a full hook); r₂ that of the bend between coil and hook. Shigley’s Mechanical
 * Engineering Design, chapter 10, from memory. All SI.
 */
import { hookTwistFactor, innerBendingFactor } from './factors.ts';
import { plainShear } from './helical.ts';
import type { Coil } from './torsion.ts';

/** Pa for each N. @param loop mean radius of the loop, m */
export function hookBending({ diameter, meanCoil }: Coil, loop = meanCoil / 2): number {
  const factor = innerBendingFactor((2 * loop) / diameter);
  return (factor * 16 * meanCoil) / (Math.PI * diameter ** 3) + 4 / (Math.PI * diameter ** 2);
}

/** Pa for each N. @param bend mean radius of the bend, m */
export function hookTwist(coil: Coil, bend: number): number {
  return hookTwistFactor((2 * bend) / coil.diameter) * plainShear(coil);
}
