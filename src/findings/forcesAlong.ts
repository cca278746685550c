/**
 * Closing torques and the pedal's effort as functions of pedal travel, worked out once at each place for all levers together: several
 * rules and facts speak of them.
 */
import { createStatics, type StaticsSolver } from '../forces/closing.ts';
import type { Along } from '../travel/extremes.ts';
import type { Study } from './study.ts';

/** Closing torque at a lever, N·m; the column `<lever>.closing`. */
export function closingAlong(study: Study, lever: number): Along {
  const forces = forcesOf(study);
  return (travel) => forcesAt(study, forces, travel).closing[lever]! + 0;
}

/** N; the column `pedal.effort`. */
export function effortAlong(study: Study): Along {
  const forces = forcesOf(study);
  return (travel) => forcesAt(study, forces, travel).effort;
}

interface Forces {
  readonly solver: StaticsSolver;
  readonly known: Map<number, Known>;
}

interface Known {
  readonly closing: Float64Array;
  readonly effort: number;
}

function forcesOf(study: Study): Forces {
  const forces = all.get(study) ?? { solver: createStatics(study.travel.build), known: new Map<number, Known>() };
  all.set(study, forces);
  return forces;
}

const all = new WeakMap<Study, Forces>();

function forcesAt({ travel: { poseAt } }: Study, { solver, known }: Forces, travel: number): Known {
  const found = known.get(travel);
  if (found !== undefined) return found;
  const { closing, effort } = solver.at(poseAt(travel));
  const fresh = { closing: Float64Array.from(closing), effort };
  known.set(travel, fresh);
  return fresh;
}
