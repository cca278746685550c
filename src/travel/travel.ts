/**
 * A linkage solved over its whole travel: what every column, finding and fact is read from.
 */
import { advance } from '../kinematics/advance.ts';
import type { Build } from '../kinematics/build.ts';
import { createBuild } from '../kinematics/createBuild.ts';
import type { Mechanism } from '../kinematics/model.ts';
import { createPose, type Pose } from '../kinematics/pose.ts';
import { findPlaces, type Places } from './places.ts';
import { settleStops, type Contact } from './stops.ts';

export interface Travel {
  readonly mechanism: Mechanism;
  readonly build: Build;
  readonly contacts: readonly Contact[];
  readonly places: Places;
  /** The pose at a pedal travel, a fraction. One pose is filled again by each call: read it before the next. */
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
  const pose = createPose(build.mechanism);
  return {
    mechanism: build.mechanism,
    build,
    contacts,
    places: findPlaces(build),
    poseAt(travel) {
      advance(build, travel, pose);
      return pose;
    },
  };
}
