/**
 * A rod keeps two pins a length L apart.
 *
 * With Q the driving pin, and v(φ) = cos φ · perp + sin φ · cross the driven arm about its base, D = Q − base:
 * |v − D|² = L² gives A cos φ + B sin φ = C with A = perp·D, B = cross·D, C = (|perp|² + |D|² − L²) / 2.
 *
 * With e = P₂ − P₁, tᵢ = dPᵢ/dφᵢ and nᵢ = d²Pᵢ/dφᵢ²:
 *     e·t₂ φ₂′ = e·t₁ φ₁′
 *     e·t₂ φ₂″ = e·t₁ φ₁″ + e·n₁ φ₁′² − e·n₂ φ₂′² − |t₂ φ₂′ − t₁ φ₁′|²
 * Planar and spatial alike; ball joints at both pins. Derivation: differentiate |e|² = L².
 */
import type { Bounds } from '../build.ts';
import type { RodJoint } from '../model.ts';
import type { Pose } from '../pose.ts';
import { continued, rootOver } from './turn.ts';

/**
 * How near to its length a rod with free play must be to count as taut, relative. As drawn it is exactly so, but for rounding.
 */
const TAUT = 1e-12;

export function moveRod(joint: RodJoint, p: Float64Array, bounds: Bounds, pose: Pose): void {
  const length = joint.lost === undefined ? p[joint.length]! : tautLength(joint, p, bounds, pose);
  if (length === LOOSE) {
    rest(joint, bounds, pose);
    return;
  }
  const { driver, driven } = joint;
  const i = joint.driverPin;
  const k = joint.drivenPin;
  const c1 = pose.cosine[driver]!;
  const s1 = pose.sine[driver]!;
  const v1x = c1 * p[i + 3]! + s1 * p[i + 6]!;
  const v1y = c1 * p[i + 4]! + s1 * p[i + 7]!;
  const v1z = c1 * p[i + 5]! + s1 * p[i + 8]!;
  const dx = p[i]! + v1x - p[k]!;
  const dy = p[i + 1]! + v1y - p[k + 1]!;
  const dz = p[i + 2]! + v1z - p[k + 2]!;
  const px = p[k + 3]!;
  const py = p[k + 4]!;
  const pz = p[k + 5]!;
  const qx = p[k + 6]!;
  const qy = p[k + 7]!;
  const qz = p[k + 8]!;
  const a = px * dx + py * dy + pz * dz;
  const b = qx * dx + qy * dy + qz * dz;
  const c = 0.5 * (px * px + py * py + pz * pz + dx * dx + dy * dy + dz * dz - length * length);
  // The equation of `turn.ts` written out: values that stay in registers take a quarter off the time of a station.
  const square = a * a + b * b;
  const s = p[joint.side]! * rootOver(square, c);
  const c2 = (a * c + b * s) / square;
  const s2 = (b * c - a * s) / square;
  pose.cosine[driven] = c2;
  pose.sine[driven] = s2;
  pose.rotation[driven] = continued(Math.atan2(s2, c2), pose.rotation[driver]!, p, joint.winding);

  const v2x = c2 * px + s2 * qx;
  const v2y = c2 * py + s2 * qy;
  const v2z = c2 * pz + s2 * qz;
  const ex = v2x - dx;
  const ey = v2y - dy;
  const ez = v2z - dz;
  const t1x = c1 * p[i + 6]! - s1 * p[i + 3]!;
  const t1y = c1 * p[i + 7]! - s1 * p[i + 4]!;
  const t1z = c1 * p[i + 8]! - s1 * p[i + 5]!;
  const rate1 = pose.rate[driver]!;
  // e·t₂ = −σS: the derivative of the loop equation, already at hand.
  const et1 = ex * t1x + ey * t1y + ez * t1z;
  const rate2 = rate1 === 0 ? 0 : (-et1 / s) * rate1;
  pose.rate[driven] = rate2;

  const fx = rate2 * (c2 * qx - s2 * px) - rate1 * t1x;
  const fy = rate2 * (c2 * qy - s2 * py) - rate1 * t1y;
  const fz = rate2 * (c2 * qz - s2 * pz) - rate1 * t1z;
  const en1 = -(ex * v1x + ey * v1y + ez * v1z);
  const en2 = -(ex * v2x + ey * v2y + ez * v2z);
  const curvature1 = pose.curvature[driver]!;
  pose.curvature[driven] =
    rate1 === 0 && curvature1 === 0
      ? 0
      : -(et1 * curvature1 + en1 * rate1 * rate1 - en2 * rate2 * rate2 - (fx * fx + fy * fy + fz * fz)) / s;
}

/** Marks a rod within its free play. No rod has this length. */
const LOOSE = -1;

/** Length at which a rod with free play pulls or pushes, or `LOOSE`: springs hold the driven lever at rest. */
function tautLength(joint: RodJoint, p: Float64Array, bounds: Bounds, pose: Pose): number {
  const longest = p[joint.length]!;
  const shortest = longest - (joint.lost === undefined ? 0 : p[joint.lost]!);
  const gap = restGap(joint, p, bounds, pose);
  if (Number.isNaN(gap.distance)) return NaN;
  const slop = TAUT * longest;
  if (gap.distance > longest + slop || (gap.distance > longest - slop && gap.rate > 0)) return longest;
  if (gap.distance < shortest - slop || (gap.distance < shortest + slop && gap.rate < 0)) return shortest;
  return LOOSE;
}

/** Distance of the pins with the driven lever at rest, and how it grows along the pedal. */
function restGap(joint: RodJoint, p: Float64Array, bounds: Bounds, pose: Pose): { readonly distance: number; readonly rate: number } {
  const i = joint.driverPin;
  const k = joint.drivenPin;
  const c1 = pose.cosine[joint.driver]!;
  const s1 = pose.sine[joint.driver]!;
  const c2 = Math.cos(bounds.restRotation[joint.driven]!);
  const s2 = Math.sin(bounds.restRotation[joint.driven]!);
  let square = 0;
  let along = 0;
  for (let axis = 0; axis < 3; axis++) {
    const e = p[k + axis]! + c2 * p[k + 3 + axis]! + s2 * p[k + 6 + axis]! - p[i + axis]! - c1 * p[i + 3 + axis]! - s1 * p[i + 6 + axis]!;
    square += e * e;
    along -= e * (c1 * p[i + 6 + axis]! - s1 * p[i + 3 + axis]!);
  }
  const distance = Math.sqrt(square);
  return { distance, rate: (along / distance) * pose.rate[joint.driver]! };
}

function rest(joint: RodJoint, bounds: Bounds, pose: Pose): void {
  const rotation = bounds.restRotation[joint.driven]!;
  pose.rotation[joint.driven] = rotation;
  pose.cosine[joint.driven] = Math.cos(rotation);
  pose.sine[joint.driven] = Math.sin(rotation);
  pose.rate[joint.driven] = 0;
  pose.curvature[joint.driven] = 0;
}
