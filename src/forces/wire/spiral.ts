/**
 * Spiral springs of flat strip, both ends held against turning: the strip is bent alike all along.
 *
 *     rate per radian     k = E b t³ / (12 L)
 *     bending stress      σ = 6 M / (b t²)
 *
 * Bending of a straight strip by a moment; the curvature of its coils is left out, which counts where they are close. All SI.
 */

/** m; the length is that which bends. */
export interface FlatStrip {
  readonly width: number;
  readonly thickness: number;
  readonly length: number;
}

/** N·m/rad. @param modulus of elasticity, Pa */
export function spiralRate({ width, thickness, length }: FlatStrip, modulus: number): number {
  return (modulus * width * thickness ** 3) / (12 * length);
}

/** Pa for each N·m. */
export function stripBending({ width, thickness }: FlatStrip): number {
  return 6 / (width * thickness ** 2);
}
