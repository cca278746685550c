/**
 * A four-bar whose output angle follows a wanted function of its input, and how well it does.
 *
 *   φ = φ₀ + Δφ·(x − x₀)/(x₁ − x₀),   ψ = ψ₀ + Δψ·(y − y₀)/(y₁ − y₀),   y = f(x)
 *
 * The linkage comes from Freudenstein's equation at the chosen points; the structural error is what its output angle, on the
 * branch through those points, is off everywhere else.
 */
import { wrapped } from './fourBar.ts';
import type { AngleRange, Circuit, FourBar } from './fourBar.ts';
import { followBranch, outputError, repeatsWithin } from './branch.ts';
import type { Branch, BranchDefect } from './branch.ts';
import { chebyshevPoints, synthesise } from './freudenstein.ts';
import type { AnglePair, SynthesisFailure, Synthesised } from './freudenstein.ts';
import { deadCentres, transmissionExtremes } from './limits.ts';
import type { TransmissionExtremes } from './limits.ts';
import { solvePosition } from './position.ts';

/** A function over a range, and the angles it is laid out on; angles in radians, anticlockwise from the ground line. */
export interface WantedFunction {
  readonly f: (x: number) => number;
  readonly x0: number;
  readonly x1: number;
  /** Input angle at `x0` and its change up to `x1`; a negative change turns clockwise. */
  readonly phi0: number;
  readonly dphi: number;
  /** Output angle at `x0` and its change up to `x1`. */
  readonly psi0: number;
  readonly dpsi: number;
}

export interface WantedPoint extends AnglePair {
  readonly x: number;
}

/** What counts as poor; every field may be left out. */
export interface GeneratorLimits {
  /** Least acute transmission angle, radians. Default 40°: textbook minimum, from memory. */
  readonly transmission?: number;
  /** Greatest ratio of two links. Default 10: common practice, no source. */
  readonly linkRatio?: number;
}

export type GeneratorDefect =
  | BranchDefect
  /** The output turns back inside the range while the wanted function does not. */
  | {
      readonly kind: 'turnsBack';
      readonly phi: number;
      readonly x: number;
      /** What it runs the wrong way, radians: the lesser of its travels on either side, as far as the next turning or the range's end. */
      readonly by: number;
    }
  | { readonly kind: 'poorTransmission'; readonly angle: number; readonly limit: number; readonly phi: number; readonly x: number }
  | { readonly kind: 'linkRatio'; readonly ratio: number; readonly limit: number };

export interface StructuralError {
  /** Generated less wanted output angle, radians, in (−π, π]. */
  readonly error: number;
  readonly x: number;
  readonly phi: number;
}

export interface GeneratorReport {
  /** The branch looked at; `undefined` when the loop closes at none of the points, and nothing below is known. */
  readonly branch: Branch | undefined;
  /** The greatest error along that branch, refined between samples. */
  readonly greatest: StructuralError | undefined;
  /** Error of the output angle at each of the points, radians; `undefined` where the point does not lie on the branch. */
  readonly pointErrors: readonly (number | undefined)[];
  /** Over the part of the input's range in which the loop closes. */
  readonly transmission: TransmissionExtremes | undefined;
  /** Longest link over the shortest. */
  readonly linkRatio: number;
  readonly defects: readonly GeneratorDefect[];
}

export interface Generator {
  readonly kind: 'generator';
  readonly linkage: Synthesised;
  readonly points: readonly WantedPoint[];
  readonly report: GeneratorReport;
}

export interface GeneratorFailed {
  readonly kind: 'failed';
  readonly failure: SynthesisFailure | 'bad-range' | 'function-undefined' | 'function-flat' | 'point-outside';
  readonly message: string;
}

export const DEFAULT_TRANSMISSION_LIMIT = (40 * Math.PI) / 180;
export const DEFAULT_LINK_RATIO_LIMIT = 10;

/**
 * Makes a linkage for the function through points of Chebyshev's spacing (`points` a count, default 3) or through chosen x.
 * Three points are met exactly, more by least squares.
 */
export function synthesiseFunction(
  wanted: WantedFunction,
  points: number | readonly number[] = 3,
  limits: GeneratorLimits = {},
): Generator | GeneratorFailed {
  const places = typeof points === 'number' ? chebyshevPoints(wanted.x0, wanted.x1, points) : points;
  const laidOut = layOut(wanted, places);
  if ('kind' in laidOut) return laidOut;
  const linkage = synthesise(laidOut);
  if (linkage.kind === 'failed') return linkage;
  return { kind: 'generator', linkage, points: laidOut, report: assess(linkage.fourBar, wanted, laidOut, limits) };
}

/** How well a given linkage follows the function; the points say which branch is meant. */
export function assessGenerator(
  fourBar: FourBar,
  wanted: WantedFunction,
  points: readonly number[],
  limits: GeneratorLimits = {},
): GeneratorReport | GeneratorFailed {
  const laidOut = layOut(wanted, points);
  return 'kind' in laidOut ? laidOut : assess(fourBar, wanted, laidOut, limits);
}

/** Input and output angle wanted at x; NaN where the function has no value. */
export function wantedAngles({ f, x0, x1, phi0, dphi, psi0, dpsi }: WantedFunction, x: number): AnglePair {
  const y0 = f(x0);
  return { phi: phi0 + (dphi * (x - x0)) / (x1 - x0), psi: psi0 + (dpsi * (f(x) - y0)) / (f(x1) - y0) };
}

function layOut(wanted: WantedFunction, places: readonly number[]): readonly WantedPoint[] | GeneratorFailed {
  const { f, x0, x1, phi0, dphi, psi0, dpsi } = wanted;
  if (![x0, x1, phi0, dphi, psi0, dpsi].every(Number.isFinite) || x0 === x1 || dphi === 0) {
    return failed('bad-range', 'The range of x and the turn of the input must be finite and not empty.');
  }
  const ends = [f(x0), f(x1)] as const;
  if (!ends.every(Number.isFinite)) return failed('function-undefined', 'The function has no value at an end of its range.');
  if (ends[0] === ends[1])
    return failed('function-flat', 'The function has the same value at both ends, so no output angle follows from it.');
  const outside = places.find((x) => !(x >= Math.min(x0, x1) && x <= Math.max(x0, x1)));
  if (outside !== undefined) return failed('point-outside', `The point x = ${outside} lies outside the range.`);
  const points = places.map((x) => ({ x, ...wantedAngles(wanted, x) }));
  const undefinedAt = points.find(({ psi }) => !Number.isFinite(psi));
  return undefinedAt === undefined ? points : failed('function-undefined', `The function has no value at x = ${undefinedAt.x}.`);
}

function failed(failure: GeneratorFailed['failure'], message: string): GeneratorFailed {
  return { kind: 'failed', failure, message };
}

function assess(fourBar: FourBar, wanted: WantedFunction, points: readonly WantedPoint[], limits: GeneratorLimits): GeneratorReport {
  const range: AngleRange = {
    from: Math.min(wanted.phi0, wanted.phi0 + wanted.dphi),
    to: Math.max(wanted.phi0, wanted.phi0 + wanted.dphi),
  };
  const xAt = (phi: number): number => wanted.x0 + ((wanted.x1 - wanted.x0) * (phi - wanted.phi0)) / wanted.dphi;
  const { branch, defects: branchDefects } = followBranch(fourBar, points, range);
  const transmission = transmissionExtremes(fourBar, range);
  const lengths = [fourBar.a, fourBar.b, fourBar.c, fourBar.d].map(Math.abs);
  const linkRatio = Math.max(...lengths) / Math.min(...lengths);

  const defects: GeneratorDefect[] = [...branchDefects];
  if (branch !== undefined && isMonotone(wanted)) {
    for (const { phi, by } of turningPlaces(fourBar, branch)) defects.push({ kind: 'turnsBack', phi, x: xAt(phi), by });
  }
  const { transmission: poor = DEFAULT_TRANSMISSION_LIMIT, linkRatio: extreme = DEFAULT_LINK_RATIO_LIMIT } = limits;
  if (transmission !== undefined && transmission.poorest.angle < poor) {
    const { angle, theta2 } = transmission.poorest;
    defects.push({ kind: 'poorTransmission', angle, limit: poor, phi: theta2, x: xAt(theta2) });
  }
  if (linkRatio > extreme) defects.push({ kind: 'linkRatio', ratio: linkRatio, limit: extreme });
  return {
    branch,
    greatest: branch && greatestError(fourBar, wanted, branch),
    pointErrors: points.map((pair, index) => (branch?.points.includes(index) ? outputError(fourBar, branch.circuit, pair) : undefined)),
    transmission,
    linkRatio,
    defects,
  };
}

/** Input angles strictly inside the branch at which its output stands still, and how far it goes back there. */
function turningPlaces(fourBar: FourBar, { circuit, range }: Branch): readonly { readonly phi: number; readonly by: number }[] {
  const turnings = deadCentres(fourBar)
    .filter((centre) => centre.circuit === circuit && !centre.changePoint)
    .flatMap(({ theta2 }) => repeatsWithin(theta2, range))
    .sort((one, next) => one - next);
  const output = (phi: number): number => solvePosition(fourBar, phi, circuit)?.theta4 ?? NaN;
  return turnings.map((phi, i) => {
    const before = wrapped(output(phi) - output(turnings[i - 1] ?? range.from));
    const after = wrapped(output(turnings[i + 1] ?? range.to) - output(phi));
    return { phi, by: Math.min(Math.abs(before), Math.abs(after)) };
  });
}

/** Judged at the samples: a function is only a black box here. */
function isMonotone(wanted: WantedFunction): boolean {
  let sense = 0;
  let before = wanted.f(wanted.x0);
  for (let i = 1; i <= SAMPLES; i++) {
    const y = wanted.f(wanted.x0 + ((wanted.x1 - wanted.x0) * i) / SAMPLES);
    const step = Math.sign(y - before);
    if (step !== 0 && step === -sense) return false;
    if (step !== 0) sense = step;
    before = y;
  }
  return true;
}

/** Samples the branch evenly, then narrows the highest peaks. At a limit of the input the error is steep but greatest at the end itself. */
function greatestError(fourBar: FourBar, wanted: WantedFunction, { circuit, range }: Branch): StructuralError | undefined {
  const errorAt = errorAlong(fourBar, wanted, circuit);
  const phiAt = (i: number): number => (i === SAMPLES ? range.to : range.from + ((range.to - range.from) * i) / SAMPLES);
  const sampled = Array.from({ length: SAMPLES + 1 }, (_, i) => errorAt(phiAt(i)));
  const height = (i: number): number => Math.abs(sampled[i]?.error ?? 0);
  const peaks = sampled
    .flatMap((_, i) => (height(i) >= height(i - 1) && height(i) >= height(i + 1) ? [i] : []))
    .sort((one, next) => height(next) - height(one))
    .slice(0, PEAKS);
  let greatest: StructuralError | undefined;
  for (const i of peaks) {
    for (const found of [sampled[i], narrow(errorAt, phiAt(Math.max(0, i - 1)), phiAt(Math.min(SAMPLES, i + 1)))]) {
      if (found !== undefined && (greatest === undefined || Math.abs(found.error) > Math.abs(greatest.error))) greatest = found;
    }
  }
  return greatest;
}

type ErrorAt = (phi: number) => StructuralError | undefined;

function errorAlong(fourBar: FourBar, wanted: WantedFunction, circuit: Circuit): ErrorAt {
  const { f, x0, x1, phi0, dphi, psi0, dpsi } = wanted;
  const y0 = f(x0);
  const perY = dpsi / (f(x1) - y0);
  return (phi) => {
    // Held to the range: rounding must not carry a root or a logarithm past its end.
    const x = Math.min(Math.max(x0 + ((x1 - x0) * (phi - phi0)) / dphi, Math.min(x0, x1)), Math.max(x0, x1));
    const error = outputError(fourBar, circuit, { phi, psi: psi0 + perY * (f(x) - y0) });
    return error === undefined || Number.isNaN(error) ? undefined : { error, x, phi };
  };
}

/** Golden-section search for the greatest |error| between two angles. */
function narrow(errorAt: ErrorAt, from: number, to: number): StructuralError | undefined {
  const height = (found: StructuralError | undefined): number => (found === undefined ? -1 : Math.abs(found.error));
  let low = from;
  let high = to;
  let left = errorAt(high - GOLDEN * (high - low));
  let right = errorAt(low + GOLDEN * (high - low));
  for (let step = 0; step < GOLDEN_STEPS; step++) {
    if (height(left) >= height(right)) {
      high = low + GOLDEN * (high - low);
      right = left;
      left = errorAt(high - GOLDEN * (high - low));
    } else {
      low = high - GOLDEN * (high - low);
      left = right;
      right = errorAt(low + GOLDEN * (high - low));
    }
  }
  return height(left) >= height(right) ? left : right;
}

/** Intervals the branch is sampled at: the error of a three-point design has four or five peaks. */
const SAMPLES = 720;
const PEAKS = 12;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** 0.618⁴⁰ of two sample steps is some 1e-11 of the range; the top of a peak is flat, so its height is good to rounding. */
const GOLDEN_STEPS = 40;
