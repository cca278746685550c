/**
 * Zeros and extremes of trigonometric polynomials of the second degree,
 *     g(φ) = a₀ + a₁ cos φ + b₁ sin φ + a₂ cos 2φ + b₂ sin 2φ.
 *
 * What the angles of a linkage depend on is of this form, so that its turning points are the roots of a quartic in
 * τ = tan(φ/2): all of them, not only those between stations.
 */
import { bracketedRoot } from './roots.ts';

/** a₀, a₁, b₁, a₂, b₂. */
export type TrigPolynomial = readonly [number, number, number, number, number];

/** The polynomial through a function that is one, from its values at five places. */
export function trigPolynomialOf(f: (angle: number) => number): TrigPolynomial {
  const sums = [0, 0, 0, 0, 0];
  for (let k = 0; k < 5; k++) {
    const angle = (2 * Math.PI * k) / 5;
    const value = f(angle);
    sums[0]! += value / 5;
    sums[1]! += (2 / 5) * value * Math.cos(angle);
    sums[2]! += (2 / 5) * value * Math.sin(angle);
    sums[3]! += (2 / 5) * value * Math.cos(2 * angle);
    sums[4]! += (2 / 5) * value * Math.sin(2 * angle);
  }
  return [sums[0]!, sums[1]!, sums[2]!, sums[3]!, sums[4]!];
}

export function trigValue([a0, a1, b1, a2, b2]: TrigPolynomial, angle: number): number {
  return a0 + a1 * Math.cos(angle) + b1 * Math.sin(angle) + a2 * Math.cos(2 * angle) + b2 * Math.sin(2 * angle);
}

export function trigDerivative([, a1, b1, a2, b2]: TrigPolynomial): TrigPolynomial {
  return [0, b1, -a1, 2 * b2, -2 * a2];
}

/** Where it is zero, in (−π, π], rising; a zero that is only touched counts. Empty for one that is zero everywhere. */
export function trigRoots(g: TrigPolynomial): readonly number[] {
  const size = Math.max(...g.map(Math.abs));
  if (!(size > 0) || !Number.isFinite(size)) return [];
  // τ is infinite at half a turn from the origin, so the origin is put where that place is farthest from a zero.
  let origin = 0;
  let farthest = -1;
  for (let k = 0; k < 8; k++) {
    const angle = (Math.PI * k) / 4;
    const value = Math.abs(trigValue(g, angle));
    if (value > farthest) {
      farthest = value;
      origin = angle - Math.PI;
    }
  }
  const [a0, a1, b1, a2, b2] = turned(g, origin);
  const quartic = [a0 + a1 + a2, 2 * b1 + 4 * b2, 2 * a0 - 6 * a2, 2 * b1 - 4 * b2, a0 - a1 + a2];
  const slope = trigDerivative(g);
  const roots = polynomialRoots(quartic).map((t) => wrapped(polished(g, slope, origin + 2 * Math.atan(t))));
  return [...new Set(roots)].sort((x, y) => x - y);
}

/** Where it is greatest or least, locally, in (−π, π], rising. */
export function trigExtremes(g: TrigPolynomial): readonly number[] {
  return trigRoots(trigDerivative(g));
}

/** The same function with its angle counted from `origin`. */
function turned([a0, a1, b1, a2, b2]: TrigPolynomial, origin: number): TrigPolynomial {
  const c = Math.cos(origin);
  const s = Math.sin(origin);
  const c2 = Math.cos(2 * origin);
  const s2 = Math.sin(2 * origin);
  return [a0, a1 * c + b1 * s, b1 * c - a1 * s, a2 * c2 + b2 * s2, b2 * c2 - a2 * s2];
}

function polished(g: TrigPolynomial, slope: TrigPolynomial, angle: number): number {
  let best = angle;
  for (let step = 0; step < 3; step++) {
    const next = best - trigValue(g, best) / trigValue(slope, best);
    if (!(Math.abs(trigValue(g, next)) < Math.abs(trigValue(g, best)))) break;
    best = next;
  }
  return best;
}

function wrapped(angle: number): number {
  const turn = 2 * Math.PI;
  const within = angle - turn * Math.ceil((angle - Math.PI) / turn);
  return within === -Math.PI ? Math.PI : within;
}

/**
 * Real roots of Σ cᵢ xⁱ, rising. Between neighbouring roots of its derivative a polynomial is monotone, so each stretch holds one
 * root at the most; a turning point that only touches zero, to rounding, is one too.
 */
export function polynomialRoots(coefficients: readonly number[]): readonly number[] {
  const size = Math.max(...coefficients.map(Math.abs));
  let degree = coefficients.length - 1;
  while (degree > 0 && Math.abs(coefficients[degree]!) <= NOTHING * size) degree--;
  if (degree === 0) return [];
  const c = coefficients.slice(0, degree + 1);
  if (degree === 1) return [-c[0]! / c[1]!];
  const value = (x: number): number => {
    let sum = 0;
    for (let i = degree; i >= 0; i--) sum = sum * x + c[i]!;
    return sum;
  };
  // Coefficients come from sums, so a small one is as uncertain as the greatest.
  const scale = (x: number): number => {
    let sum = 0;
    for (let i = degree; i >= 0; i--) sum = sum * Math.abs(x) + size;
    return sum;
  };
  // Cauchy's bound: no root lies farther out.
  const bound = 1 + Math.max(...c.slice(0, -1).map(Math.abs)) / Math.abs(c[degree]!);
  const turns = polynomialRoots(c.slice(1).map((each, i) => each * (i + 1)));
  const places = [-bound, ...turns, bound];
  const roots: number[] = [];
  for (let i = 1; i < places.length; i++) {
    const low = places[i - 1]!;
    const high = places[i]!;
    const atLow = value(low);
    const atHigh = value(high);
    if (i > 1 && Math.abs(atLow) <= TOUCH * scale(low)) roots.push(low);
    else if (atLow > 0 !== atHigh > 0 && Math.abs(atHigh) > TOUCH * scale(high))
      roots.push(bracketedRoot(value, low, atLow, high, atHigh, 0));
  }
  return roots;
}

/** A leading coefficient this small against the greatest is none. */
const NOTHING = 1e-15;
/** A value this small against what its terms could be is zero. */
const TOUCH = 1e-14;
