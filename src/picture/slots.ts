/** Slots: the pin, and the centreline of the fork on its lever. */
import { axisOf, pivotOf } from '../kinematics/drawnAxis.ts';
import type { Build } from '../kinematics/build.ts';
import { slotFrame, type SlotFrame } from '../kinematics/joints/slot.ts';
import type { SlotJoint } from '../kinematics/model.ts';
import { plus, vectorAt } from '../numeric/vector.ts';
import type { DrawnSlot } from '../protocol/picture.ts';
import type { Drawable } from './drawable.ts';
import { pinPlace, turningAbout } from './turning.ts';

export function drawSlots(drawable: Drawable): readonly DrawnSlot[] {
  return drawable.joints.flatMap(({ joint, build }): DrawnSlot[] => {
    if (joint.kind !== 'slot') return [];
    const pin = pinPlace(drawable, build, joint.pinLever, joint.pin);
    const fork = drawFork(drawable, build, joint);
    return pin === undefined || fork === undefined ? [] : [{ name: joint.name, pin, fork }];
  });
}

/** In the plane of the fork's pivot, in which its pin is looked at. */
function drawFork(drawable: Drawable, build: Build, joint: SlotJoint): DrawnSlot['fork'] | undefined {
  const lever = drawable.placeOf(joint.fork);
  if (lever === undefined) return undefined;
  const { parameters: p } = build;
  const pivot = pivotOf(build, joint.fork);
  const axis = axisOf(build, joint.fork);
  const centre = plus(pivot, vectorAt(p, joint.normal), p[joint.offset]);
  const at = (reach: number) => turningAbout(pivot, axis, plus(centre, vectorAt(p, joint.direction), reach));
  const [least, greatest] = reachOf(drawable, build, joint);
  const [from, to] = [at(least), at(greatest)];
  return from && to && { lever, from, to };
}

/** m: as the file has it, else what the pin takes over the travel and a little more. */
function reachOf({ poses }: Drawable, { parameters }: Build, joint: SlotJoint): readonly [number, number] {
  const { reach } = joint.source;
  if (reach !== undefined) return [reach.min.nominal, reach.max.nominal];
  let [least, greatest] = [Infinity, -Infinity];
  for (const pose of poses) {
    slotFrame(joint, parameters, pose, frame);
    if (Number.isNaN(frame.reach)) continue;
    [least, greatest] = [Math.min(least, frame.reach), Math.max(greatest, frame.reach)];
  }
  const more = MORE * Math.max(Math.abs(least), Math.abs(greatest));
  return [least - more, greatest + more];
}

/** Of the greatest reach: an end of the fork that is drawn right at the pin would hide it. */
const MORE = 0.1;

const frame: SlotFrame = { reach: 0, offset: 0, normalTangent: 0, directionTangent: 0, normalInward: 0 };
