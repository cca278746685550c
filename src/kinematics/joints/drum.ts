/**
 * Drums: how much cable a turn takes up, and the turn that takes up a given length.
 *
 * Round: length = R · rotation. Profiled: the effective radius r(o) is given against the lever's opening o, joined by
 * monotone cubic pieces and constant outside them; length is the integral of r over o, which is found in closed form piece
 * by piece and inverted by bracketed Newton steps. On a piece of width h, with s = (o − o₀)/h and Hermite's basis:
 *     r = r₀(1 − 3s² + 2s³) + r₁(3s² − 2s³) + h m₀(s − 2s² + s³) + h m₁(s³ − s²)
 *     ∫r do from o₀ = h [ r₀(s − s³ + s⁴/2) + r₁(s³ − s⁴/2) + h m₀(s²/2 − 2s³/3 + s⁴/4) + h m₁(s⁴/4 − s³/3) ]
 */
import type { DrumModel } from '../model.ts';

/** Effective radius, its slope by opening, and its integral from the first given opening. Filled anew by each call. */
export interface DrumPoint {
  radius: number;
  slope: number;
  integral: number;
}

/** @param onwards sign of the way the opening goes on: at the first and last given opening the slope is that of what follows */
export function drumAt(drum: DrumModel, p: Float64Array, opening: number, into: DrumPoint, onwards = 1): void {
  const { form } = drum;
  if (form.kind === 'round') {
    into.radius = p[form.radius]!;
    into.slope = 0;
    into.integral = into.radius * opening;
    return;
  }
  const { count, openings, radii, slopes, integrals } = form;
  const first = p[openings]!;
  const last = p[openings + count - 1]!;
  const shift = onwards < 0 ? -EDGE : EDGE;
  if (!(opening + shift > first) || opening + shift >= last) {
    const end = opening + shift >= last ? count - 1 : 0;
    into.radius = p[radii + end]!;
    into.slope = 0;
    into.integral = p[integrals + end]! + into.radius * (opening - p[openings + end]!);
    return;
  }
  let k = 0;
  while (k < count - 2 && opening >= p[openings + k + 1]!) k++;
  const start = p[openings + k]!;
  const h = p[openings + k + 1]! - start;
  const s = (opening - start) / h;
  const r0 = p[radii + k]!;
  const r1 = p[radii + k + 1]!;
  const m0 = h * p[slopes + k]!;
  const m1 = h * p[slopes + k + 1]!;
  const s2 = s * s;
  const s3 = s2 * s;
  const s4 = s2 * s2;
  into.radius = r0 + (r1 - r0) * (3 * s2 - 2 * s3) + m0 * (s - 2 * s2 + s3) + m1 * (s3 - s2);
  into.slope = ((r1 - r0) * (6 * s - 6 * s2) + m0 * (1 - 4 * s + 3 * s2) + m1 * (3 * s2 - 2 * s)) / h;
  into.integral =
    p[integrals + k]! + h * (r0 * s + (r1 - r0) * (s3 - s4 / 2) + m0 * (s2 / 2 - (2 * s3) / 3 + s4 / 4) + m1 * (s4 / 4 - s3 / 3));
}

/**
 * Partial derivative of the integral by the drum's own parameters in a direction, at a fixed opening.
 * @param dp direction of the parameter vector
 */
export function drumIntegralTangent(drum: DrumModel, p: Float64Array, dp: Float64Array, opening: number): number {
  const { form } = drum;
  if (form.kind === 'round') return dp[form.radius]! * opening;
  const { count, openings, radii, slopes, integrals } = form;
  const last = p[openings + count - 1]!;
  if (!(opening > p[openings]!) || opening >= last) {
    const end = opening >= last ? count - 1 : 0;
    return dp[integrals + end]! + dp[radii + end]! * (opening - p[openings + end]!) - p[radii + end]! * dp[openings + end]!;
  }
  let k = 0;
  while (opening >= p[openings + k + 1]!) k++;
  const h = p[openings + k + 1]! - p[openings + k]!;
  const dh = dp[openings + k + 1]! - dp[openings + k]!;
  const s = (opening - p[openings + k]!) / h;
  const s2 = s * s;
  const s3 = s2 * s;
  const s4 = s2 * s2;
  const basis0 = s - s3 + s4 / 2;
  const basis1 = s3 - s4 / 2;
  const slope0 = s2 / 2 - (2 * s3) / 3 + s4 / 4;
  const slope1 = s4 / 4 - s3 / 3;
  const area = p[radii + k]! * basis0 + p[radii + k + 1]! * basis1 + h * (p[slopes + k]! * slope0 + p[slopes + k + 1]! * slope1);
  const point: DrumPoint = { radius: 0, slope: 0, integral: 0 };
  drumAt(drum, p, opening, point);
  const ds = (-dp[openings + k]! - s * dh) / h;
  const changes =
    dp[radii + k]! * basis0 +
    dp[radii + k + 1]! * basis1 +
    (dh * p[slopes + k]! + h * dp[slopes + k]!) * slope0 +
    (dh * p[slopes + k + 1]! + h * dp[slopes + k + 1]!) * slope1;
  return dp[integrals + k]! + dh * area + h * (point.radius * ds + changes);
}

/**
 * Opening at which the integral from opening 0 is `length` (both may be negative). NaN where the radius is not positive.
 * @param zero the integral's value at opening 0; @param onwards as for `drumAt`
 */
export function openingAtLength(drum: DrumModel, p: Float64Array, length: number, zero: number, into: DrumPoint, onwards = 1): number {
  const { form } = drum;
  if (form.kind === 'round') {
    const opening = length / p[form.radius]!;
    drumAt(drum, p, opening, into, onwards);
    return opening;
  }
  const { count, openings, radii, integrals } = form;
  const target = length + zero;
  let low = p[openings]!;
  let high = p[openings + count - 1]!;
  if (target <= p[integrals]! || target >= p[integrals + count - 1]!) {
    const end = target <= p[integrals]! ? 0 : count - 1;
    const opening = p[openings + end]! + (target - p[integrals + end]!) / p[radii + end]!;
    drumAt(drum, p, opening, into, onwards);
    return opening;
  }
  let opening = low + ((high - low) * (target - p[integrals]!)) / (p[integrals + count - 1]! - p[integrals]!);
  for (let step = 0; step < MOST_STEPS; step++) {
    drumAt(drum, p, opening, into, onwards);
    const miss = into.integral - target;
    if (miss > 0) high = opening;
    else low = opening;
    const newton = opening - miss / into.radius;
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - opening) <= CLOSE * Math.max(1, Math.abs(opening))) break;
    opening = next;
  }
  return opening;
}

/** rad; a profile mostly begins where its lever is drawn, which rounding must not push to either side. */
const EDGE = 1e-13;
/** Newton within a bracket: bisection alone would need 52 steps. */
const MOST_STEPS = 100;
/** rad; two units in the last place of an opening of one radian. */
const CLOSE = 4e-16;
