/**
 * How the levers move with each other as they stand, whether the pedal moves them there or not: past an open stop and in a cable's slack
 * too. Levers joined by rods, slots and couplings move as one body, uᵢ the opening of lever i for one radian of opening of its first.
 */
import { moveJoint } from '../kinematics/advance.ts';
import type { Build } from '../kinematics/build.ts';
import type { Joint } from '../kinematics/model.ts';
import { createPose, type Pose } from '../kinematics/pose.ts';
import { bodiesOf, type Body } from '../kinematics/rest.ts';

/** Filled again by each call of `at`. */
export interface Motion {
  /** In load-path order. */
  readonly bodies: readonly Body[];
  /** Index of each lever's body; −1 for a lever that nothing moves. */
  readonly bodyOf: readonly number[];
  /** Opening of each lever for one radian of its body's first lever. */
  readonly unit: Float64Array;
  readonly links: readonly Link[];
  at(pose: Pose): void;
}

/** How a body hangs on the one that drives it across free play, and the opening of its first lever for one radian of the other's. */
export interface Link {
  state: 'none' | 'loose' | 'joined' | 'pushed';
  gain: number;
}

export function createMotion(build: Build): Motion {
  const { mechanism } = build;
  const { senses } = mechanism;
  const bodies = mechanism.groups.flatMap((group) => bodiesOf(build, group));
  const links = bodies.map((): Link => ({ state: 'none', gain: 0 }));
  const unit = new Float64Array(mechanism.levers.length);
  const scratch = createPose(mechanism);
  return {
    bodies,
    bodyOf: mechanism.levers.map(({ index }) => bodies.findIndex((body) => body.levers.includes(index))),
    unit,
    links,
    at(pose) {
      for (let i = 0; i < bodies.length; i++) {
        const { root, driver, levers, joints } = bodies[i]!;
        const link = links[i]!;
        if (driver !== undefined && driver.kind !== 'cable') {
          // The body before it moves by its own radian.
          scratch.travel = pose.travel;
          stand(scratch, pose, driver.driver, senses[driver.driver]! * unit[driver.driver]!);
          moveJoint(build, driver, scratch);
          link.gain = senses[root]! * scratch.rate[root]!;
          link.state = link.gain === 0 ? 'loose' : isOneWay(driver) ? 'pushed' : 'joined';
        }
        const rate = senses[root]! * pose.rate[root]!;
        unit[root] = 1;
        if (rate !== 0 && Number.isFinite(rate)) {
          // As the pedal moves them.
          for (let k = 1; k < levers.length; k++) {
            const lever = levers[k]!;
            unit[lever] = (senses[lever]! * pose.rate[lever]!) / rate;
          }
          continue;
        }
        stand(scratch, pose, root, senses[root]!);
        for (const joint of joints) {
          moveJoint(build, joint, scratch);
          unit[joint.driven] = senses[joint.driven]! * scratch.rate[joint.driven]!;
        }
      }
    },
  };
}

/** Puts one lever as it stands in a pose, moving at a rate of its own. */
function stand(scratch: Pose, pose: Pose, lever: number, rate: number): void {
  scratch.rotation[lever] = pose.rotation[lever]!;
  scratch.cosine[lever] = pose.cosine[lever]!;
  scratch.sine[lever] = pose.sine[lever]!;
  scratch.rate[lever] = rate;
  scratch.curvature[lever] = 0;
}

function isOneWay(joint: Joint): boolean {
  return joint.kind === 'coupling' && joint.oneWay;
}
