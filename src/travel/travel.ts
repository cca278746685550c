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
  /** The pose at a pedal travel, a fraction. It may be filled again by the next call: read it before. */
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
  let places: Places | undefined;
  let samples: readonly number[] | undefined;
  /** Poses at the samples, which every column is read at. */
  const known = new Map<number, Pose | undefined>();
  // Both are found when first asked for: a search that wants one station of many builds has no use for them.
  const travel: Travel = {
    mechanism: build.mechanism,
    build,
    contacts,
    get places() {
      return (places ??= findPlaces(build));
    },
    get samples() {
      if (samples !== undefined) return samples;
      samples = samplesOf(travel.places.all);
      for (const at of samples) known.set(at, undefined);
      return samples;
    },
    poseAt(at) {
      const before = known.get(at);
      if (before !== undefined) return before;
      const own = known.has(at) ? createPose(build.mechanism) : pose;
      advance(build, at, own);
      if (own !== pose) known.set(at, own);
      return own;
    },
  };
  return travel;
}
