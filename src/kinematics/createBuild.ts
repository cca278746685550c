/** Puts dimensions into a mechanism. */
import { decideBranches } from './branches.ts';
import { createBounds, type Build } from './build.ts';
import type { Mechanism } from './model.ts';
import { evaluateParameters } from './parameters.ts';
import { settleRest } from './rest.ts';

/**
 * A build with the given dimensions (SI, as many as `mechanism.dimensions`), nominal where none are given, at rest as its closed
 * stops and rods have it. Open stops are settled along the travel, by `settleStops`.
 */
export function createBuild(mechanism: Mechanism, values: Float64Array = mechanism.nominal): Build {
  const build: Build = {
    mechanism,
    values: Float64Array.from(values),
    parameters: new Float64Array(mechanism.parameterCount),
    slots: new Float64Array(mechanism.tape.slotCount),
    bounds: createBounds(mechanism),
  };
  settle(build);
  return build;
}

/**
 * Puts other dimensions into a build that stands already; open stops must be settled again.
 * @param shift moves parameters off what the dimensions give, such as a pin within its play
 */
export function putDimensions(build: Build, values: Float64Array, shift?: (parameters: Float64Array) => void): void {
  build.values.set(values);
  settle(build, shift);
}

function settle(build: Build, shift?: (parameters: Float64Array) => void): void {
  evaluateParameters(build);
  shift?.(build.parameters);
  decideBranches(build.mechanism, build.parameters);
  build.bounds.pedalStop = Infinity;
  build.bounds.cableStop.fill(Infinity);
  settleRest(build);
}
