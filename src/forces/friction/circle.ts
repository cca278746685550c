/**
 * The friction circle of a pin in its hole: while it turns, the force between them passes the pin's centre at
 *     r_f = r sin(arctan μ)
 * and turns against the motion. F. P. Beer, E. R. Johnston, Vector Mechanics for Engineers: Statics, journal bearings, from memory. Their
 * problems put μ for sin(arctan μ), which is 2 % more at μ = 0.2.
 */

/** @param diameter m @param coefficient μ @returns r_f, m */
export function frictionRadius(diameter: number, coefficient: number): number {
  // sin(arctan μ); written so that a coefficient without bound gives the pin's own radius.
  return (diameter / 2) * (coefficient === Infinity ? 1 : coefficient / Math.sqrt(1 + coefficient * coefficient));
}
