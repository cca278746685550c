/**
 * Open stops: the first contact in a group freezes it. The nearest cable upstream then takes the rest of the pedal's travel as
 * stretch; without one the pedal stops there.
 */
import { advance } from '../kinematics/advance.ts';
import type { Build } from '../kinematics/build.ts';
import { passedAt } from '../kinematics/joints/cable.ts';
import type { Group } from '../kinematics/model.ts';
import { createPose } from '../kinematics/pose.ts';
import { createFinder, findTurns } from './places.ts';

/** A group that an open stop holds. */
export interface Contact {
  readonly group: number;
  /** Lever whose stop is met first. */
  readonly lever: number;
  /** Pedal travel at which it is met, a fraction. */
  readonly travel: number;
}

/** Settles the bounds' open-stop figures, group by group along the load path. @returns contacts in that order */
export function settleStops(build: Build): readonly Contact[] {
  const { mechanism, bounds, parameters } = build;
  const contacts: Contact[] = [];
  bounds.pedalStop = Infinity;
  bounds.cableStop.fill(Infinity);
  const pose = createPose(mechanism);
  for (const group of mechanism.groups) {
    const contact = firstContact(build, group);
    if (contact === undefined) continue;
    contacts.push(contact);
    advance(build, contact.travel, pose);
    if (group.cable === undefined) {
      bounds.pedalStop = parameters[mechanism.drive.travel]! * contact.travel;
    } else {
      const joint = mechanism.cables[group.cable]!;
      const held = passedAt(mechanism, joint.drivenEnd, joint.driven, parameters, pose.rotation[joint.driven]!);
      bounds.cableStop[group.cable] = Math.max(held, bounds.cableRest[group.cable]!);
    }
  }
  return contacts;
}

function firstContact(build: Build, group: Group): Contact | undefined {
  const { mechanism, parameters } = build;
  const stopped = group.levers.filter((lever) => mechanism.levers[lever]!.openStop !== undefined);
  if (stopped.length === 0) return undefined;
  const finder = createFinder(build);
  const turns = findTurns(build, finder);
  let first: Contact | undefined;
  for (const lever of stopped) {
    const target = mechanism.senses[lever]! * parameters[mechanism.levers[lever]!.openStop!.parameter]!;
    const [travel] = [...finder.valueAt((pose) => pose.rotation[lever]!, turns.levers[lever]!, [target])].sort((a, b) => a - b);
    if (travel !== undefined && (first === undefined || travel < first.travel)) first = { group: group.index, lever, travel };
  }
  return first;
}
