/**
 * What moves by itself in a snap-back: bodies of one freedom each.
 *
 * Levers that rods, slots and couplings without free play join are one body; its coordinate q is the opening of its first lever, rad. A
 * lost joint parts them. A lever that nothing drives is a body alone. A pedal that is only a cable is a body without levers, whose
 * coordinate is the pull at the cable's pedal end, m.
 */
import { moveJoint, turnRoot } from '../../kinematics/advance.ts';
import type { Build } from '../../kinematics/build.ts';
import type { Joint } from '../../kinematics/model.ts';
import { createPose, type Pose } from '../../kinematics/pose.ts';
import { hasPlay, type Body } from '../../kinematics/rest.ts';
import type { Link, Motion } from '../motion.ts';

export interface Bodies {
  /** Those with levers, in load-path order, then levers that nothing drives. */
  readonly bodies: readonly Body[];
  /** By lever. */
  readonly bodyOf: readonly number[];
  /** Index of the pedal that is only a cable, one past the bodies with levers; undefined where the pedal is a lever. */
  readonly pedal: number | undefined;
  /** Number of coordinates. */
  readonly count: number;
  /** What the force analysis asks for; each body moves by its own. */
  readonly motion: Motion;
  /** How all stands: `rate` and `curvature` are dφ/dq and d²φ/dq² of each lever, by its own body's coordinate. */
  readonly pose: Pose;
  /** Fills `pose` and `motion`. */
  place(q: Float64Array): void;
}

/** @param isLost whether a joint is lost */
export function createBodies(build: Build, isLost: (joint: Joint) => boolean): Bodies {
  const { mechanism } = build;
  const { senses } = mechanism;
  const bodies = mechanism.groups.flatMap((group) => partGroup(build, group.root, group.joints, isLost));
  const reached = new Set(bodies.flatMap(({ levers }) => levers));
  for (const { index } of mechanism.levers)
    if (!reached.has(index)) bodies.push({ root: index, levers: [index], joints: [], driver: undefined });
  const bodyOf = mechanism.levers.map(({ index }) => bodies.findIndex(({ levers }) => levers.includes(index)));
  const pedal = mechanism.drive.kind === 'cable' ? bodies.length : undefined;
  const pose = createPose(mechanism);
  const unit = new Float64Array(mechanism.levers.length);
  const links = bodies.map((body): Link => ({ state: body.driver === undefined ? 'none' : 'loose', gain: 0 }));
  return {
    bodies,
    bodyOf,
    pedal,
    count: bodies.length + (pedal === undefined ? 0 : 1),
    pose,
    motion: { bodies, bodyOf, unit, links, at: () => undefined },
    place(q) {
      bodies.forEach(({ root, levers, joints }, i) => {
        const sense = senses[root]!;
        turnRoot(pose, root, sense * q[i]!, sense);
        for (const joint of joints) moveJoint(build, joint, pose);
        for (const lever of levers) unit[lever] = senses[lever]! * pose.rate[lever]!;
      });
    },
  };
}

function partGroup(build: Build, root: number, indices: readonly number[], isLost: (joint: Joint) => boolean): Body[] {
  const bodies: { root: number; levers: number[]; joints: Joint[]; driver: Joint | undefined }[] = [
    { root, levers: [root], joints: [], driver: undefined },
  ];
  for (const index of indices) {
    const joint = build.mechanism.joints[index]!;
    if (hasPlay(joint) || isLost(joint)) {
      bodies.push({ root: joint.driven, levers: [joint.driven], joints: [], driver: joint });
      continue;
    }
    const body = bodies.find(({ levers }) => joint.driver !== undefined && levers.includes(joint.driver));
    body?.levers.push(joint.driven);
    body?.joints.push(joint);
  }
  return bodies;
}
