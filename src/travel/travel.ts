/**
 * A linkage solved over its whole travel: what every column, finding and fact is read from.
 */
import { advance, advanceTo } from '../kinematics/advance.ts';
import type { Build } from '../kinematics/build.ts';
import { createBuild } from '../kinematics/createBuild.ts';
import type { Mechanism } from '../kinematics/model.ts';
import { createPose, createPoses, type Pose } from '../kinematics/pose.ts';
import { askedFor, type Asked } from '../numeric/askedFor.ts';
import { keptOn } from '../numeric/keptOn.ts';
import { samplesOf } from './extremes.ts';
import { createKnown, createMemory, hasSamePath, type Known, type Memory } from './memory.ts';
import { createFinder, findPlaces, placesTo, type Finder, type Places } from './places.ts';
import { stationFinder } from './stations.ts';
import { settleStops, type Contact } from './stops.ts';
import { poseFiller, type FillPose } from './takeOver.ts';

export interface Travel {
  readonly mechanism: Mechanism;
  readonly build: Build;
  readonly contacts: readonly Contact[];
  readonly places: Places;
  /** Travels at which figures are taken: every place where one can turn, and a grid. */
  readonly samples: readonly number[];
  /** Those among them that matter to what follows from the way of one lever alone: what turns elsewhere in the linkage is not looked for. */
  samplesTo(lever: number): readonly number[];
  /**
   * The pose at a pedal travel, a fraction. It may be filled again by the next call: read it before.
   * @param lever to which alone it must be right, as far as the parts reach that lead there from the pedal; all where absent
   */
  poseAt(travel: number, lever?: number): Pose;
  /** What is known of it from the travel before; absent where nothing is to be remembered. */
  readonly memory?: Memory;
  /** The same at a sample, by its number: what is known of a figure there stands in an array. */
  poseOf(number: number): Pose;
}

/** @param values dimensions, SI; nominal where absent */
export function solveTravel(mechanism: Mechanism, values?: Float64Array): Travel {
  const build = createBuild(mechanism, values);
  return travelOf(build);
}

/**
 * The same, with whatever still holds of the travel that was solved so before: for the text that is being written. It answers as
 * `solveTravel` does.
 */
export function solveTravelAgain(mechanism: Mechanism): Travel {
  const build = createBuild(mechanism);
  const finder = createFinder(build);
  const contacts = settleStops(build, finder);
  const before = last;
  last = createKnown(build, before);
  const travel = travelAlong(build, finder, contacts, last);
  knownOf.set(travel, last);
  return travel;
}

/** The next travel takes over from this one, which was solved by `solveTravelAgain`, as if it had been the last. */
export function takeOverFrom(travel: Travel): void {
  last = knownOf.get(travel) ?? last;
}

/** Of the travel solved last; none of those before it. */
let last: Known | undefined;
const knownOf = keptOn<Travel, Known>();

/** The travel of a build whose rest is settled. @param anew groups whose stops are to be settled, as for `settleStops` */
export function travelOf(build: Build, anew?: ReadonlySet<number>): Travel {
  const finder = createFinder(build);
  return travelAlong(build, finder, settleStops(build, finder, anew));
}

function travelAlong(build: Build, finder: Finder, contacts: readonly Contact[], now?: Known): Travel {
  const pose = createPose(build.mechanism);
  let places: Places | undefined;
  let samples: readonly number[] | undefined;
  /** Poses at the samples, which every column is read at, and those that are not filled yet. */
  let poses: (Pose | undefined)[] = [];
  let empty: readonly Pose[] = [];
  /** Whether every pose is that of the travel before. */
  let isSameWay = false;
  let fill: FillPose = (at, into) => {
    advance(build, at, into);
  };
  const own: (readonly number[] | undefined)[] = [];
  const memory = now && createMemory(now);
  let numberOf: (at: number) => number = () => -1;
  // Both are found when first asked for: a search that wants one station of many builds has no use for them.
  const asked: Asked<AskedTravel> = {
    places() {
      if (places !== undefined) return places;
      places = placesBefore(now) ?? findPlaces(build, finder);
      if (now !== undefined) now.places = places;
      return places;
    },
    samples() {
      if (samples !== undefined) return samples;
      samples = samplesOf(travel.places.all);
      const before = now?.before?.samples;
      if (before !== undefined && isAlike(samples, before)) samples = before;
      if (now !== undefined) now.samples = samples;
      poses = samples.map(() => undefined);
      if (now !== undefined) now.poses = poses;
      isSameWay = now !== undefined && samples === before && isAsBefore(now);
      numberOf = stationFinder(samples);
      return samples;
    },
  };
  const solved: Omit<Travel, keyof AskedTravel> = {
    mechanism: build.mechanism,
    build,
    contacts,
    ...(memory && { memory }),
    samplesTo(lever) {
      const make = (): readonly number[] => samplesOf(placesTo(build.mechanism, travel.places, lever));
      const cause = memory?.levers[lever];
      const { name } = build.mechanism.levers[lever]!;
      return (own[lever] ??= memory === undefined || cause === undefined ? make() : memory.kept(`samples to ${name}`, cause, make));
    },
    poseAt(at, lever) {
      const number = numberOf(at);
      if (number >= 0) return travel.poseOf(number);
      if (lever === undefined) advance(build, at, pose);
      else advanceTo(build, at, pose, build.mechanism.levers[lever]!.driver);
      return pose;
    },
    poseOf(number) {
      const all = travel.samples;
      // Where all stands as before, so do the poses; they are only read.
      const there = poses[number] ?? (isSameWay ? now?.before?.poses[number] : undefined);
      if (there !== undefined) return (poses[number] = there);
      if (empty.length === 0) {
        empty = createPoses(build.mechanism, all.length);
        if (now !== undefined) fill = poseFiller(build, now);
      }
      const own = empty[number]!;
      fill(all[number]!, own);
      return (poses[number] = own);
    },
  };
  const travel: Travel = askedTravel(solved, asked);
  return travel;
}

type AskedTravel = Pick<Travel, 'places' | 'samples'>;

const askedTravel = askedFor<AskedTravel>('places', 'samples');

/** Whether all stands as in the travel before. */
function isAsBefore(now: Known): boolean {
  return now.before !== undefined && hasSamePath(now, now.before);
}

/** Those of the travel before where they still hold. */
function placesBefore(now: Known | undefined): Places | undefined {
  return now !== undefined && isAsBefore(now) ? now.before?.places : undefined;
}

function isAlike(one: readonly number[], other: readonly number[]): boolean {
  return one.length === other.length && one.every((travel, i) => travel === other[i]);
}
