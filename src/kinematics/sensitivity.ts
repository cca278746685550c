/**
 * What a change of the dimensions does to every lever's rotation at a fixed pedal travel, in closed form.
 *
 * Along the load path each joint's tangent follows from its driver's (`jointTangents.ts`). A group that is held, at its rest or
 * at an open stop, moves so that the lever on its stop keeps its stop's opening, which may change itself. Where two things hold
 * at once, as at the drawn position, the derivative is the one-sided one in the direction asked for.
 */
import type { Build } from './build.ts';
import { drivenEndTangent, jointTangent, pullTangent, type TangentState } from './jointTangents.ts';
import type { CableJoint } from './model.ts';
import { differentiateParameters } from './parameters.ts';
import { CableState, createPose, type Pose } from './pose.ts';
import { advance } from './advance.ts';
import { restTangents, runBody } from './restTangents.ts';

/** What a direction in the space of dimensions does to a build before any station is asked for. */
export interface DimensionDirection {
  /** Change of each parameter and of each lever's rest rotation per unit of the direction. */
  readonly parameterRates: Float64Array;
  readonly restRates: Float64Array;
}

/** @param direction change of each dimension, SI, as many as `mechanism.dimensions` */
export function alongDimensions(build: Build, direction: Float64Array): DimensionDirection {
  const { mechanism } = build;
  const parameterRates = new Float64Array(mechanism.parameterCount);
  differentiateParameters(build, direction, new Float64Array(mechanism.tape.slotCount), parameterRates);
  return { parameterRates, restRates: restTangents(build, parameterRates) };
}

/**
 * Change of every lever's rotation, rad per unit of the direction, at the pose's pedal travel. NaN where the lever is not assembled;
 * infinite or NaN at a dead centre.
 * @param pose as `advance` left it for this build
 */
export function rotationRates(build: Build, pose: Pose, direction: Float64Array, into: Float64Array): void {
  rotationRatesAlong(build, pose, alongDimensions(build, direction), into);
}

/** The same for a direction that is asked for at several stations. */
export function rotationRatesAlong(build: Build, pose: Pose, along: DimensionDirection, into: Float64Array): void {
  const { mechanism } = build;
  const { drive } = mechanism;
  const state: TangentState = { build, pose, ...along, rotationRates: into };
  into.fill(0);
  if (drive.kind === 'lever') into[drive.lever] = pedalTangent(state, drive.lever, drive.sense);
  for (const joint of mechanism.joints) {
    into[joint.driven] = joint.kind === 'cable' ? cableTangent(state, joint) : jointTangent(state, joint);
  }
  for (let lever = 0; lever < into.length; lever++) if (Number.isNaN(pose.rotation[lever]!)) into[lever] = NaN;
}

/** For each dimension the change of every lever's rotation per unit (rad/m, rad/rad, …) at a pedal travel, a fraction. */
export function sensitivities(build: Build, travel: number): readonly Float64Array[] {
  const { mechanism } = build;
  const pose = createPose(mechanism);
  advance(build, travel, pose);
  const direction = new Float64Array(mechanism.dimensions.length);
  return mechanism.dimensions.map((_, index) => {
    direction.fill(0);
    direction[index] = 1;
    const into = new Float64Array(mechanism.levers.length);
    rotationRates(build, pose, direction, into);
    return into;
  });
}

function pedalTangent({ build, pose, parameterRates, restRates }: TangentState, lever: number, sense: number): number {
  const travel = build.mechanism.drive.travel;
  const asked = build.parameters[travel]! * pose.travel;
  const askedRate = parameterRates[travel]! * pose.travel;
  const restRate = sense * restRates[lever]!;
  const beyondRest = asked - build.bounds.pedalRest;
  if (Math.abs(beyondRest) <= TOGETHER) return sense * Math.max(askedRate, restRate);
  return sense * (beyondRest < 0 ? restRate : askedRate);
}

/** rad or m: two limits this near to each other are met at once. */
const TOGETHER = 1e-11;

function cableTangent(state: TangentState, joint: CableJoint): number {
  const { build, pose, parameterRates, restRates } = state;
  const { cable, driven } = joint;
  const free = pose.pull[cable]! - build.parameters[joint.slack]!;
  const moving = drivenEndTangent(state, joint, pullTangent(state, joint) - parameterRates[joint.slack]!);
  /** +1 where a pull turns the driven lever counter-clockwise. */
  const way = Math.sign(drivenEndTangent(state, joint, 1) - drivenEndTangent(state, joint, 0));
  if (Math.abs(free - build.bounds.cableRest[cable]!) <= TOGETHER) return way * Math.max(way * moving, way * restRates[driven]!);
  if (pose.cableState[cable] === CableState.slack) return restRates[driven]!;
  const beyondStop = free - build.bounds.cableStop[cable]!;
  if (beyondStop < -TOGETHER || Number.isNaN(beyondStop)) return moving;
  const stopped = stoppedTangent(state, driven, way);
  return beyondStop > TOGETHER ? stopped : way * Math.min(way * moving, way * stopped);
}

/** rad; how near a lever must be to its open stop to be the one that holds its group. Contacts are found to 1e-9 of the travel. */
const AT_STOP = 1e-7;

/** Change of the first lever of a group that an open stop holds. */
function stoppedTangent(state: TangentState, root: number, way: number): number {
  const { build, pose, parameterRates } = state;
  const { mechanism, parameters } = build;
  const group = mechanism.groups[mechanism.levers[root]!.group]!;
  const joints = group.joints.map((index) => mechanism.joints[index]!);
  const run = (rootRate: number): Float64Array => {
    const rates: TangentState = { ...state, rotationRates: Float64Array.from(state.rotationRates) };
    runBody(rates, root, joints, rootRate);
    return rates.rotationRates;
  };
  const held = run(0);
  const turned = run(1);
  let least = Infinity;
  for (const lever of group.levers) {
    const stop = mechanism.levers[lever]!.openStop;
    const sense = mechanism.senses[lever]!;
    if (stop === undefined || Math.abs(sense * pose.rotation[lever]! - parameters[stop.parameter]!) > AT_STOP) continue;
    const rate = (sense * parameterRates[stop.parameter]! - held[lever]!) / (turned[lever]! - held[lever]!);
    if (Number.isFinite(rate)) least = Math.min(least, way * rate);
  }
  return way * least;
}
