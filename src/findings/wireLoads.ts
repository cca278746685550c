/**
 * How much each spring that is wound from wire is loaded along the pedal, and what that does to its wire. Worked out once a study; rules,
 * facts and hover speak of it.
 */
import { springTension } from '../forces/springs.ts';
import { tensileStrength } from '../forces/wire/materials.ts';
import { coilOf } from '../forces/wire/rate.ts';
import { wireStresses, type WireStress } from '../forces/wire/stress.ts';
import type { Coil } from '../forces/wire/torsion.ts';
import type { SpringModel, WireModel } from '../kinematics/attached.ts';
import { following, greatestOf, type Along, type Extreme } from '../travel/extremes.ts';
import { once } from '../travel/once.ts';
import { missingOf, springActions } from './springActions.ts';
import { along, type Study } from './study.ts';

export interface WireLoad {
  readonly spring: SpringModel;
  readonly wire: WireModel;
  readonly coil: Coil;
  /** Size of its torque, N·m, or of its force, N. */
  readonly load: Along;
  readonly samples: readonly number[];
  readonly greatest: Extreme;
  /** Least tensile strength of its wire, Pa; undefined where it is not known. */
  readonly strength: number | undefined;
  readonly stresses: readonly WireStress[];
}

/** Of every spring with `wire` that the pedal moves and whose load is known. */
export const wireLoads = once((study: Study): readonly WireLoad[] => {
  const { build } = study.travel;
  return springActions(study).flatMap(({ spring, samples }): WireLoad[] => {
    const { wire } = spring;
    if (wire === undefined || missingOf(spring) !== undefined) return [];
    const load = loadOf(study, spring);
    const greatest = greatestOf(load, samples);
    if (greatest === undefined || !Number.isFinite(greatest.value)) return [];
    const coil = coilOf(build, wire);
    const strength = tensileStrength(wire.source.material.name, coil.diameter);
    return [{ spring, wire, coil, load, samples, greatest, strength, stresses: wireStresses(build, spring, wire) }];
  });
});

export interface StressedAt extends WireStress {
  /** Pa. */
  readonly stress: number;
  /** What it bears without taking a set over what it has; undefined where its strength is not known, infinite without load. */
  readonly safety: number | undefined;
}

/** The place that is nearest to taking a set at a load (N·m or N). */
export function worstStress({ stresses, strength }: WireLoad, load: number): StressedAt | undefined {
  const [worst] = [...stresses].sort((a, b) => b.perLoad / b.limits.held - a.perLoad / a.limits.held);
  if (worst === undefined) return undefined;
  const stress = worst.perLoad * load;
  return { ...worst, stress, safety: strength && (worst.limits.held * strength) / stress };
}

/** Greatest load, N·m or N, that no place of the wire is harmed by; undefined where nothing is known. */
export function bearable({ stresses, strength }: WireLoad, which: 'held' | 'often'): number | undefined {
  if (strength === undefined) return undefined;
  const loads = stresses.flatMap(({ limits, perLoad }) => (limits[which] === undefined ? [] : [(limits[which] * strength) / perLoad]));
  return loads.length === 0 ? undefined : Math.min(...loads);
}

function loadOf(study: Study, spring: SpringModel): Along {
  if (spring.kind === 'torsion') return following(along(study, `${spring.name}.torque`), Math.abs);
  const { build, poseAt } = study.travel;
  return (at) => Math.abs(springTension(build, poseAt(at), spring));
}
