/**
 * Closing torques and the pedal's effort as functions of pedal travel, worked out once at each place for all levers together: several
 * rules and facts speak of them.
 */
import { createStatics, type Statics } from '../forces/closing.ts';
import type { Along } from '../travel/extremes.ts';
import { once, oncePer } from '../travel/once.ts';
import { stationFinder } from '../travel/stations.ts';
import type { Study } from './study.ts';

/** Closing torque at a lever, N·m; the column `<lever>.closing`. */
export const closingAlong = oncePer((study: Study, lever: number): Along => {
  const forcesAt = forcesOf(study);
  return (travel) => forcesAt(travel).closing[lever]! + 0;
});

/** N; the column `pedal.effort`. */
export const effortAlong = once((study: Study): Along => {
  const forcesAt = forcesOf(study);
  return (travel) => forcesAt(travel).effort;
});

type Forces = Pick<Statics, 'closing' | 'effort'>;

/** At the samples they are kept; elsewhere they hold until the next place is asked for. */
const forcesOf = once(({ travel: { build, poseAt, samples } }: Study): ((travel: number) => Forces) => {
  const solver = createStatics(build);
  const numberOf = stationFinder(samples);
  const known: (Forces | undefined)[] = [];
  return (travel) => {
    const number = numberOf(travel);
    const found = known[number];
    if (found !== undefined) return found;
    const forces = solver.at(poseAt(travel));
    if (number < 0) return forces;
    return (known[number] = { closing: Float64Array.from(forces.closing), effort: forces.effort });
  };
});
