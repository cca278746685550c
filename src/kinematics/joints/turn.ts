/**
 * The one equation of the engine, A cos φ + B sin φ = C, and its continuation past half a turn.
 *
 * With h² = A² + B² and S = √(h² − C²):  cos φ = (A C + σ B S) / h²,  sin φ = (B C − σ A S) / h².
 * σ = sign(B cos φ − A sin φ) tells the two solutions apart: it is the side on which the part was drawn.
 */
import type { Pose } from '../pose.ts';

/**
 * S² may fall below zero by rounding where a part stands exactly at its dead centre; relative to h².
 * A few units in the last place of the sums that lead to it.
 */
const ROUNDING = 1e-14;

/**
 * Sets a lever's cosine and sine.
 * @returns σS, the derivative of A cos φ + B sin φ by φ; NaN, with the lever's figures, where no φ solves it.
 */
export function turnTo(pose: Pose, lever: number, a: number, b: number, c: number, side: number): number {
  const square = a * a + b * b;
  const s = side * rootOver(square, c);
  pose.cosine[lever] = (a * c + b * s) / square;
  pose.sine[lever] = (b * c - a * s) / square;
  return s;
}

/** S = √(h² − C²) of h² and C; NaN where no φ solves the equation. */
export function rootOver(square: number, c: number): number {
  const rest = square - c * c;
  if (rest >= 0) return Math.sqrt(rest);
  return rest >= -ROUNDING * square ? 0 : NaN;
}

/**
 * Rotation of a lever whose cosine and sine are set, continued over half turns.
 * @param winding first of four parameters: driver rotation and sign of up to two passages of ±180°; sign 0 for none
 */
export function continuedRotation(pose: Pose, lever: number, driver: number, p: Float64Array, winding: number): number {
  return continued(Math.atan2(pose.sine[lever]!, pose.cosine[lever]!), pose.rotation[driver]!, p, winding);
}

/** @param principal the driven lever's rotation within half a turn; @param from the driver's rotation */
export function continued(principal: number, from: number, p: Float64Array, winding: number): number {
  const first = p[winding + 1]!;
  const second = p[winding + 3]!;
  if (first === 0 && second === 0) return principal;
  return principal + TURN * (first * passages(from, p[winding]!) + second * passages(from, p[winding + 2]!));
}

/** How often a driver that turned from 0 to `rotation` passed `at` (and at every full turn from it), counted with sign. */
function passages(rotation: number, at: number): number {
  return Math.floor((rotation - at) / TURN) - Math.floor(-at / TURN);
}

const TURN = 2 * Math.PI;
