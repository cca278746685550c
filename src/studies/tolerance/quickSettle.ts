/**
 * Open stops of many builds that differ little. `settleStops` looks for every place at which a lever can turn back, so that it misses no
 * contact; that takes longer than all else of a build. Where every lever with an open stop opens steadily in the middle of all builds, its
 * contact is followed from there by Newton's method, and the build is looked at in a few places for a lever that turns back after
 * all. Of several levers of one group the first contact counts; groups are gone through along the load path, each with those before it
 * stopped. Whatever is not as expected goes the long way.
 */
import { advance } from '../../kinematics/advance.ts';
import type { Build } from '../../kinematics/build.ts';
import { createBuild, putDimensions } from '../../kinematics/createBuild.ts';
import { passedAt } from '../../kinematics/joints/cable.ts';
import type { Group, Mechanism } from '../../kinematics/model.ts';
import { createPose, type Pose } from '../../kinematics/pose.ts';
import { settleStops } from '../../travel/stops.ts';

/** Puts dimensions, SI, into a build and settles its rest and its stops. */
export type Settle = (build: Build, values: Float64Array) => void;

/** A group that open stops can hold. */
interface Stopped {
  readonly group: Group;
  readonly levers: readonly StoppedLever[];
}

interface StoppedLever {
  readonly index: number;
  readonly sense: number;
  /** Parameter of the stop. */
  readonly stop: number;
  /** Pedal travel at which it is met in the middle of all builds; 1 where it is not. */
  readonly contact: number;
}

/** @param middle dimensions about which all builds lie @param shift what is moved besides, as in `putDimensions` */
export function createSettle(mechanism: Mechanism, middle: Float64Array, shift?: (parameters: Float64Array) => void): Settle {
  const put: Settle = (build, values) => putDimensions(build, values, shift);
  if (!mechanism.levers.some(({ openStop }) => openStop !== undefined)) return put;
  const long: Settle = (build, values) => {
    put(build, values);
    settleStops(build);
  };
  const build = createBuild(mechanism, middle);
  const pose = createPose(mechanism);
  put(build, middle);
  const stopped = followable(build, pose);
  if (stopped === undefined) return long;
  return (into, values) => {
    put(into, values);
    if (!stopped.every((each) => holdAtContact(into, each, PLACES, pose))) long(into, values);
  };
}

/** The groups that can be stopped, along the load path; undefined where a lever does not open as steadily as it takes. */
function followable(build: Build, pose: Pose): readonly Stopped[] | undefined {
  const { mechanism } = build;
  const found: Stopped[] = [];
  for (const group of mechanism.groups) {
    const levers = group.levers.flatMap((index): Omit<StoppedLever, 'contact'>[] => {
      const { openStop } = mechanism.levers[index]!;
      return openStop === undefined ? [] : [{ index, sense: mechanism.senses[index]!, stop: openStop.parameter }];
    });
    if (levers.length === 0) continue;
    if (!opensSteadily(build, levers, EVENLY, pose)) return undefined;
    const placed = levers.map((lever) => ({ ...lever, contact: contactByHalving(build, lever, pose) }));
    if (!placed.every(({ contact, ...lever }) => contact === undefined || isSteepAt(build, lever, contact, pose))) return undefined;
    const stopped = { group, levers: placed.map(({ contact = 1, ...lever }) => ({ ...lever, contact })) };
    if (!holdAtContact(build, stopped, EVENLY, pose)) return undefined;
    found.push(stopped);
  }
  return found;
}

/** Stops a group where the first of its levers meets its stop, if one does; false where that is not sure. */
function holdAtContact(build: Build, { group, levers }: Stopped, places: readonly number[], pose: Pose): boolean {
  const { mechanism, parameters, bounds } = build;
  if (!opensSteadily(build, levers, places, pose)) return false;
  let first = Infinity;
  for (const { index, sense, stop, contact } of levers) {
    const wanted = parameters[stop]!;
    advance(build, 1, pose);
    // A lever that opens steadily and does not come to its stop by the end of the travel never does.
    if (sense * pose.rotation[index]! < wanted) continue;
    let travel = contact;
    let step = Infinity;
    for (let i = 0; i < MOST_STEPS && Math.abs(step) > CLOSE; i++) {
      advance(build, travel, pose);
      step = (wanted - sense * pose.rotation[index]!) / (sense * pose.rate[index]!);
      travel += step;
    }
    if (!(Math.abs(step) <= CLOSE && travel > 0 && travel <= 1)) return false;
    first = Math.min(first, travel);
  }
  if (first === Infinity) return true;
  if (group.cable === undefined) {
    bounds.pedalStop = Math.max(parameters[mechanism.drive.travel]! * first, bounds.pedalRest);
    return true;
  }
  advance(build, first, pose);
  const joint = mechanism.cables[group.cable]!;
  const held = passedAt(mechanism, joint.drivenEnd, joint.driven, parameters, pose.rotation[joint.driven]!);
  bounds.cableStop[group.cable] = Math.max(held, bounds.cableRest[group.cable]!);
  return true;
}

/** Whether levers never turn back at some places. */
function opensSteadily(
  build: Build,
  levers: readonly Pick<StoppedLever, 'index' | 'sense'>[],
  places: readonly number[],
  pose: Pose,
): boolean {
  for (const at of places) {
    advance(build, at, pose);
    for (const { index, sense } of levers) if (!(sense * pose.rate[index]! >= 0)) return false;
  }
  return true;
}

/** Of a lever that opens steadily; undefined where it does not come to its stop. */
function contactByHalving(build: Build, { index, sense, stop }: Omit<StoppedLever, 'contact'>, pose: Pose): number | undefined {
  const isBefore = (at: number): boolean => {
    advance(build, at, pose);
    return sense * pose.rotation[index]! < build.parameters[stop]!;
  };
  if (isBefore(1)) return undefined;
  let [before, after] = [0, 1];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (before + after) / 2;
    if (isBefore(middle)) before = middle;
    else after = middle;
  }
  return after;
}

/** To a billionth of the travel: near enough to begin from. */
const HALVINGS = 30;

function isSteepAt(build: Build, { index, sense }: Pick<StoppedLever, 'index' | 'sense'>, travel: number, pose: Pose): boolean {
  advance(build, 1, pose);
  const whole = sense * pose.rotation[index]! - sense * build.bounds.restRotation[index]!;
  advance(build, travel, pose);
  return sense * pose.rate[index]! > STEEP * whole;
}

const EVENLY: readonly number[] = Array.from({ length: 101 }, (_, i) => i / 100);
/** Fewer, at which each build is looked at. */
const PLACES: readonly number[] = Array.from({ length: 9 }, (_, i) => i / 8);
/** Of the mean slope of the lever; a flatter place may turn back in another build. */
const STEEP = 0.2;
const MOST_STEPS = 8;
/** Of the travel; the step after one as small as this is rounding. */
const CLOSE = 1e-9;
