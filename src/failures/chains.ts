/**
 * What must come back so that a shaft with plates closes: the shaft with all that is joined to it, and whatever holds it open otherwise. A
 * lever between pedal and shaft that stays where it is holds the shaft by its cable, its one-way coupling, or across free play.
 */
import type { Motion } from '../forces/motion.ts';
import type { Joint, LeverModel, Mechanism } from '../kinematics/model.ts';
import { CableState, type Pose } from '../kinematics/pose.ts';

/** Levers with plates that close together, and the bodies that must come back with them, the shaft's own first, the pedal's last. */
export interface Chain {
  /** In the order of the file, one at least. */
  readonly shafts: readonly LeverModel[];
  readonly links: readonly ChainLink[];
}

export interface ChainLink {
  /** Index among the motion's bodies. */
  readonly body: number;
  /** The lever that speaks for it: the shaft of the plates, else its first from the pedal. */
  readonly lever: LeverModel;
  /** What it drives the link before it by; undefined of the shaft's own. */
  readonly by: Joint | undefined;
}

/** Of every body with plates. */
export function chainsOf(mechanism: Mechanism, motion: Motion): readonly Chain[] {
  return motion.bodies.flatMap(({ levers: members }, body): Chain[] => {
    const shafts = mechanism.levers.filter(({ index, plates }) => members.includes(index) && plates.length > 0);
    const [first] = shafts;
    return first === undefined ? [] : [{ shafts, links: [{ body, lever: first, by: undefined }, ...before(mechanism, motion, body)] }];
  });
}

function before(mechanism: Mechanism, { bodies, bodyOf }: Motion, body: number): readonly ChainLink[] {
  const links: ChainLink[] = [];
  for (let at = body; ;) {
    const root = mechanism.levers[bodies[at]!.root]!;
    const by = root.driver === undefined ? undefined : mechanism.joints[root.driver];
    if (by?.driver === undefined) return links;
    at = bodyOf[by.driver]!;
    links.push({ body: at, lever: mechanism.levers[bodies[at]!.root]!, by });
  }
}

/**
 * Whether a link holds the one before it where it stands, rather than leaving it loose. Past an open stop a cable of unknown stiffness is
 * not asked: what it is stretched by is not known and can only bring more back.
 * @param motion of the same pose
 */
export function holds({ attached }: Mechanism, motion: Motion, pose: Pose, { by }: ChainLink, driven: ChainLink): boolean {
  if (by === undefined) return true;
  if (by.kind !== 'cable') return motion.links[driven.body]!.state !== 'loose';
  if (pose.stretch[by.cable]! > 0 && attached.stiffness[by.cable] === undefined) return false;
  return pose.cableState[by.cable] !== CableState.slack;
}
