/**
 * A linkage solved over its whole travel: what every column, finding and fact is read from.
 */
import { advance } from '../kinematics/advance.ts';
import type { Build } from '../kinematics/build.ts';
import { createBuild } from '../kinematics/createBuild.ts';
import type { Mechanism } from '../kinematics/model.ts';
import { createPose, type Pose } from '../kinematics/pose.ts';
import { samplesOf } from './extremes.ts';
import { findPlaces, type Places } from './places.ts';
import { settleStops, type Contact } from './stops.ts';

export interface Travel {
  readonly mechanism: Mechanism;
  readonly build: Build;
  readonly contacts: readonly Contact[];
  readonly places: Places;
  /** Travels at which figures are taken: every place where one can turn, and a grid. */
  readonly samples: readonly number[];
  /**
   * The pose at a pedal travel, a fraction; not to be written to. At a sample it is kept; elsewhere one pose is filled again by each
   * call, so read it before the next.
   */
  poseAt(travel: number): Pose;
}

/** @param values dimensions, SI; nominal where absent */
export function solveTravel(mechanism: Mechanism, values?: Float64Array): Travel {
  const build = createBuild(mechanism, values);
  return travelOf(build);
}

/** The travel of a build whose rest is settled. */
export function travelOf(build: Build): Travel {
  const contacts = settleStops(build);
  const places = findPlaces(build);
  const samples = samplesOf(places.all);
  const kept = new Map<number, Pose | undefined>(samples.map((travel) => [travel, undefined]));
  const passing = createPose(build.mechanism);
  return {
    mechanism: build.mechanism,
    build,
    contacts,
    places,
    samples,
    poseAt(travel) {
      const known = kept.get(travel);
      if (known !== undefined) return known;
      const pose = kept.has(travel) ? createPose(build.mechanism) : passing;
      advance(build, travel, pose);
      if (pose !== passing) kept.set(travel, pose);
      return pose;
    },
  };
}
