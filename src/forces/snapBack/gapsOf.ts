/** The gaps of a linkage that some joints may be missing from. */
import type { Build } from '../../kinematics/build.ts';
import { passedAt } from '../../kinematics/joints/cable.ts';
import type { Pose } from '../../kinematics/pose.ts';
import { hasPlay } from '../../kinematics/rest.ts';
import type { Gap } from './gaps.ts';

/** @param start as it stands when cables seize */
export function gapsOf(build: Build, start: Pose, isLost: (name: string) => boolean, isSeized: (name: string) => boolean): readonly Gap[] {
  const { mechanism } = build;
  const gaps: Gap[] = [];
  for (const { index: lever, closedStop, openStop } of mechanism.levers) {
    if (closedStop !== undefined) gaps.push({ kind: 'stop', lever, which: 'closed' });
    if (openStop !== undefined) gaps.push({ kind: 'stop', lever, which: 'open' });
  }
  if (mechanism.drive.kind === 'cable') gaps.push({ kind: 'pedal-stop' });
  for (const joint of mechanism.joints) {
    if (isLost(joint.name)) continue;
    if (joint.kind !== 'cable') {
      if (!hasPlay(joint)) continue;
      if (joint.kind === 'coupling' && joint.oneWay) gaps.push({ kind: 'play', joint, side: mechanism.senses[joint.driven]! < 0 ? -1 : 1 });
      else gaps.push({ kind: 'play', joint, side: 1 }, { kind: 'play', joint, side: -1 });
    } else if (isSeized(joint.name)) {
      const passed = passedAt(mechanism, joint.drivenEnd, joint.driven, build.parameters, start.rotation[joint.driven]!);
      gaps.push({ kind: 'seized', joint, end: 'driven', taken: passed });
      if (joint.driver !== undefined) gaps.push({ kind: 'seized', joint, end: 'driving', taken: start.pull[joint.cable]! });
    } else gaps.push({ kind: 'cable', joint });
  }
  return gaps;
}
