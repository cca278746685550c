/**
 * The textbook's own way to the angles of a four-bar, as a second method beside the one in `src/`: Freudenstein's equation and its
 * sister for the coupler as quadratics in the tangent of half the angle (Norton, Design of Machinery, ch. 4, from memory).
 */
import type { FourBar } from '../../../src/kinematics/fourBar/index.ts';

export interface HalfTangentConstants {
  readonly K1: number;
  readonly K2: number;
  readonly K3: number;
  readonly K4: number;
  readonly K5: number;
  readonly A: number;
  readonly B: number;
  readonly C: number;
  readonly D: number;
  readonly E: number;
  readonly F: number;
}

export function halfTangentConstants({ a, b, c, d }: FourBar, theta2: number): HalfTangentConstants {
  const K1 = d / a;
  const K2 = d / c;
  const K3 = (a * a - b * b + c * c + d * d) / (2 * a * c);
  const K4 = d / b;
  const K5 = (c * c - d * d - a * a - b * b) / (2 * a * b);
  const cosine = Math.cos(theta2);
  const sine = Math.sin(theta2);
  return {
    K1,
    K2,
    K3,
    K4,
    K5,
    A: cosine - K1 - K2 * cosine + K3,
    B: -2 * sine,
    C: K1 - (K2 + 1) * cosine + K3,
    D: cosine - K1 + K4 * cosine + K5,
    E: -2 * sine,
    F: K1 + (K4 - 1) * cosine + K5,
  };
}

/** θ3 and θ4 by the minus root (`-1`) or the plus root (`1`); NaN where there is none. */
export function halfTangentAngles(fourBar: FourBar, theta2: number, sign: -1 | 1): { readonly theta3: number; readonly theta4: number } {
  const { A, B, C, D, E, F } = halfTangentConstants(fourBar, theta2);
  return {
    theta3: 2 * Math.atan2(-E + sign * Math.sqrt(E * E - 4 * D * F), 2 * D),
    theta4: 2 * Math.atan2(-B + sign * Math.sqrt(B * B - 4 * A * C), 2 * A),
  };
}
