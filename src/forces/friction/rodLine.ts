/**
 * A rod between two pins that rub: a body on which two forces act, whose line of action touches the friction circles of both pins.
 *
 * With e from the driving to the driven pin, L their distance, ω₁ and ω₂ the turning of the two levers and
 *     ω = e × (v₂ − v₁)/L + σ e                 the rod's own, σ about itself
 *     Ωᵢ = ωᵢ − ω                               a lever's turning in the rod's end
 * each end brings to its lever the couple −ρ w Ωᵢ/|Ωᵢ| for a force w, ρ = r sin(arctan μ). The rod spins so that the couples along it are
 * in balance; with equal ends that is σ = (w₁ p₂ + w₂ p₁)/(p₁ + p₂), wᵢ = ωᵢ·e, pᵢ the part of ωᵢ − ω square to e. What is left of the
 * couples turns the force out of the line of the pins:
 *     k = ρ (Ω₁/|Ω₁| + Ω₂/|Ω₂|)/L,   force on the driven lever  w (s √(1 − k²) e − d e × k)
 * In a plane that is the common tangent of the two friction circles. A ball joint rubs about whatever axis it turns; its radius is taken to
 * be that of the pin. Derivation: equilibrium of the rod, worked out here.
 */
import type { Grip, JointLine } from './line.ts';

/** How a lever is about to turn: ω times its axis, rad for a radian of what moves the joint. */
export interface Turning {
  rate: number;
  /** Axis. */
  x: number;
  y: number;
  z: number;
}

/** @param radius ρ, m @param first, second turning of the driving and the driven lever @returns not at all: fills `line`, NaN where it cannot be told */
export function fillRodLine(radius: number, start: Grip, end: Grip, first: Turning, second: Turning, line: JointLine): void {
  const dx = end.x - start.x;
  const dy = end.y - start.y;
  const dz = end.z - start.z;
  const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
  const ex = dx / length;
  const ey = dy / length;
  const ez = dz / length;
  line.gx = ex;
  line.gy = ey;
  line.gz = ez;
  line.hx = line.hy = line.hz = 0;
  line.armFriction = line.backFriction = 0;
  let firstAbout = 0;
  let secondAbout = 0;
  if (radius > 0) {
    const wx = second.rate * end.tx - first.rate * start.tx;
    const wy = second.rate * end.ty - first.rate * start.ty;
    const wz = second.rate * end.tz - first.rate * start.tz;
    const rodX = (ey * wz - ez * wy) / length;
    const rodY = (ez * wx - ex * wz) / length;
    const rodZ = (ex * wy - ey * wx) / length;
    // Ωᵢ but for the rod's spin: the part along the rod, and the part square to it.
    const along1 = first.rate * (first.x * ex + first.y * ey + first.z * ez);
    const along2 = second.rate * (second.x * ex + second.y * ey + second.z * ez);
    const x1 = first.rate * first.x - rodX - along1 * ex;
    const y1 = first.rate * first.y - rodY - along1 * ey;
    const z1 = first.rate * first.z - rodZ - along1 * ez;
    const x2 = second.rate * second.x - rodX - along2 * ex;
    const y2 = second.rate * second.y - rodY - along2 * ey;
    const z2 = second.rate * second.z - rodZ - along2 * ez;
    const across1 = Math.sqrt(x1 * x1 + y1 * y1 + z1 * z1);
    const across2 = Math.sqrt(x2 * x2 + y2 * y2 + z2 * z2);
    const both = across1 + across2;
    const spin = both > 0 ? (along1 * across2 + along2 * across1) / both : (along1 + along2) / 2;
    const size1 = Math.sqrt(across1 * across1 + (along1 - spin) ** 2);
    const size2 = Math.sqrt(across2 * across2 + (along2 - spin) ** 2);
    const per1 = size1 > 0 ? radius / size1 : 0;
    const per2 = size2 > 0 ? radius / size2 : 0;
    const kx = (x1 * per1 + x2 * per2) / length;
    const ky = (y1 * per1 + y2 * per2) / length;
    const kz = (z1 * per1 + z2 * per2) / length;
    // NaN for a rod shorter than its friction circles allow.
    const straight = Math.sqrt(1 - kx * kx - ky * ky - kz * kz);
    line.gx = straight * ex;
    line.gy = straight * ey;
    line.gz = straight * ez;
    line.hx = ez * ky - ey * kz;
    line.hy = ex * kz - ez * kx;
    line.hz = ey * kx - ex * ky;
    firstAbout = -per1 * aboutAxis(first, x1, y1, z1, along1 - spin, ex, ey, ez);
    secondAbout = -per2 * aboutAxis(second, x2, y2, z2, along2 - spin, ex, ey, ez);
  }
  line.arm = line.gx * end.tx + line.gy * end.ty + line.gz * end.tz;
  line.armFriction = line.hx * end.tx + line.hy * end.ty + line.hz * end.tz + secondAbout;
  line.back = -(line.gx * start.tx + line.gy * start.ty + line.gz * start.tz);
  line.backFriction = -(line.hx * start.tx + line.hy * start.ty + line.hz * start.tz) + firstAbout;
}

/** The part about a lever's axis of a turning that is given square to the rod and along it. */
function aboutAxis(lever: Turning, x: number, y: number, z: number, along: number, ex: number, ey: number, ez: number): number {
  return lever.x * (x + along * ex) + lever.y * (y + along * ey) + lever.z * (z + along * ez);
}
