/**
 * What one joint's angles depend on, as trigonometric polynomials, so that turning points are found and not sampled.
 *
 * For a rod, with A, B, C of its equation in terms of the driver's rotation, S² = A² + B² − C² is of the second degree, and
 * sin(transmission angle) = S / (|perp₂| L). Read from the other end the same holds of the drive angle in the driven's rotation.
 * S² = 0 is where the linkage comes to its dead centre; the drive's S² = 0 is where the driven lever turns back.
 */
import type { CableJoint, RodJoint, SlotJoint } from '../kinematics/model.ts';
import { turnRoots } from '../numeric/roots.ts';
import { dot, minus, plus, scaled, vectorAt, type Vector } from '../numeric/vector.ts';
import { trigDerivative, trigPolynomialOf, trigValue, type TrigPolynomial } from '../numeric/trigPolynomial.ts';

/** Place of a pin at a rotation of its lever. */
export function pinAt(p: Float64Array, pin: number, rotation: number): Vector {
  const c = Math.cos(rotation);
  const s = Math.sin(rotation);
  const along = (axis: number): number => p[pin + axis]! + c * p[pin + 3 + axis]! + s * p[pin + 6 + axis]!;
  return [along(0), along(1), along(2)];
}

/** S² of a pin that keeps `length` from a pin turning by the polynomial's angle. */
export function rodForm(p: Float64Array, turning: number, kept: number, length: number): TrigPolynomial {
  const perp = vectorAt(p, kept + 3);
  const cross = vectorAt(p, kept + 6);
  return trigPolynomialOf((rotation) => {
    const d = minus(pinAt(p, turning, rotation), vectorAt(p, kept));
    const a = dot(perp, d);
    const b = dot(cross, d);
    const c = 0.5 * (dot(perp, perp) + dot(d, d) - length * length);
    return a * a + b * b - c * c;
  });
}

/** Lengths at which a rod can be taut: pulling, and pushing where it has free play. */
export function rodLengths(joint: RodJoint, p: Float64Array): readonly number[] {
  const length = p[joint.length]!;
  return joint.lost === undefined ? [length] : [length, length - p[joint.lost]!];
}

/** Offsets at which a slot's pin can press its fork: the fork's own, or with play either side of it, m. */
export function slotOffsets(joint: SlotJoint, p: Float64Array): readonly number[] {
  const offset = p[joint.offset]!;
  if (joint.play === undefined) return [offset];
  const half = p[joint.play]! / 2;
  return [offset + half, offset - half];
}

/** S² of a slot's driven side in terms of its driver's rotation. */
export function slotForm(joint: SlotJoint, p: Float64Array, offset = p[joint.offset]!): TrigPolynomial {
  return joint.driven === joint.fork ? forkForm(joint, p, offset) : pinForm(joint, p, offset);
}

/** S² of a slot's driving side in terms of its driven lever's rotation: zero where the driven lever turns back. */
export function slotBackForm(joint: SlotJoint, p: Float64Array, offset: number): TrigPolynomial {
  return joint.driven === joint.fork ? pinForm(joint, p, offset) : forkForm(joint, p, offset);
}

/** reach² = (n·D)² + (f·D)² − offset² by the rotation of the pin's lever. */
function forkForm(joint: SlotJoint, p: Float64Array, offset: number): TrigPolynomial {
  const { direction, normal, pivot } = forkFrame(joint, p);
  return trigPolynomialOf((rotation) => {
    const d = minus(pinAt(p, joint.pin, rotation), pivot);
    return dot(normal, d) ** 2 + dot(direction, d) ** 2 - offset ** 2;
  });
}

/** (n·t)² = (n·perp)² + (n·cross)² − (offset − n·(base − pivot))² by the fork's rotation. */
function pinForm(joint: SlotJoint, p: Float64Array, offset: number): TrigPolynomial {
  const { direction, normal, pivot } = forkFrame(joint, p);
  const from = minus(vectorAt(p, joint.pin), pivot);
  const perp = vectorAt(p, joint.pin + 3);
  const cross = vectorAt(p, joint.pin + 6);
  return trigPolynomialOf((rotation) => {
    const n = forkNormal(normal, direction, rotation);
    return dot(n, perp) ** 2 + dot(n, cross) ** 2 - (offset - dot(n, from)) ** 2;
  });
}

/**
 * Driver rotations at which a slot's driven lever, standing at `driven`, turns back. A fork turns back where the pin runs along it,
 * a pin where it passes the foot of the fork's pivot.
 */
export function slotTurnsBackAt(joint: SlotJoint, p: Float64Array, driven: number): readonly number[] {
  const { direction, normal, pivot } = forkFrame(joint, p);
  if (joint.driven === joint.fork) {
    const n = forkNormal(normal, direction, driven);
    return bothWays(Math.atan2(dot(n, vectorAt(p, joint.pin + 6)), dot(n, vectorAt(p, joint.pin + 3))));
  }
  const d = minus(pinAt(p, joint.pin, driven), pivot);
  // With no offset the pin goes through the pivot itself, and the fork points along its way.
  const t = pinAt(p, joint.pin, driven + Math.PI / 2);
  const way = minus(t, vectorAt(p, joint.pin));
  return [...bothWays(Math.atan2(-dot(direction, d), dot(normal, d))), ...bothWays(Math.atan2(dot(normal, way), dot(direction, way)))];
}

/** Driver rotations at which a slot's pin comes to press its fork with the driven lever standing at `driven`. */
export function slotContactsAt(joint: SlotJoint, p: Float64Array, driven: number, offset: number): readonly number[] {
  const { direction, normal, pivot } = forkFrame(joint, p);
  if (joint.driven === joint.fork) {
    const n = forkNormal(normal, direction, driven);
    const from = minus(vectorAt(p, joint.pin), pivot);
    return turnRoots(dot(n, vectorAt(p, joint.pin + 3)), dot(n, vectorAt(p, joint.pin + 6)), offset - dot(n, from));
  }
  const d = minus(pinAt(p, joint.pin, driven), pivot);
  return turnRoots(dot(normal, d), -dot(direction, d), offset);
}

function forkFrame(joint: SlotJoint, p: Float64Array): Readonly<Record<'direction' | 'normal' | 'pivot', Vector>> {
  return { direction: vectorAt(p, joint.direction), normal: vectorAt(p, joint.normal), pivot: vectorAt(p, joint.forkPivot) };
}

function forkNormal(normal: Vector, direction: Vector, rotation: number): Vector {
  return plus(scaled(normal, Math.cos(rotation)), direction, -Math.sin(rotation));
}

/** An angle and the one half a turn from it. */
export function bothWays(angle: number): readonly number[] {
  return [angle, angle > 0 ? angle - Math.PI : angle + Math.PI];
}

/**
 * Squared distance ℓ² of a turning pin from a housing end, and N = d(ℓ²)/dφ / 2. The angle between the cable and the arm has
 * sin = |N| / (|perp| ℓ); it is extreme where N = 0 or 2 N′ ℓ² = N (ℓ²)′ = 2 N².
 */
export function cableForms(
  p: Float64Array,
  pin: number,
  housing: number,
): { readonly square: TrigPolynomial; readonly extreme: TrigPolynomial; readonly along: TrigPolynomial } {
  const square = trigPolynomialOf((rotation) => {
    const e = minus(pinAt(p, pin, rotation), vectorAt(p, housing));
    return dot(e, e);
  });
  const slope = trigDerivative(square);
  const bend = trigDerivative(slope);
  return {
    square,
    along: slope,
    extreme: trigPolynomialOf((angle) => 2 * trigValue(bend, angle) * trigValue(square, angle) - trigValue(slope, angle) ** 2),
  };
}

/** b·P of a fixed bolt and a turning pin, m; its square is extreme where this is. */
export function endTiltForm(p: Float64Array, bolt: number, pin: number): TrigPolynomial {
  const b = vectorAt(p, bolt);
  return [0, dot(b, vectorAt(p, pin + 3)), dot(b, vectorAt(p, pin + 6)), 0, 0];
}

/**
 * Zero where the tilt of either end is extreme while a rod lies within its free play, by the driver's rotation: its length changes, the
 * driven lever stands at `rest`. With N = b·e and ℓ² = |e|², N/ℓ is extreme where 2 N′ ℓ² = N (ℓ²)′.
 */
export function looseTiltForms(
  p: Float64Array,
  joint: RodJoint,
  bolts: { from: number; to: number },
  rest: number,
): readonly TrigPolynomial[] {
  const end = pinAt(p, joint.drivenPin, rest);
  const square = trigPolynomialOf((rotation) => {
    const e = minus(end, pinAt(p, joint.driverPin, rotation));
    return dot(e, e);
  });
  const standing = pinAt(p, bolts.to, rest);
  const tilts = [(rotation: number): Vector => pinAt(p, bolts.from, rotation), (): Vector => standing];
  return tilts.map((bolt) => shareForm((rotation) => dot(bolt(rotation), minus(end, pinAt(p, joint.driverPin, rotation))), square));
}

/** Zero where the angle between a cable's inner and its housing end's direction is extreme, by the rotation of the pin's lever. */
export function leadForm(p: Float64Array, pin: number, housing: number, direction: number): TrigPolynomial {
  const along = vectorAt(p, direction);
  const from = vectorAt(p, housing);
  return shareForm((rotation) => dot(along, minus(pinAt(p, pin, rotation), from)), cableForms(p, pin, housing).square);
}

/** 2 N′ ℓ² − N (ℓ²)′ of a figure N of the first degree and a square ℓ² of the first degree: zero where N/ℓ is extreme. */
function shareForm(figure: (rotation: number) => number, square: TrigPolynomial): TrigPolynomial {
  const n = trigPolynomialOf(figure);
  const slope = trigDerivative(n);
  const growth = trigDerivative(square);
  return trigPolynomialOf(
    (angle) => 2 * trigValue(slope, angle) * trigValue(square, angle) - trigValue(n, angle) * trigValue(growth, angle),
  );
}

/** What a cable passes when its driven pin stands in line with its arm, m since drawn: nearest and farthest. */
export function cableDeadCentres(joint: CableJoint, p: Float64Array): readonly number[] {
  if (joint.drivenEnd.kind !== 'pin') return [];
  const { pin, housing, drawn } = joint.drivenEnd;
  const perp = vectorAt(p, pin + 3);
  const d = minus(vectorAt(p, housing), vectorAt(p, pin));
  const reach = 2 * Math.hypot(dot(perp, d), dot(vectorAt(p, pin + 6), d));
  const middle = dot(perp, perp) + dot(d, d);
  return [middle - reach, middle + reach].map((square) => p[drawn]! - Math.sqrt(Math.max(0, square)));
}
