/**
 * Where the linkage stands with the foot off.
 *
 * Springs press every group closed until the first of its closed stops meets. A body is what rods, slots and couplings without
 * free play join; it has one freedom, its first lever's rotation ψ, and rests at the ψ where its least gap to a closed stop is
 * none. A body without a closed stop rests as drawn, or where its neighbour across a joint with free play puts it.
 */
import { bracketedRoot, lastWithValue } from '../numeric/roots.ts';
import { moveJoint, turnRoot } from './advance.ts';
import type { Build } from './build.ts';
import { passedAt } from './joints/cable.ts';
import type { Group, Joint } from './model.ts';
import { createPose, type Pose } from './pose.ts';

/** Fills the bounds' rest figures. Stops on the opening side are left alone. */
export function settleRest(build: Build): void {
  const { mechanism, parameters, bounds } = build;
  const pose = createPose(mechanism);
  bounds.restRotation.fill(0);
  for (const group of mechanism.groups) {
    const bodies = bodiesOf(build, group);
    for (const body of bodies) {
      const rest = restOfBody(build, body, pose);
      placeBody(build, body, rest, pose);
      for (const lever of body.levers) bounds.restRotation[lever] = pose.rotation[lever]!;
    }
    for (const body of [...bodies].reverse()) if (body.driver !== undefined) fitPlay(build, bodies, body, body.driver, pose);
    const rest = bounds.restRotation[group.root]!;
    if (group.cable === undefined) {
      bounds.pedalRest = mechanism.senses[group.root]! * rest;
    } else {
      const cable = mechanism.cables[group.cable]!;
      bounds.cableRest[group.cable] = passedAt(mechanism, cable.drivenEnd, cable.driven, parameters, rest);
    }
  }
}

/** Levers joined without free play. */
export interface Body {
  readonly root: number;
  readonly levers: readonly number[];
  readonly joints: readonly Joint[];
  /** The joint with free play that drives it; undefined for the body that holds its group's root. */
  readonly driver: Joint | undefined;
}

/** The bodies of a group in load-path order. */
export function bodiesOf(build: Build, group: Group): readonly Body[] {
  const bodies: { root: number; levers: number[]; joints: Joint[]; driver: Joint | undefined }[] = [
    { root: group.root, levers: [group.root], joints: [], driver: undefined },
  ];
  for (const index of group.joints) {
    const joint = build.mechanism.joints[index]!;
    if (hasPlay(joint)) {
      bodies.push({ root: joint.driven, levers: [joint.driven], joints: [], driver: joint });
      continue;
    }
    const body = bodies.find((each) => joint.kind !== 'cable' && each.levers.includes(joint.driver));
    body?.levers.push(joint.driven);
    body?.joints.push(joint);
  }
  return bodies;
}

/** Turns a body's first lever and lets the rest follow. */
export function placeBody(build: Build, body: Body, rotation: number, pose: Pose): void {
  turnRoot(pose, body.root, rotation, 1);
  for (const joint of body.joints) moveJoint(build, joint, pose);
}

export function hasPlay(joint: Joint): boolean {
  switch (joint.kind) {
    case 'rod':
      return joint.lost !== undefined;
    case 'slot':
      return joint.play !== undefined;
    case 'coupling':
      return joint.oneWay || joint.lag !== undefined;
    case 'cable':
      return false;
  }
}

function restOfBody(build: Build, body: Body, pose: Pose): number {
  const { mechanism, parameters } = build;
  const stopped = body.levers.filter((lever) => mechanism.levers[lever]!.closedStop !== undefined);
  if (stopped.length === 0) return 0;
  return findRest(mechanism.senses[body.root]!, (rotation) => {
    placeBody(build, body, rotation, pose);
    let least = Infinity;
    for (const lever of stopped) {
      const gap = mechanism.senses[lever]! * pose.rotation[lever]! - parameters[mechanism.levers[lever]!.closedStop!.parameter]!;
      if (Number.isNaN(gap)) return NaN;
      least = Math.min(least, gap);
    }
    return least;
  });
}

/**
 * Rotation at which `gap` is none, nearest to drawn: closing from it where there is room, opening where there is less than none.
 * 0 where none is found, as when the linkage cannot be assembled before a stop meets.
 */
function findRest(sense: number, gap: (rotation: number) => number): number {
  let near = nearestAssembled(sense, gap);
  let atNear = gap(near);
  if (Number.isNaN(atNear) || Math.abs(atNear) <= AS_DRAWN) return near;
  const way = atNear > 0 ? -sense : sense;
  for (let step = FIRST_STEP; Math.abs(near) < Math.PI; step = Math.min(2 * step, LARGEST_STEP)) {
    let far = near + way * step;
    let atFar = gap(far);
    const torn = Number.isNaN(atFar);
    if (torn) {
      far = lastWithValue(gap, near, far);
      atFar = gap(far);
    }
    if (atFar === 0 || atFar > 0 !== atNear > 0) return bracketedRoot(gap, near, atNear, far, atFar, CLOSE);
    if (torn) return 0;
    near = far;
    atNear = atFar;
  }
  return 0;
}

/** Drawn, or where that cannot be assembled the nearest rotation found that can, the opening way first; 0 where there is none. */
function nearestAssembled(sense: number, gap: (rotation: number) => number): number {
  if (!Number.isNaN(gap(0))) return 0;
  for (let away = LARGEST_STEP; away < Math.PI; away += LARGEST_STEP) {
    if (!Number.isNaN(gap(sense * away))) return sense * away;
    if (!Number.isNaN(gap(-sense * away))) return -sense * away;
  }
  return 0;
}

/** rad; a stop this near to met by the drawn figures is met, so that rounding moves nothing. */
const AS_DRAWN = 1e-13;
/** rad. */
const FIRST_STEP = 1e-4;
/** rad (half a degree); a rest between two places that cannot be assembled, nearer together than this, can be missed. */
const LARGEST_STEP = Math.PI / 360;
/** rad. */
const CLOSE = 1e-15;

/**
 * Makes the body that drives `body` across free play fit it at rest: one without a closed stop of its own gives way, and one that
 * would press `body` past its closed stop stands open instead.
 */
function fitPlay(build: Build, bodies: readonly Body[], body: Body, joint: Joint, pose: Pose): void {
  if (joint.kind === 'cable' || joint.kind === 'coupling') return;
  const { mechanism, bounds } = build;
  const upstream = bodies.find((each) => each.levers.includes(joint.driver));
  if (upstream === undefined) return;
  const own = bounds.restRotation[body.root]!;
  /** How far the joint would move the driven lever from its own rest, in its opening direction. */
  const shift = (rotation: number): number => {
    placeBody(build, upstream, rotation, pose);
    moveJoint(build, joint, pose);
    return mechanism.senses[body.root]! * (pose.rotation[body.root]! - own);
  };
  const at = bounds.restRotation[upstream.root]!;
  const moved = shift(at);
  const free = !upstream.levers.some((lever) => mechanism.levers[lever]!.closedStop !== undefined);
  if (Number.isNaN(moved) || Math.abs(moved) <= AS_DRAWN || (moved > 0 && !free)) return;
  const sense = mechanism.senses[upstream.root]!;
  const rest = at + findRest(sense, (rotation) => shift(at + rotation));
  placeBody(build, upstream, rest, pose);
  for (const lever of upstream.levers) bounds.restRotation[lever] = pose.rotation[lever]!;
}
