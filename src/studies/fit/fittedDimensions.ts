/** The dimensions as the readings have them: each with its standard error, how much of its tolerance is left, and their covariance. */
import { createBuild } from '../../kinematics/createBuild.ts';
import type { Mechanism } from '../../kinematics/model.ts';
import { covarianceOf, isOpen } from '../../numeric/singularValues.ts';
import { whatCannotBe, type CannotBe } from './cannotBe.ts';
import { drawnRodLength } from './drawnRodLength.ts';
import { leastOf, posteriorOf, type Estimate } from './estimate.ts';
import type { Unknown } from './unknowns.ts';

export interface FittedDimension extends Unknown {
  /** As the car has it, SI. */
  readonly value: number;
  /** m, of a rod that the file leaves as drawn: how long it is with all that was found; undefined of anything else. */
  readonly length: number | undefined;
  /** SI; Infinity where neither the readings nor a tolerance tell. */
  readonly error: number;
  /** Error over the standard deviation of the tolerance; undefined without one. */
  readonly left: number | undefined;
  /** Whether it lies beyond its tolerance by more than two standard errors, or what was found is without it; undefined without one. */
  readonly beyond: boolean | undefined;
  /** Whether the readings contradict its tolerance, so that what was found is of the readings alone. */
  readonly isContradicted: boolean;
  /** Whether it is held at 0, where the readings would have less within their error. */
  readonly isAtBound: boolean;
  /** What no car has; undefined where it can be. */
  readonly cannotBe: CannotBe | undefined;
}

export interface FittedDimensions {
  readonly all: readonly FittedDimension[];
  /** Rows one after another, SI; what is open is left out of it. */
  readonly covariance: Float64Array;
}

export interface AsGiven {
  /** The unknowns with the tolerances that the file gives. */
  readonly given: readonly Unknown[];
  /** Indices of those that are held at 0. */
  readonly held: ReadonlySet<number>;
}

/** @param unknowns as they were found @param weights 1 for the readings that count */
export function fittedDimensions(
  mechanism: Mechanism,
  unknowns: readonly Unknown[],
  at: Estimate,
  weights: Float64Array,
  { given, held }: AsGiven,
): FittedDimensions {
  const n = unknowns.length;
  const posterior = posteriorOf(unknowns, at, weights);
  const least = leastOf(posterior);
  const scaled = covarianceOf(posterior, least);
  const covariance = scaled.map((value, i) => value * unknowns[Math.floor(i / n)]!.scale * unknowns[i % n]!.scale);
  const car = Float64Array.from(mechanism.nominal);
  unknowns.forEach(({ index }, j) => (car[index] = at.values[j]!));
  const build = createBuild(mechanism, car);
  const errors = unknowns.map((_, j) => (isOpen(posterior, j, least) ? Infinity : Math.sqrt(covariance[j * n + j]!)));
  const cannotBe = whatCannotBe(build, (index) => errors[unknowns.findIndex((each) => each.index === index)] ?? Infinity);
  const all = unknowns.map((unknown, j): FittedDimension => {
    const { prior } = unknown;
    const value = at.values[j]!;
    const error = errors[j]!;
    const isContradicted = prior === undefined && given[j]!.prior !== undefined;
    return {
      ...unknown,
      prior: given[j]!.prior,
      value,
      length: drawnRodLength(build, unknown.index),
      error,
      left: prior && error / prior.deviation,
      beyond: isContradicted || (prior && Math.abs(value - prior.middle) - prior.half > 2 * error),
      isContradicted,
      isAtBound: held.has(j),
      cannotBe: cannotBe.get(unknown.index),
    };
  });
  return { all, covariance };
}

/**
 * Whether the fit went away from the file along a dimension that it then lost from sight: where a sensor is at its end, say, or a lever on
 * its stop, no reading changes any more, and any place there is as good. @param dimension that nothing tells
 */
export function hasStrayed({ value, nominal, scale }: FittedDimension): boolean {
  return Math.abs(value - nominal) > STRAYED * scale;
}

/** Of the scale of a dimension; less is what the noise of readings does that tell it to one side only. Common practice, no source. */
const STRAYED = 0.1;
