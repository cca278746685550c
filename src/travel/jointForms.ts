/**
 * What one joint's angles depend on, as trigonometric polynomials, so that turning points are found and not sampled.
 *
 * For a rod, with A, B, C of its equation in terms of the driver's rotation, S² = A² + B² − C² is of the second degree, and
 * sin(transmission angle) = S / (|perp₂| L). Read from the other end the same holds of the drive angle in the driven's rotation.
 * S² = 0 is where the linkage comes to its dead centre; the drive's S² = 0 is where the driven lever turns back.
 */
import type { CableJoint, RodJoint, SlotJoint } from '../kinematics/model.ts';
import { dot, minus, vectorAt, type Vector } from '../numeric/vector.ts';
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

/** S² of a slot's driven side in terms of its driver's rotation. */
export function slotForm(joint: SlotJoint, p: Float64Array): TrigPolynomial {
  const direction = vectorAt(p, joint.direction);
  const normal = vectorAt(p, joint.normal);
  const offset = p[joint.offset]!;
  if (joint.driven === joint.fork) {
    return trigPolynomialOf((rotation) => {
      const d = minus(pinAt(p, joint.pin, rotation), vectorAt(p, joint.forkPivot));
      return dot(normal, d) ** 2 + dot(direction, d) ** 2 - offset ** 2;
    });
  }
  const from = minus(vectorAt(p, joint.pin), vectorAt(p, joint.forkPivot));
  const perp = vectorAt(p, joint.pin + 3);
  const cross = vectorAt(p, joint.pin + 6);
  return trigPolynomialOf((rotation) => {
    const c = Math.cos(rotation);
    const s = Math.sin(rotation);
    const n: Vector = [c * normal[0] - s * direction[0], c * normal[1] - s * direction[1], c * normal[2] - s * direction[2]];
    return dot(n, perp) ** 2 + dot(n, cross) ** 2 - (offset - dot(n, from)) ** 2;
  });
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
