/**
 * The planar four-bar as the textbooks draw it, shared by the modules of this folder.
 *
 * Frame: the ground line runs from the input's pivot O2 at (0, 0) to the output's pivot O4 at (d, 0).
 * θ2, θ3, θ4 are anticlockwise from the ground line, in radians: A = O2 + a·e^{iθ2} is the pin between
 * input and coupler, B = O4 + c·e^{iθ4} = A + b·e^{iθ3} the pin between coupler and output
 * (notation of Norton, Design of Machinery, from memory).
 */

/**
 * Lengths of the links in one unit, whichever. `b` and `d` are positive. A negative `a` or `c`, as synthesis may give,
 * means that this link's pin stands opposite to its angle: the link itself is |a| or |c| long, its angle offset by π.
 */
export interface FourBar {
  /** Input link, O2 to A. */
  readonly a: number;
  /** Coupler, A to B. */
  readonly b: number;
  /** Output link, O4 to B. */
  readonly c: number;
  /** Ground, O2 to O4. */
  readonly d: number;
}

/**
 * Which of the two ways to close the loop. `open` is the root with the minus sign in the textbook's half-tangent formula for θ4,
 * `crossed` the one with the plus sign. The names follow the sign alone: drawn out, an `open` loop of some proportions crosses itself.
 */
export type Circuit = 'open' | 'crossed';

/** A point or a vector in the frame above. */
export interface Vector {
  readonly x: number;
  readonly y: number;
}

/** An interval of angles, radians, `from` ≤ `to`; `to` may exceed π where the interval passes through it. */
export interface AngleRange {
  readonly from: number;
  readonly to: number;
}

/** The same linkage with the roles of input and output exchanged, seen from the other side: its θ2 is π − θ4 of this one. */
export function exchanged(fourBar: FourBar): FourBar {
  return { a: fourBar.c, b: fourBar.b, c: fourBar.a, d: fourBar.d };
}

/** True when every length is a finite number and none is zero, with `b` and `d` positive. */
export function isUsable({ a, b, c, d }: FourBar): boolean {
  return Number.isFinite(a) && Number.isFinite(b) && Number.isFinite(c) && Number.isFinite(d) && a !== 0 && c !== 0 && b > 0 && d > 0;
}

/** The angle brought to (−π, π]. */
export function wrapped(angle: number): number {
  const turned = angle - TURN * Math.round(angle / TURN);
  return turned <= -Math.PI ? turned + TURN : turned;
}

/** One full turn, radians. */
export const TURN = 2 * Math.PI;
