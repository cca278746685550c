/**
 * What forces along the load path follow from: where the levers stand, and the figures of springs, friction, plates and pad. Of all levers, and
 * of one: what closes it comes from the levers that rods, slots and couplings join it to and from what these drive, and nothing comes to it
 * through a cable from the side of the pedal.
 */
import { leversOf } from '../forces/springsReaching.ts';
import { rateOf } from '../forces/wire/rate.ts';
import type { SpringModel } from '../kinematics/attached.ts';
import type { Build } from '../kinematics/build.ts';
import type { Mechanism, Parameter } from '../kinematics/model.ts';
import type { Cause } from '../travel/causes.ts';
import { once, oncePer } from '../travel/once.ts';
import type { Study } from './study.ts';

/** Of all forces. Undefined for a travel of which nothing is remembered. */
export function forcesCause(study: Study): Cause | undefined {
  return study.travel.memory && causeOfAll(study);
}

/** Of what closes a lever and of what friction holds it. Undefined for a travel of which nothing is remembered. */
export function closingCause(study: Study, lever: number): Cause | undefined {
  const { memory, mechanism } = study.travel;
  const { group } = mechanism.levers[lever]!;
  return memory && (group < 0 ? causeOfAll(study) : causeOfGroup(study, group));
}

const causeOfAll = once((study: Study): Cause => causeWithin(study, 'forces', () => true));

const causeOfGroup = oncePer((study: Study, group: number): Cause => {
  const { mechanism } = study.travel;
  const groups = groupsFrom(mechanism, group);
  const root = mechanism.levers[mechanism.groups[group]!.root]!;
  return causeWithin(study, `forces at ${root.name}`, (lever) => groups.has(mechanism.levers[lever]!.group));
});

/** A group and those that it drives by cables. */
function groupsFrom({ joints, levers }: Mechanism, group: number): ReadonlySet<number> {
  const found = new Set([group]);
  // In load-path order each joint's driver stands before it.
  for (const { driver, driven } of joints) if (driver !== undefined && found.has(levers[driver]!.group)) found.add(levers[driven]!.group);
  return found;
}

/** @param isWithin whether what acts on a lever counts, by its index */
function causeWithin(study: Study, key: string, isWithin: (lever: number) => boolean): Cause {
  const { build, mechanism, memory } = study.travel;
  const { levers, joints, senses, attached, friction, groups, drive } = mechanism;
  const figures: number[] = [];
  const words: string[] = [];
  const put = (from: Parameter | undefined, count = 1): void => {
    words.push(from === undefined ? '-' : '+');
    if (from !== undefined) for (let i = 0; i < count; i++) figures.push(build.parameters[from + i]!);
  };
  const nameOf = (lever: number | undefined): string | undefined => (lever === undefined ? undefined : levers[lever]!.name);
  const standing = new Set<number>();
  for (const { index, name, plates, group, pivot, axis } of levers) {
    if (!isWithin(index)) continue;
    standing.add(index);
    const { drag, bearing } = friction.levers[index]!;
    words.push(`${name} ${senses[index]!} ${plates.length} ${nameOf(groups[group]?.root)}`);
    put(pivot, 3);
    put(axis, 3);
    put(drag);
    put(bearing?.diameter);
    put(bearing?.friction);
  }
  for (const joint of joints) {
    const { index, name, kind, driver, driven } = joint;
    if (!isWithin(driven)) continue;
    const { coefficient, pin, bend } = friction.joints[index]!;
    words.push(`${name} ${kind} ${nameOf(driver)} ${nameOf(driven)}`);
    for (const each of [coefficient, pin, bend]) put(each);
    if (kind === 'cable') put(attached.stiffness[joint.cable]);
  }
  attached.plates.forEach((plates, i) => {
    if (!isWithin(plates.lever)) return;
    words.push(`plates ${nameOf(plates.lever)}`);
    for (const each of [plates.count, plates.bore, plates.shaft, plates.seat, plates.idle, friction.vacuum[i]]) put(each);
  });
  for (const spring of attached.springs) {
    const worked = leversOf(spring);
    if (!worked.some(isWithin)) continue;
    for (const lever of worked) standing.add(lever);
    words.push(`${spring.name} ${spring.kind} ${worked.map(nameOf).join(' ')}`);
    putSpring(build, spring, figures, put);
  }
  if (drive.kind === 'cable' || isWithin(drive.lever)) {
    if (attached.pad?.kind === 'arm') put(attached.pad.pin, 9);
    else put(attached.pad?.ratio);
  }
  const after = [...standing].flatMap((lever) => memory!.levers[lever] ?? []);
  return memory!.cause(key, { after, words: words.join(' '), figures });
}

function putSpring(build: Build, spring: SpringModel, figures: number[], put: (from: Parameter | undefined, count?: number) => void): void {
  figures.push(rateOf(build, spring));
  if (spring.kind === 'torsion') {
    put(spring.preload);
    return;
  }
  put(spring.to, 9);
  put(spring.freeLength);
  put(spring.initialTension);
  if (spring.from.kind === 'place') put(spring.from.place, 3);
  else put(spring.from.pin, 9);
}
