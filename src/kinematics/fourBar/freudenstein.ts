/**
 * Freudenstein's equation: a planar four-bar from pairs of input and output angles.
 *
 *   K1·cos ψ − K2·cos φ + K3 = cos(φ − ψ),   K1 = d/a,  K2 = d/c,  K3 = (a² − b² + c² + d²)/(2ac)
 *
 * with φ = θ2 and ψ = θ4. It is linear in K: three pairs give one linkage, more than three the one with the least sum of squares
 * of what is left of the equation, which is not the least error of the angle. (Freudenstein 1955, by way of the textbooks, from
 * memory.) The ground is 1 long; a negative `a` or `c` means that this link's angle is offset by π.
 */
import type { FourBar } from './fourBar.ts';

/** Input angle φ and the output angle ψ wanted there, both anticlockwise from the ground line, radians. */
export interface AnglePair {
  readonly phi: number;
  readonly psi: number;
}

export interface FreudensteinConstants {
  readonly k1: number;
  readonly k2: number;
  readonly k3: number;
}

export type SynthesisFailure =
  | 'too-few-points'
  | 'not-finite'
  | 'repeated-points'
  /** The points leave the three constants undetermined: (cos ψ, cos φ) lie on one line. */
  | 'singular'
  /** A link would have to be endless: K1 or K2 vanishes. */
  | 'endless-link'
  /** No coupler of real, positive length. */
  | 'no-coupler'
  /** The three couplers measured at the three points differ: the points hardly determine the linkage. */
  | 'ill-conditioned';

export interface Failed {
  readonly kind: 'failed';
  readonly failure: SynthesisFailure;
  readonly message: string;
}

export interface Synthesised {
  readonly kind: 'linkage';
  readonly constants: FreudensteinConstants;
  /** In units of the ground, `d` = 1. */
  readonly fourBar: FourBar;
  /** Coupler as measured at each point, |B − A| there; with three points they agree. */
  readonly couplers: readonly number[];
  /** Greatest of what is left of the equation at the points, without unit. */
  readonly residual: number;
}

export type Synthesis = Synthesised | Failed;

/** Points this close together, radians in both angles, count as one. */
export const REPEATED_ANGLE = 1e-9;

/** Part of a column of the equations that must stand off the columns before it; below it the constants are undetermined. */
export const SINGULAR_TOLERANCE = 1e-10;

/** A link more than this many times as long as the ground counts as endless. */
export const ENDLESS_RATIO = 1e8;

/** Greatest difference of the three couplers, in parts of the longest link. */
export const COUPLER_SPREAD = 1e-7;

/**
 * The `count` points of Chebyshev's spacing between `from` and `to`, rising from `from`; none lies on an end:
 * xⱼ = (x₀ + xₙ)/2 − (xₙ − x₀)/2 · cos((2j − 1)π/(2n)). Empty for a count that is no positive whole number.
 */
export function chebyshevPoints(from: number, to: number, count: number): readonly number[] {
  if (!Number.isSafeInteger(count) || count < 1 || count > MOST_POINTS) return [];
  const middle = (from + to) / 2;
  const half = (to - from) / 2;
  return Array.from({ length: count }, (_, j) => middle - half * Math.cos(((2 * j + 1) * Math.PI) / (2 * count)));
}

/** The constants K of a given linkage. */
export function freudensteinConstants({ a, b, c, d }: FourBar): FreudensteinConstants {
  return { k1: d / a, k2: d / c, k3: (a * a - b * b + c * c + d * d) / (2 * a * c) };
}

/** What is left of the equation at a pair of angles: 0 where the linkage passes through it. */
export function freudensteinResidual({ k1, k2, k3 }: FreudensteinConstants, { phi, psi }: AnglePair): number {
  return k1 * Math.cos(psi) - k2 * Math.cos(phi) + k3 - Math.cos(phi - psi);
}

/** The linkage through three pairs, or of least squares for more. Which circuit meets them, and whether one does, is `followBranch`'s to say. */
export function synthesise(pairs: readonly AnglePair[]): Synthesis {
  if (pairs.length < 3) return failed('too-few-points', `Freudenstein's equation needs three points; there are ${pairs.length}.`);
  if (pairs.some(({ phi, psi }) => !Number.isFinite(phi) || !Number.isFinite(psi))) {
    return failed('not-finite', 'An angle of a point is not a finite number.');
  }
  if (distinct(pairs) < 3) return failed('repeated-points', 'Fewer than three different points are left once equal ones are counted once.');
  const constants = solveConstants(pairs);
  if (constants === undefined) return failed('singular', 'The points do not determine the links: cos φ and cos ψ lie on one line.');
  const { k1, k2, k3 } = constants;
  if (!(Math.min(Math.abs(k1), Math.abs(k2)) * ENDLESS_RATIO > 1)) {
    return failed('endless-link', `The ${Math.abs(k1) < Math.abs(k2) ? 'input' : 'output'} link would have to be endlessly long.`);
  }
  const a = 1 / k1;
  const c = 1 / k2;
  const couplers = pairs.map(({ phi, psi }) =>
    Math.hypot(1 + c * Math.cos(psi) - a * Math.cos(phi), c * Math.sin(psi) - a * Math.sin(phi)),
  );
  const squared = a * a + c * c + 1 - 2 * a * c * k3;
  const b = pairs.length === 3 ? couplers.reduce((sum, length) => sum + length, 0) / 3 : Math.sqrt(Math.max(0, squared));
  const longest = Math.max(Math.abs(a), Math.abs(c), 1);
  if (!(b > longest / ENDLESS_RATIO)) return failed('no-coupler', 'No coupler of positive length fits the points.');
  if (pairs.length === 3 && Math.max(...couplers) - Math.min(...couplers) > COUPLER_SPREAD * longest) {
    return failed('ill-conditioned', 'The three points ask for couplers of different length: they hardly determine the links.');
  }
  const residual = Math.max(...pairs.map((pair) => Math.abs(freudensteinResidual(constants, pair))));
  return { kind: 'linkage', constants, fourBar: { a, b, c, d: 1 }, couplers, residual };
}

/** More points than any curve has use for; keeps a slip of the hand from filling the memory. */
const MOST_POINTS = 10_000;

function failed(failure: SynthesisFailure, message: string): Failed {
  return { kind: 'failed', failure, message };
}

function distinct(pairs: readonly AnglePair[]): number {
  const kept: AnglePair[] = [];
  for (const pair of pairs) {
    const seen = kept.some(({ phi, psi }) => sameDirection(phi, pair.phi) && sameDirection(psi, pair.psi));
    if (!seen) kept.push(pair);
    if (kept.length === 3) break;
  }
  return kept.length;
}

function sameDirection(one: number, other: number): boolean {
  return Math.abs(Math.sin((one - other) / 2)) <= REPEATED_ANGLE / 2;
}

/** Orthogonal columns (modified Gram–Schmidt) and, for the digits lost on nearly equal points, twice what is still missing on top. */
function solveConstants(pairs: readonly AnglePair[]): FreudensteinConstants | undefined {
  const columns = [pairs.map(() => 1), pairs.map(({ psi }) => Math.cos(psi)), pairs.map(({ phi }) => -Math.cos(phi))];
  const factors = orthogonalise(columns);
  if (factors === undefined) return undefined;
  let constants: FreudensteinConstants = { k1: 0, k2: 0, k3: 0 };
  for (let pass = 0; pass < 3; pass++) {
    const missing = pairs.map((pair) => -freudensteinResidual(constants, pair));
    const [k3, k1, k2] = solveTriangle(factors, missing);
    constants = { k1: constants.k1 + k1, k2: constants.k2 + k2, k3: constants.k3 + k3 };
  }
  return constants;
}

interface Factors {
  /** Unit columns, square to each other. */
  readonly basis: readonly (readonly number[])[];
  /** What of each column lies along each basis column up to its own: `triangle[column][basis]`. */
  readonly triangle: readonly (readonly number[])[];
}

function orthogonalise(columns: readonly (readonly number[])[]): Factors | undefined {
  const basis: (readonly number[])[] = [];
  const triangle: (readonly number[])[] = [];
  for (const column of columns) {
    let rest: readonly number[] = column;
    const shares: number[] = [];
    for (const unit of basis) {
      const share = dot(unit, rest);
      shares.push(share);
      rest = rest.map((value, i) => value - share * (unit[i] ?? 0));
    }
    const length = Math.sqrt(dot(rest, rest));
    if (!(length > SINGULAR_TOLERANCE * Math.sqrt(column.length))) return undefined;
    shares.push(length);
    triangle.push(shares);
    basis.push(rest.map((value) => value / length));
  }
  return { basis, triangle };
}

function solveTriangle({ basis, triangle }: Factors, right: readonly number[]): [number, number, number] {
  let rest = right;
  const along = basis.map((unit) => {
    const share = dot(unit, rest);
    rest = rest.map((value, i) => value - share * (unit[i] ?? 0));
    return share;
  });
  const entry = (column: number, row: number): number => triangle[column]?.[row] ?? 0;
  const [first = 0, second = 0, third = 0] = along;
  const z = third / entry(2, 2);
  const y = (second - entry(2, 1) * z) / entry(1, 1);
  const x = (first - entry(1, 0) * y - entry(2, 0) * z) / entry(0, 0);
  return [x, y, z];
}

function dot(one: readonly number[], other: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < one.length; i++) sum += (one[i] ?? 0) * (other[i] ?? 0);
  return sum;
}
