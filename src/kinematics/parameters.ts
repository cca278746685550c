/** Dimensions into the parameter vector, by the mechanism's tape. */
import type { Build } from './build.ts';

/** Fills the parameters that the tape computes. Does not allocate. */
export function evaluateParameters(build: Build): void {
  const { mechanism, values, slots, parameters } = build;
  const { outputs } = mechanism;
  mechanism.tape.evaluate(values, slots);
  for (let i = 0; i < outputs.length; i++) parameters[i] = slots[outputs[i]!]!;
}

/**
 * Directional derivative of the parameters at the build's dimensions; those that no tape computes do not change.
 * @param direction d values; @param slotRates scratch, as long as the tape; @param into d parameters
 */
export function differentiateParameters(build: Build, direction: Float64Array, slotRates: Float64Array, into: Float64Array): void {
  const { mechanism, slots } = build;
  const { outputs } = mechanism;
  mechanism.tape.differentiate(slots, direction, slotRates);
  for (let i = 0; i < outputs.length; i++) into[i] = slotRates[outputs[i]!]!;
}
