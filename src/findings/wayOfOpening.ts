/** Which levers the pedal moves, and which of them the way that their `opens` says. */
import type { LeverModel } from '../kinematics/model.ts';
import { greatestOf, leastOf } from '../travel/extremes.ts';
import { along, type Study } from './study.ts';

/** Levers that the pedal moves. */
export function drivenLevers(study: Study): readonly LeverModel[] {
  return study.travel.mechanism.levers.filter((lever) => lever.group >= 0);
}

/** Those of them that go the way they should. */
export function openingLevers(study: Study): readonly LeverModel[] {
  return drivenLevers(study).filter((lever) => !goesOtherwise(study, lever));
}

/** Whether a lever closes where it should open; everything else said of its way would follow from that. */
export function goesOtherwise(study: Study, lever: LeverModel): boolean {
  if (lever.source.opens === undefined) return false;
  const opening = along(study, `${lever.name}.opening`);
  const least = leastOf(opening, study.travel.samples)?.value ?? 0;
  const most = greatestOf(opening, study.travel.samples)?.value ?? 0;
  return least < -SAME_OPENING && -least > most;
}

/** rad; less is rounding. */
export const SAME_OPENING = 1e-9;
