/** What stands behind a joint on the load path. */
import type { Joint, LeverModel, Mechanism } from './model.ts';

/** Whether the pedal moves a lever through a joint, the lever that the joint itself drives among them. */
export function isBehind({ joints, levers }: Mechanism, joint: Joint, lever: LeverModel): boolean {
  for (let at = lever.driver; at !== undefined;) {
    const before = joints[at]!;
    if (before === joint) return true;
    at = before.driver === undefined ? undefined : levers[before.driver]!.driver;
  }
  return false;
}
