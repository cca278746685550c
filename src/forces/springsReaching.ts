/**
 * Which springs can close a lever all the way: those of all levers that rods, slots and couplings join it to, and those of what it
 * drives. A spring nearer to the pedal than a cable or a one-way coupling is not among them: neither pushes it closed. Nor is one beyond
 * free play, which would have to be crossed first.
 */
import type { SpringModel } from '../kinematics/attached.ts';
import type { Joint, Mechanism } from '../kinematics/model.ts';
import { hasPlay } from '../kinematics/rest.ts';

export function springsReaching(mechanism: Mechanism, lever: number): readonly SpringModel[] {
  const reached = leversReaching(mechanism, lever);
  return mechanism.attached.springs.filter((spring) => leversOf(spring).some((each) => reached.has(each)));
}

/** The levers from which a closing torque comes to a lever, itself among them. */
export function leversReaching(mechanism: Mechanism, lever: number): ReadonlySet<number> {
  const reached = new Set([lever]);
  for (const from of reached) {
    for (const joint of mechanism.joints) {
      if (joint.driver === from) reached.add(joint.driven);
      if (joint.driven === from && joint.driver !== undefined && passesBothWays(joint)) reached.add(joint.driver);
    }
  }
  return reached;
}

/** Whether the driving lever can close the driven one; the driven one always closes the driving one. */
function passesBothWays(joint: Joint): boolean {
  return joint.kind !== 'cable' && !hasPlay(joint);
}

/** Whether the pedal moves an end of a spring, and with it what the spring does to the levers. */
export function isMoved({ levers }: Mechanism, spring: SpringModel): boolean {
  return leversOf(spring).some((lever) => levers[lever]!.group >= 0);
}

/** The levers on which a spring works, the one of its column first. */
export function leversOf(spring: SpringModel): readonly number[] {
  return spring.kind !== 'torsion' && spring.from.kind === 'pin' ? [spring.lever, spring.from.lever] : [spring.lever];
}
