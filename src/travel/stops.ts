/**
 * Open stops: the first contact in a group freezes it. The nearest cable upstream then takes the rest of the pedal's travel as
 * stretch; without one the pedal stops there.
 */
import { advance, advanceTo } from '../kinematics/advance.ts';
import type { Build } from '../kinematics/build.ts';
import { passedAt } from '../kinematics/joints/cable.ts';
import type { CableJoint, Group, Mechanism } from '../kinematics/model.ts';
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

/**
 * Settles the bounds' open-stop figures, group by group along the load path.
 * @param anew groups to settle, with all that are behind them; the others stop as the bounds have it. All where absent
 * @returns contacts of the groups that were settled, in that order
 */
export function settleStops(build: Build, finder = createFinder(build), anew?: ReadonlySet<number>): readonly Contact[] {
  const { mechanism, bounds, parameters } = build;
  const isAnew = (group: Group): boolean => anew === undefined || anew.has(group.index);
  const contacts: Contact[] = [];
  for (const group of mechanism.groups) {
    if (!isAnew(group)) continue;
    if (group.cable === undefined) bounds.pedalStop = Infinity;
    else bounds.cableStop[group.cable] = Infinity;
  }
  const pose = createPose(mechanism);
  let turns = startTurns(build);
  for (const group of mechanism.groups) {
    if (anew !== undefined && !leadsTo(mechanism, group, anew)) continue;
    // A cable joint leads into its group, so it comes first.
    const inward = group.cable === undefined ? [] : [mechanism.cables[group.cable]!];
    const joints = [...inward, ...group.joints.map((index) => mechanism.joints[index]!)];
    for (const joint of joints) followTurns(build, finder, joint, turns);
    const contact = isAnew(group) ? firstContact(build, group, finder, turns) : undefined;
    if (contact === undefined) continue;
    contacts.push(contact);
    advanceTo(build, contact.travel, pose, mechanism.levers[contact.lever]!.driver);
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

/** A group and all that its levers pull, directly or not: what stops it can reach no others. All for the group of the pedal. */
export function groupsBehind({ groups, cables, levers }: Mechanism, first: number): ReadonlySet<number> {
  const behind = new Set([first]);
  // They stand in load-path order, so each comes after the one that pulls it.
  for (const { index, cable } of groups)
    if (cable !== undefined && behind.has(groupBefore(cables[cable]!, levers) ?? -1)) behind.add(index);
  return behind;
}

/** Whether a group is one of some, or one of them hangs on it. */
function leadsTo(mechanism: Mechanism, { index }: Group, some: ReadonlySet<number>): boolean {
  const behind = groupsBehind(mechanism, index);
  return [...some].some((group) => behind.has(group));
}

/** Undefined where the pedal is the cable. */
function groupBefore({ driver }: CableJoint, levers: Mechanism['levers']): number | undefined {
  return driver === undefined ? undefined : levers[driver]!.group;
}

function firstContact(build: Build, group: Group, finder: Finder, turns: Turns): Contact | undefined {
  const { mechanism, parameters } = build;
  const pose = createPose(mechanism);
  advance(build, 0, pose);
  let first: Contact | undefined;
  for (const lever of group.levers) {
    const { openStop, driver } = mechanism.levers[lever]!;
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
