/**
 * Open stops of many builds that differ little. `settleStops` looks for every place at which a lever can turn back, so that it misses no
 * contact; that takes longer than all else of a build. Where every lever with an open stop opens steadily in the middle of all builds, its
 * contact is followed from there by Newton's method, and the build is looked at in a few places for a lever that turns back after
 * all. Whatever is not as expected goes the long way.
 */
import { advance } from '../../kinematics/advance.ts';
import type { Build } from '../../kinematics/build.ts';
import { createBuild, putDimensions } from '../../kinematics/createBuild.ts';
import { passedAt } from '../../kinematics/joints/cable.ts';
import type { Mechanism } from '../../kinematics/model.ts';
import { createPose, type Pose } from '../../kinematics/pose.ts';
import { settleStops } from '../../travel/stops.ts';

/** Puts dimensions, SI, into a build and settles its rest and its stops. */
export type Settle = (build: Build, values: Float64Array) => void;

/** @param middle dimensions about which all builds lie */
export function createSettle(mechanism: Mechanism, middle: Float64Array): Settle {
  const stopped = mechanism.levers.filter(({ openStop, group }) => openStop !== undefined && group >= 0);
  if (!mechanism.levers.some(({ openStop }) => openStop !== undefined)) return putDimensions;
  const long: Settle = (build, values) => {
    putDimensions(build, values);
    settleStops(build);
  };
  const [only] = stopped;
  // Which of several stops is met first may differ from build to build.
  if (only === undefined || stopped.length > 1) return long;
  const { index: lever, group } = only;
  const stop = only.openStop!.parameter;
  const sense = mechanism.senses[lever]!;
  const pose = createPose(mechanism);
  const build = createBuild(mechanism, middle);
  const contact = settleStops(build)[0]?.travel ?? 1;
  putDimensions(build, middle);
  if (!opensSteadily(build, lever, pose, EVENLY) || !isSteepAt(build, lever, contact, pose)) return long;
  const { cable } = mechanism.groups[group]!;
  const joint = cable === undefined ? undefined : mechanism.cables[cable]!;
  return (into, values) => {
    putDimensions(into, values);
    if (!opensSteadily(into, lever, pose, PLACES)) return long(into, values);
    const { parameters, bounds } = into;
    const wanted = parameters[stop]!;
    // The last of the places is the end of the travel: a lever that does not come to its stop there never does.
    if (sense * pose.rotation[lever]! < wanted) return;
    let travel = contact;
    let step = Infinity;
    for (let i = 0; i < MOST_STEPS && Math.abs(step) > CLOSE; i++) {
      advance(into, travel, pose);
      step = (wanted - sense * pose.rotation[lever]!) / (sense * pose.rate[lever]!);
      travel += step;
    }
    if (!(Math.abs(step) <= CLOSE && travel > 0 && travel <= 1)) return long(into, values);
    advance(into, travel, pose);
    if (joint === undefined) bounds.pedalStop = Math.max(parameters[mechanism.drive.travel]! * travel, bounds.pedalRest);
    else {
      const held = passedAt(mechanism, joint.drivenEnd, joint.driven, parameters, pose.rotation[joint.driven]!);
      bounds.cableStop[joint.cable] = Math.max(held, bounds.cableRest[joint.cable]!);
    }
  };
}

/** Whether a lever never turns back at some places; with the pose left at the last of them. */
function opensSteadily(build: Build, lever: number, pose: Pose, places: readonly number[]): boolean {
  const sense = build.mechanism.senses[lever]!;
  for (const at of places) {
    advance(build, at, pose);
    if (!(sense * pose.rate[lever]! >= 0)) return false;
  }
  return true;
}

function isSteepAt(build: Build, lever: number, travel: number, pose: Pose): boolean {
  const sense = build.mechanism.senses[lever]!;
  advance(build, 1, pose);
  const whole = sense * pose.rotation[lever]! - sense * build.bounds.restRotation[lever]!;
  advance(build, travel, pose);
  return sense * pose.rate[lever]! > STEEP * whole;
}

const EVENLY: readonly number[] = Array.from({ length: 101 }, (_, i) => i / 100);
/** Fewer, at which each build is looked at. */
const PLACES: readonly number[] = Array.from({ length: 9 }, (_, i) => i / 8);
/** Of the mean slope of the lever; a flatter place may turn back in another build. */
const STEEP = 0.2;
const MOST_STEPS = 8;
/** Of the travel; the step after one as small as this is rounding. */
const CLOSE = 1e-9;
