/** How messages speak of a joint. */
import type { Joint } from '../kinematics/model.ts';

/** E.g. `The rod link`; begins a sentence. */
export function nameOf(joint: Joint): string {
  return `The ${joint.kind} ${joint.name}`;
}
