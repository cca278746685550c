/** What the foot feels with a spring taken off, along the travel: both ways of the pedal from one look at each place. */
import { createFriction, type FrictionSolver } from '../forces/friction/statics.ts';
import type { Along } from '../travel/extremes.ts';
import { oncePer } from '../travel/once.ts';
import { rememberedForce } from './forcesAlong.ts';
import type { Study } from './study.ts';

/** N, where `pedal.effort` and `pedal.release` are; NaN where they are not known. */
export interface FootOff {
  /** The column `<spring>.effort_off`. */
  readonly effort: Along;
  /** The column `<spring>.release_off`. */
  readonly release: Along;
}

/** @param without name of the spring that is taken off */
export const footOff = oncePer((study: Study, without: string): FootOff => {
  const { build, poseAt } = study.travel;
  const known = new Map<number, { readonly effort: number; readonly release: number }>();
  let solver: FrictionSolver | undefined;
  const at = (travel: number): { readonly effort: number; readonly release: number } => {
    const before = known.get(travel);
    if (before !== undefined) return before;
    const { effort, release } = (solver ??= createFriction(build)).at(poseAt(travel), without);
    const found = { effort, release };
    known.set(travel, found);
    return found;
  };
  return {
    effort: rememberedForce(study, (travel) => at(travel).effort, `effort without ${without}`),
    release: rememberedForce(study, (travel) => at(travel).release, `release without ${without}`),
  };
});
