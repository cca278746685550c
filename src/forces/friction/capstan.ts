/**
 * An inner cable in a bent housing, by the capstan equation (Euler, Eytelwein):
 *     T₂ = T₁ exp(μ θ)
 * T₂ is the tension at the end towards which the cable moves, θ the sum of all bends whatever their way. Without friction between them the
 * tensions are the same.
 */

/** T₂/T₁. @param bend θ, rad */
export function capstanRatio(coefficient: number, bend: number): number {
  return Math.exp(coefficient * bend);
}
