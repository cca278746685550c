/**
 * Open stops: the first contact in a group freezes it. The nearest cable upstream then takes the rest of the pedal's travel as
 * stretch; without one the pedal stops there.
 */
import { advance } from '../kinematics/advance.ts';
import type { Build } from '../kinematics/build.ts';
import { passedAt } from '../kinematics/joints/cable.ts';
import type { Group } from '../kinematics/model.ts';
import { createPose } from '../kinematics/pose.ts';
import { createFinder, followTurns, startTurns, type Finder, type Turns } from './places.ts';

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
  const finder = createFinder(build);
  let turns = startTurns(build);
  for (const group of mechanism.groups) {
    // A cable joint leads into its group, so it comes first.
    const inward = group.cable === undefined ? [] : [mechanism.cables[group.cable]!];
    const joints = [...inward, ...group.joints.map((index) => mechanism.joints[index]!)];
    for (const joint of joints) followTurns(build, finder, joint, turns);
    const contact = firstContact(build, group, finder, turns);
    if (contact === undefined) continue;
    contacts.push(contact);
    advance(build, contact.travel, pose);
    if (group.cable === undefined) {
      bounds.pedalStop = Math.max(parameters[mechanism.drive.travel]! * contact.travel, bounds.pedalRest);
      turns = startTurns(build);
    } else {
      const joint = mechanism.cables[group.cable]!;
      const held = passedAt(mechanism, joint.drivenEnd, joint.driven, parameters, pose.rotation[joint.driven]!);
      bounds.cableStop[group.cable] = Math.max(held, bounds.cableRest[group.cable]!);
    }
    // The stop is a turning place itself.
    for (const joint of joints) followTurns(build, finder, joint, turns);
  }
  return contacts;
}

function firstContact(build: Build, group: Group, finder: Finder, turns: Turns): Contact | undefined {
  const { mechanism, parameters } = build;
  const pose = createPose(mechanism);
  advance(build, 0, pose);
  let first: Contact | undefined;
  for (const lever of group.levers) {
    const { openStop, driver = -1 } = mechanism.levers[lever]!;
    if (openStop === undefined) continue;
    const sense = mechanism.senses[lever]!;
    const stop = parameters[openStop.parameter]!;
    // A lever that rests beyond its open stop is held by it from the first.
    if (sense * pose.rotation[lever]! > stop + MET) return { group: group.index, lever, travel: 0 };
    const found = finder.valueAt((at) => at.rotation[lever]!, driver, turns.levers[lever]!, [sense * stop]);
    const travel = Math.min(...found);
    if (found.length > 0 && (first === undefined || travel < first.travel)) first = { group: group.index, lever, travel };
  }
  return first;
}

/** rad; less is rounding. */
const MET = 1e-12;
