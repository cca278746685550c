/**
 * Where a lever starts to open: the pedal travel at which slack and lag are taken up and its stop is left.
 */
import type { Travel } from '../travel/travel.ts';

/**
 * A fraction; undefined where the lever never opens further. Derivatives there are those of its movement. The places where slack and
 * lag end are among the travel's samples; a lever that starts from a dead centre, and with no speed, is met a sample later.
 */
export function startOfOpening({ mechanism, samples, poseAt }: Travel, lever: number): number | undefined {
  const sense = mechanism.senses[lever]!;
  return samples.find((travel) => sense * poseAt(travel).rate[lever]! > 0);
}
