/** What every force along the load path follows from: where all levers stand, and the figures of springs, friction, plates and pad. */
import { rateOf } from '../forces/wire/rate.ts';
import type { SpringModel } from '../kinematics/attached.ts';
import type { Build } from '../kinematics/build.ts';
import type { Parameter } from '../kinematics/model.ts';
import type { Cause } from '../travel/causes.ts';
import { once } from '../travel/once.ts';
import type { Study } from './study.ts';

/** Undefined for a travel of which nothing is remembered. */
export function forcesCause(study: Study): Cause | undefined {
  return study.travel.memory && causeOf(study);
}

const causeOf = once((study: Study): Cause => {
  const { build, mechanism, memory } = study.travel;
  const { levers, joints, senses, attached, friction } = mechanism;
  const figures: number[] = [];
  const words: string[] = [];
  const put = (from: Parameter | undefined, count = 1): void => {
    words.push(from === undefined ? '-' : '+');
    if (from !== undefined) for (let i = 0; i < count; i++) figures.push(build.parameters[from + i]!);
  };
  for (const { index, name, plates, group } of levers) {
    const { drag, bearing } = friction.levers[index]!;
    words.push(`${name} ${senses[index]!} ${plates.length} ${group}`);
    put(levers[index]!.pivot, 3);
    put(levers[index]!.axis, 3);
    put(drag);
    put(bearing?.diameter);
    put(bearing?.friction);
  }
  for (const { index, name, kind, driver, driven } of joints) {
    const { coefficient, pin, bend } = friction.joints[index]!;
    words.push(`${name} ${kind} ${driver} ${driven}`);
    for (const each of [coefficient, pin, bend]) put(each);
  }
  for (const stiffness of attached.stiffness) put(stiffness);
  attached.plates.forEach((plates, i) => {
    words.push(`plates ${plates.lever}`);
    for (const each of [plates.count, plates.bore, plates.shaft, plates.seat, plates.idle, friction.vacuum[i]]) put(each);
  });
  for (const spring of attached.springs) putSpring(build, spring, words, figures, put);
  if (attached.pad?.kind === 'arm') put(attached.pad.pin, 9);
  else put(attached.pad?.ratio);
  const after = memory!.levers.flatMap((cause) => cause ?? []);
  return memory!.cause('forces', { after, words: words.join(' '), figures });
});

function putSpring(
  build: Build,
  spring: SpringModel,
  words: string[],
  figures: number[],
  put: (from: Parameter | undefined, count?: number) => void,
): void {
  words.push(`${spring.name} ${spring.kind} ${spring.lever}`);
  figures.push(rateOf(build, spring));
  if (spring.kind === 'torsion') {
    put(spring.preload);
    return;
  }
  put(spring.to, 9);
  put(spring.freeLength);
  put(spring.initialTension);
  if (spring.from.kind === 'place') {
    put(spring.from.place, 3);
    return;
  }
  words.push(`from ${spring.from.lever}`);
  put(spring.from.pin, 9);
}
