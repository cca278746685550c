/** What of a spring's own strength is left open, each with the reason. */
import { OFTEN_KNOWN, stressLimits } from '../forces/wire/limits.ts';
import { standardOf } from '../forces/wire/materials.ts';
import type { SpringModel, WireModel } from '../kinematics/attached.ts';
import type { Study } from './study.ts';
import { wireLoads } from './wireLoads.ts';
import { millimetres } from './words.ts';

/** Of a spring that is given by its rate; and what stands for it where that is told of several springs in one line. */
export const GIVEN_BY_RATE = {
  one: 'whether it is stressed too much, since it is given by its `rate` and not by its `wire`',
  several: 'whether they are stressed too much, since they are given by their `rate` and not by their `wire`',
} as const;

/** Each follows `Not checked: `. */
export function wireNotChecked(study: Study, spring: SpringModel): readonly string[] {
  const { wire } = spring;
  if (wire === undefined) {
    return spring.kind === 'torsion' && spring.strip !== undefined
      ? ['whether its strip bears its stress, of which no strength is known, and whether its turns meet']
      : [GIVEN_BY_RATE.one];
  }
  const load = wireLoads(study).find((each) => each.spring.name === spring.name);
  if (load === undefined) return ['its stress, since it has no load that is known'];
  const material = wire.source.material.name;
  const isLasting = load.stresses.every(({ place }) => stressLimits(material, place).often !== undefined);
  return [
    ...(load.strength === undefined
      ? [`its stress, since the strength of ${material} (${standardOf(material)}) of ${millimetres(load.coil.diameter)} is not known`]
      : []),
    ...(isLasting ? [] : [`whether it lasts a million strokes: the limit is known of ${OFTEN_KNOWN} only`]),
    ...unmeasured(spring, wire),
  ];
}

function unmeasured({ kind }: SpringModel, { totalTurns, arbor, hookBend }: WireModel): readonly string[] {
  switch (kind) {
    case 'torsion':
      return arbor === undefined ? ['whether its coil binds on what stands in it, for want of `arbor`'] : [];
    case 'extension':
      return hookBend === undefined ? ['the twist where its hooks leave the coil, for want of `hook_bend`'] : [];
    case 'compression':
      return [...(totalTurns === undefined ? ['whether its turns meet, for want of `total_turns`'] : []), 'whether it buckles'];
  }
}
