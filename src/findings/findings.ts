/**
 * All rules, in the order in which their findings are told: what cannot be assembled first.
 */
import type { Finding } from './finding.ts';
import { angles } from './rules/angles.ts';
import { heldOpen, slackUsedUp } from './rules/atRest.ts';
import { changePoint } from './rules/changePoint.ts';
import { openingEarly, openingMissed } from './rules/fullOpening.ts';
import { movements } from './rules/movements.ts';
import { notAssembled } from './rules/notAssembled.ts';
import { offPlane } from './rules/offPlane.ts';
import { drumsLeft, rodOutOfAdjustment, slotRunOut } from './rules/ranges.ts';
import { sideUndecided } from './rules/sideUndecided.ts';
import { toggles } from './rules/toggles.ts';
import { closedStopPassed, opensOtherwise, turnsBack } from './rules/wayOfOpening.ts';
import type { Rule, Study } from './study.ts';

const RULES: readonly Rule[] = [
  sideUndecided,
  notAssembled,
  changePoint,
  toggles,
  heldOpen,
  slackUsedUp,
  opensOtherwise,
  closedStopPassed,
  turnsBack,
  openingMissed,
  openingEarly,
  angles,
  drumsLeft,
  slotRunOut,
  rodOutOfAdjustment,
  offPlane,
  movements,
];

export function findAll(study: Study): readonly Finding[] {
  return RULES.flatMap((rule) => rule(study));
}
