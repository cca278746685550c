/**
 * What force holds a lever that is just about to turn, with the friction of its bearing.
 *
 * A lever about to turn the way d (+1 by the right-hand rule about its axis, −1 against it) under a moment m about its axis and a force F
 * is held by w ≥ 0 times a force G, which turns it by w·A. Its bearing carries F + w G, and rubs at its friction circle r:
 *     m + w A = d (D + r |F + w G|)
 * D is what rubs whatever the load. The bearing's reaction is part of what is looked for; squared, the equation is a quadratic. With
 * a = A/|G|, e = G/|G|, f = F·e, m₀ = m − d D:
 *     w |G| = ( r² f − a m₀ + d sign(a) r √((m₀ − a f)² + (a² − r²)(F² − f²)) ) / (a² − r²)
 * of whose roots this is the one with d (m₀ + w A) ≥ 0. Where |a| ≤ r the force passes within the friction circle: no size of it turns the
 * lever. Derivation: worked out here from moments about the axis.
 */

/** A lever cut free, about to turn. Filled again for each. */
export interface FreeLever {
  /** m: of all that is known to act on it, about its axis, N·m. */
  moment: number;
  /** F: all forces that are known to act on it, N. */
  x: number;
  y: number;
  z: number;
  /** D: drag, N·m, not negative. */
  drag: number;
  /** r: friction circle of its bearing, m, not negative. */
  radius: number;
  /** d: the way it is about to turn; 0 where it stands, and nothing rubs. */
  way: number;
}

/** m − d (D + r |F|): what turns it with nothing to hold it, N·m. */
export function unheld({ moment, x, y, z, drag, radius, way }: FreeLever): number {
  if (way === 0) return moment;
  return moment - way * (radius === 0 ? drag : drag + radius * Math.sqrt(x * x + y * y + z * z));
}

/**
 * w, N for a G of one: never negative where A turns the lever against `unheld`.
 * @param arm A @param gx G @returns NaN where the force passes within the friction circle
 */
export function holdingForce(free: FreeLever, arm: number, gx: number, gy: number, gz: number): number {
  const { x, y, z, way } = free;
  const radius = way === 0 ? 0 : free.radius;
  const moment = free.moment - way * free.drag;
  if (radius === 0) return -moment / arm;
  const size = Math.sqrt(gx * gx + gy * gy + gz * gz);
  // A couple alone loads no bearing.
  if (size === 0) return (way * radius * Math.sqrt(x * x + y * y + z * z) - moment) / arm;
  const a = arm / size;
  const square = (a - radius) * (a + radius);
  if (!(square > 0)) return NaN;
  const ex = gx / size;
  const ey = gy / size;
  const ez = gz / size;
  const f = x * ex + y * ey + z * ez;
  const across = (x - f * ex) ** 2 + (y - f * ey) ** 2 + (z - f * ez) ** 2;
  const root = Math.sqrt((moment - a * f) ** 2 + square * across);
  return (radius * radius * f - a * moment + way * Math.sign(a) * radius * root) / (square * size);
}
