/**
 * Torques and forces that grow without bound. At a dead centre one lever turns infinitely faster than another, and what a spring on it
 * brings to the other has no greatest: whatever figure stands nearest to that place is rounding, and is told as none.
 */
import type { Extreme } from '../travel/extremes.ts';
import { newtonMillimetres } from './words.ts';

/** N·m and N; met only where a dead centre lies within the last bits of the travel. */
const UNBOUNDED = { torque: 1e4, force: 1e5 } as const;

export function isUnbounded(value: number, dimension: keyof typeof UNBOUNDED): boolean {
  return Math.abs(value) > UNBOUNDED[dimension];
}

/** E.g. `by up to 531 N·mm`, or `without bound`; of a torque that opens, N·m below 0. */
export function openingWords(torque: number): string {
  return isUnbounded(torque, 'torque') ? 'without bound' : `by up to ${newtonMillimetres(-torque)}`;
}

/** A torque as the worst figure of a finding; nothing where it is without bound. */
export function worstTorque(worst: Extreme): { readonly worst?: Extreme & { readonly dimension: 'torque' } } {
  return isUnbounded(worst.value, 'torque') ? {} : { worst: { ...worst, dimension: 'torque' } };
}
