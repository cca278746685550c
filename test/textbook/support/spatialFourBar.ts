/**
 * The spatial four-bar with ball joints by itself, written apart from the engine so that one can check the other:
 * |B(ψ) − A(θ)| = L with B turning about its axis is A·cos ψ + B·sin ψ = C.
 */
import type { SpatialLever } from '../values/spatial.ts';

type Triple = readonly [number, number, number];

/** Both rotations of the output at which the rod fits; empty when it is too short or too long. Radians in (−π, π]. */
export function outputRotations(input: SpatialLever, output: SpatialLever, rod: number, theta: number): readonly number[] {
  const from = ballAt(input, theta);
  const arm = minus(output.ball, output.pivot);
  const along = scaled(output.axis, dot(arm, output.axis));
  const across = minus(arm, along);
  const ahead = cross(output.axis, arm);
  // B − A = rest + across·cos ψ + ahead·sin ψ
  const rest = minus(plus(output.pivot, along), from);
  const cosineShare = 2 * dot(rest, across);
  const sineShare = 2 * dot(rest, ahead);
  const constant = rod * rod - dot(rest, rest) - dot(across, across);
  const size = Math.hypot(cosineShare, sineShare);
  if (Math.abs(constant) > size) return [];
  const middle = Math.atan2(sineShare, cosineShare);
  const off = Math.acos(constant / size);
  return [middle - off, middle + off].map((angle) => Math.atan2(Math.sin(angle), Math.cos(angle)));
}

/** Place of a lever's ball after a right-handed rotation, by Rodrigues' formula. */
export function ballAt(lever: SpatialLever, rotation: number): Triple {
  const arm = minus(lever.ball, lever.pivot);
  const turned = plus(
    plus(scaled(arm, Math.cos(rotation)), scaled(cross(lever.axis, arm), Math.sin(rotation))),
    scaled(lever.axis, dot(lever.axis, arm) * (1 - Math.cos(rotation))),
  );
  return plus(lever.pivot, turned);
}

export function distance(one: Triple, other: Triple): number {
  return Math.hypot(...minus(one, other));
}

function dot(one: Triple, other: Triple): number {
  return one[0] * other[0] + one[1] * other[1] + one[2] * other[2];
}

function plus(one: Triple, other: Triple): Triple {
  return [one[0] + other[0], one[1] + other[1], one[2] + other[2]];
}

function minus(one: Triple, other: Triple): Triple {
  return [one[0] - other[0], one[1] - other[1], one[2] - other[2]];
}

function scaled(vector: Triple, by: number): Triple {
  return [vector[0] * by, vector[1] * by, vector[2] * by];
}

function cross(one: Triple, other: Triple): Triple {
  return [one[1] * other[2] - one[2] * other[1], one[2] * other[0] - one[0] * other[2], one[0] * other[1] - one[1] * other[0]];
}
