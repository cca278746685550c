/**
 * What a build's geometry decides once: the side on which each rod, cable and slot stands, and where a driven lever passes half a
 * turn, so that its rotation can be continued without a history.
 */
import { turnRoots } from '../numeric/roots.ts';
import { dot, plus, scaled, size, vectorAt, type Vector } from '../numeric/vector.ts';
import type { CableJoint, Mechanism, RodJoint, SlotJoint } from './model.ts';

/** Fills the parameters that no tape computes. */
export function decideBranches(mechanism: Mechanism, p: Float64Array): void {
  for (const joint of mechanism.joints) {
    if (joint.kind === 'rod') p[joint.side] = rodSide(joint, p);
    else if (joint.kind === 'cable') p[joint.side] = cableSide(joint, p);
    else if (joint.kind === 'slot') p[joint.side] = slotSide(joint, p);
  }
  decideWindings(mechanism, p);
}

/** Finds anew where driven levers pass half a turn, all sides as they are: for geometry that has moved since drawn. */
export function decideWindings(mechanism: Mechanism, p: Float64Array): void {
  for (const joint of mechanism.joints) {
    if (joint.kind === 'rod') windRod(joint, p);
    else if (joint.kind === 'slot') windSlot(joint, p);
  }
}

/** A part this near to its dead centre, as the sine of the angle, stands on neither side. */
const IN_LINE = 1e-9;

/** +1 or −1 by the sign of `along`; NaN where it is nothing against `scale`: the drawing does not say which side. */
function sideOf(along: number, scale: number): number {
  return Math.abs(along) <= IN_LINE * scale ? NaN : Math.sign(along);
}

function rodSide(joint: RodJoint, p: Float64Array): number {
  const perp = vectorAt(p, joint.drivenPin + 3);
  const drawn = plus(plus(vectorAt(p, joint.driverPin), vectorAt(p, joint.driverPin + 3)), vectorAt(p, joint.drivenPin), -1);
  const arm = Math.sqrt(dot(perp, perp));
  return sideOf(dot(vectorAt(p, joint.drivenPin + 6), drawn), arm * size(plus(drawn, perp, -1)));
}

function windRod(joint: RodJoint, p: Float64Array): void {
  const side = p[joint.side]!;
  const base1 = vectorAt(p, joint.driverPin);
  const perp1 = vectorAt(p, joint.driverPin + 3);
  const cross1 = vectorAt(p, joint.driverPin + 6);
  const base2 = vectorAt(p, joint.drivenPin);
  const perp2 = vectorAt(p, joint.drivenPin + 3);
  const cross2 = vectorAt(p, joint.drivenPin + 6);
  const half = plus(plus(base2, perp2, -1), base1, -1);
  const c = 0.5 * (dot(perp1, perp1) + dot(half, half) - p[joint.length]! ** 2);
  const passages = turnRoots(dot(perp1, half), dot(cross1, half), c).flatMap((rotation): Passage[] => {
    const arm1 = plus(scaled(perp1, Math.cos(rotation)), cross1, Math.sin(rotation));
    const tangent1 = plus(scaled(cross1, Math.cos(rotation)), perp1, -Math.sin(rotation));
    const e = plus(half, arm1, -1);
    const d = plus(plus(base1, arm1), base2, -1);
    const along = -dot(cross2, d);
    // e·t₂ = −along on this branch, e·t₁ tells how the driver moves it.
    return Math.sign(along) === side ? [{ rotation, sign: Math.sign(-dot(e, tangent1) / along) }] : [];
  });
  putWinding(p, joint.winding, passages);
}

function cableSide(joint: CableJoint, p: Float64Array): number {
  if (joint.drivenEnd.kind !== 'pin') return 1;
  const { pin, housing } = joint.drivenEnd;
  const cross = vectorAt(p, pin + 6);
  const d = plus(vectorAt(p, housing), vectorAt(p, pin), -1);
  return sideOf(dot(cross, d), Math.sqrt(dot(cross, cross)) * size(plus(d, vectorAt(p, pin + 3), -1)));
}

function slotSide(joint: SlotJoint, p: Float64Array): number {
  const { direction, normal, perp, cross, from } = slotVectors(joint, p);
  const offset = p[joint.offset]!;
  const drawn = plus(from, perp);
  const [a, b, c] =
    joint.driven === joint.fork
      ? [dot(normal, drawn), -dot(direction, drawn), offset]
      : [dot(normal, perp), dot(normal, cross), offset - dot(normal, from)];
  const nearest = turnRoots(a, b, c).reduce((best, root) => (Math.abs(root) < Math.abs(best) ? root : best), Infinity);
  return sideOf(b * Math.cos(nearest) - a * Math.sin(nearest), Math.hypot(a, b));
}

/** The fork's frame, the pin's arm, and the arm's foot from the fork's pivot. */
function slotVectors(joint: SlotJoint, p: Float64Array): Readonly<Record<'direction' | 'normal' | 'perp' | 'cross' | 'from', Vector>> {
  return {
    direction: vectorAt(p, joint.direction),
    normal: vectorAt(p, joint.normal),
    perp: vectorAt(p, joint.pin + 3),
    cross: vectorAt(p, joint.pin + 6),
    from: plus(vectorAt(p, joint.pin), vectorAt(p, joint.forkPivot), -1),
  };
}

function windSlot(joint: SlotJoint, p: Float64Array): void {
  const { direction, normal, perp, cross, from } = slotVectors(joint, p);
  const offset = p[joint.offset]!;
  const side = p[joint.side]!;
  const passages: Passage[] = [];
  if (joint.driven === joint.fork) {
    for (const rotation of turnRoots(dot(normal, perp), dot(normal, cross), -offset - dot(normal, from))) {
      const reach = dot(direction, plus(plus(from, perp, Math.cos(rotation)), cross, Math.sin(rotation)));
      const tangent = plus(scaled(cross, Math.cos(rotation)), perp, -Math.sin(rotation));
      if (Math.sign(reach) === side) passages.push({ rotation, sign: Math.sign(dot(normal, tangent) / reach) });
    }
  } else {
    const half = plus(from, perp, -1);
    for (const rotation of turnRoots(dot(normal, half), -dot(direction, half), offset)) {
      const n = plus(scaled(normal, Math.cos(rotation)), direction, -Math.sin(rotation));
      const f = plus(scaled(direction, Math.cos(rotation)), normal, Math.sin(rotation));
      const along = -dot(n, cross);
      if (Math.sign(along) === side) passages.push({ rotation, sign: Math.sign(dot(f, half) / along) });
    }
  }
  putWinding(p, joint.winding, passages);
}

/** A driver rotation at which the driven lever passes ±180°: +1 upwards as the driver turns on, −1 downwards. */
interface Passage {
  readonly rotation: number;
  readonly sign: number;
}

function putWinding(p: Float64Array, at: number, passages: readonly Passage[]): void {
  for (let k = 0; k < 2; k++) {
    p[at + 2 * k] = passages[k]?.rotation ?? 0;
    const sign = passages[k]?.sign ?? 0;
    p[at + 2 * k + 1] = Number.isNaN(sign) ? 0 : sign;
  }
}
