/**
 * Closing torques, their margin over friction and the pedal's effort and release as functions of pedal travel, worked out once at each
 * place for all levers together: several rules and facts speak of them.
 */
import { createFriction, type FrictionStatics } from '../forces/friction/statics.ts';
import type { Pose } from '../kinematics/pose.ts';
import type { Along } from '../travel/extremes.ts';
import { once, oncePer } from '../travel/once.ts';
import { stationFinder } from '../travel/stations.ts';
import type { Travel } from '../travel/travel.ts';
import type { Study } from './study.ts';

/** Closing torque at a lever, N·m; the column `<lever>.closing`. @param without name of a spring that is taken off */
export function closingAlong(study: Study, lever: number, without?: string): Along {
  const returnsAt = without === undefined ? forcesOf(study) : returnsOf(study, without);
  return (travel) => returnsAt(travel).closing[lever]! + 0;
}

/** N; the column `pedal.effort`. */
export const effortAlong = once((study: Study): Along => {
  const forcesAt = forcesOf(study);
  return (travel) => forcesAt(travel).effort;
});

/** N; the column `pedal.release`. */
export const releaseAlong = once((study: Study): Along => {
  const forcesAt = forcesOf(study);
  return (travel) => forcesAt(travel).release;
});

/** Closing torque over friction at a lever, as `FrictionStatics.margin`. @param without name of a spring that is taken off */
export function marginAlong(study: Study, lever: number, without?: string): Along {
  const returnsAt = without === undefined ? forcesOf(study) : returnsOf(study, without);
  return (travel) => returnsAt(travel).margin[lever]!;
}

/** Tension in a cable's pedal end while the pedal is pressed, N. */
export function tensionAlong(study: Study, cable: number): Along {
  const forcesAt = forcesOf(study);
  return (travel) => forcesAt(travel).tension[cable]! + 0;
}

/** What brings the levers back. */
interface Returns {
  readonly closing: Float64Array;
  readonly margin: Float64Array;
}

interface Forces extends Returns {
  readonly tension: Float64Array;
  readonly effort: number;
  readonly release: number;
}

const forcesOf = once(({ travel }: Study): ((travel: number) => Forces) => {
  const solver = createFriction(travel.build);
  return kept(
    travel,
    (pose) => forcesIn(solver.at(pose)),
    (forces) => ({
      ...forces,
      closing: forces.closing.slice(),
      margin: forces.margin.slice(),
      tension: forces.tension.slice(),
    }),
  );
});

function forcesIn({ frictionless: { closing }, pressing: { tension }, margin, effort, release }: FrictionStatics): Forces {
  return { closing, margin, tension, effort, release };
}

/** With a spring taken off. */
const returnsOf = oncePer(({ travel }: Study, without: string): ((travel: number) => Returns) => {
  const solver = createFriction(travel.build);
  return kept(
    travel,
    (pose) => {
      const { frictionless, margin } = solver.comingBack(pose, without);
      return { closing: frictionless.closing, margin };
    },
    ({ closing, margin }) => ({ closing: closing.slice(), margin: margin.slice() }),
  );
});

/** At the samples they are kept; elsewhere they hold until the next place is asked for. */
function kept<Found>({ poseAt, samples }: Travel, find: (pose: Pose) => Found, keep: (found: Found) => Found): (travel: number) => Found {
  const numberOf = stationFinder(samples);
  const known: (Found | undefined)[] = [];
  return (travel) => {
    const number = numberOf(travel);
    const before = known[number];
    if (before !== undefined) return before;
    const found = find(poseAt(travel));
    return number < 0 ? found : (known[number] = keep(found));
  };
}
