/**
 * A linkage solved over its whole travel: what every column, finding and fact is read from.
 */
import { advance, advanceTo } from '../kinematics/advance.ts';
import type { Build } from '../kinematics/build.ts';
import { createBuild } from '../kinematics/createBuild.ts';
import type { Mechanism } from '../kinematics/model.ts';
import { createPose, type Pose } from '../kinematics/pose.ts';
import { samplesOf } from './extremes.ts';
import { createFinder, findPlaces, type Places } from './places.ts';
import { stationFinder } from './stations.ts';
import { settleStops, type Contact } from './stops.ts';

export interface Travel {
  readonly mechanism: Mechanism;
  readonly build: Build;
  readonly contacts: readonly Contact[];
  readonly places: Places;
  /** Travels at which figures are taken: every place where one can turn, and a grid. */
  readonly samples: readonly number[];
  /**
   * The pose at a pedal travel, a fraction. It may be filled again by the next call: read it before.
   * @param lever to which alone it must be right, as far as the parts reach that lead there from the pedal; all where absent
   */
  poseAt(travel: number, lever?: number): Pose;
}

/** @param values dimensions, SI; nominal where absent */
export function solveTravel(mechanism: Mechanism, values?: Float64Array): Travel {
  const build = createBuild(mechanism, values);
  return travelOf(build);
}

/** The travel of a build whose rest is settled. @param anew groups whose stops are to be settled, as for `settleStops` */
export function travelOf(build: Build, anew?: ReadonlySet<number>): Travel {
  const finder = createFinder(build);
  const contacts = settleStops(build, finder, anew);
  const pose = createPose(build.mechanism);
  let places: Places | undefined;
  let samples: readonly number[] | undefined;
  /** Poses at the samples, which every column is read at. */
  const known: (Pose | undefined)[] = [];
  let numberOf: (at: number) => number = () => -1;
  // Both are found when first asked for: a search that wants one station of many builds has no use for them.
  const travel: Travel = {
    mechanism: build.mechanism,
    build,
    contacts,
    get places() {
      return (places ??= findPlaces(build, finder));
    },
    get samples() {
      if (samples !== undefined) return samples;
      samples = samplesOf(travel.places.all);
      numberOf = stationFinder(samples);
      return samples;
    },
    poseAt(at, lever) {
      const number = numberOf(at);
      if (number < 0) {
        if (lever === undefined) advance(build, at, pose);
        else advanceTo(build, at, pose, build.mechanism.levers[lever]!.driver);
        return pose;
      }
      const before = known[number];
      if (before !== undefined) return before;
      const own = createPose(build.mechanism);
      advance(build, at, own);
      known[number] = own;
      return own;
    },
  };
  return travel;
}
