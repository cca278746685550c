/**
 * All rules, each by its code, in the order in which their findings are told: what cannot be assembled first.
 */
import type { FindingCode } from './codes.ts';
import { withoutConsequences } from './consequences.ts';
import type { Finding } from './finding.ts';
import { cableLead } from './rules/cableLead.ts';
import { changePoint } from './rules/changePoint.ts';
import { closedStopPassed } from './rules/closedStopPassed.ts';
import { closingDips } from './rules/closingDips.ts';
import { closingLost } from './rules/closingLost.ts';
import { closingMargin } from './rules/closingMargin.ts';
import { driveAngle } from './rules/driveAngle.ts';
import { failureHoldsOpen } from './rules/failureHoldsOpen.ts';
import { freeOnBound } from './rules/freeOnBound.ts';
import { frictionLock } from './rules/frictionLock.ts';
import { grooveLeft } from './rules/grooveLeft.ts';
import { heldOpen } from './rules/heldOpen.ts';
import { keepOutClearance } from './rules/keepOutClearance.ts';
import { movementAtFull } from './rules/movementAtFull.ts';
import { movementAtRest } from './rules/movementAtRest.ts';
import { noReturnSpring } from './rules/noReturnSpring.ts';
import { notAssembled } from './rules/notAssembled.ts';
import { notToldApart } from './rules/notToldApart.ts';
import { offPlane } from './rules/offPlane.ts';
import { openingEarly } from './rules/openingEarly.ts';
import { openingMissed } from './rules/openingMissed.ts';
import { opensOtherwise } from './rules/opensOtherwise.ts';
import { outOfStep } from './rules/outOfStep.ts';
import { partsTouch } from './rules/partsTouch.ts';
import { plateBelowSeat } from './rules/plateBelowSeat.ts';
import { platePastSquare } from './rules/platePastSquare.ts';
import { profileLeft } from './rules/profileLeft.ts';
import { rodEndTilt } from './rules/rodEndTilt.ts';
import { rodOutOfAdjustment } from './rules/rodOutOfAdjustment.ts';
import { sensorPastRange } from './rules/sensorPastRange.ts';
import { sensorPastStop } from './rules/sensorPastStop.ts';
import { sideUndecided } from './rules/sideUndecided.ts';
import { signalInFaultBand } from './rules/signalInFaultBand.ts';
import { signalSpan } from './rules/signalSpan.ts';
import { signalTurnsBack } from './rules/signalTurnsBack.ts';
import { singleReturnSpring } from './rules/singleReturnSpring.ts';
import { slackUsedUp } from './rules/slackUsedUp.ts';
import { slotRunOut } from './rules/slotRunOut.ts';
import { springBindsOnArbor } from './rules/springBindsOnArbor.ts';
import { springCoilBind } from './rules/springCoilBind.ts';
import { springDeadCentre } from './rules/springDeadCentre.ts';
import { springOpens } from './rules/springOpens.ts';
import { springOverextended } from './rules/springOverextended.ts';
import { springOverstressed } from './rules/springOverstressed.ts';
import { springSlack } from './rules/springSlack.ts';
import { toleranceFailsRequirement } from './rules/toleranceFailsRequirement.ts';
import { toggleOpening } from './rules/toggleOpening.ts';
import { toggleReturning } from './rules/toggleReturning.ts';
import { touchesKeepOut } from './rules/touchesKeepOut.ts';
import { transmissionAngle } from './rules/transmissionAngle.ts';
import { turnsBack } from './rules/turnsBack.ts';
import type { Rule, Study } from './study.ts';

export const RULES: Readonly<Record<FindingCode, Rule>> = {
  'side-undecided': sideUndecided,
  'not-assembled': notAssembled,
  'change-point': changePoint,
  'toggle-opening': toggleOpening,
  'toggle-returning': toggleReturning,
  'held-open': heldOpen,
  'slack-used-up': slackUsedUp,
  'opens-otherwise': opensOtherwise,
  'closed-stop-passed': closedStopPassed,
  'plate-below-seat': plateBelowSeat,
  'plate-past-square': platePastSquare,
  'turns-back': turnsBack,
  'opening-missed': openingMissed,
  'opening-early': openingEarly,
  'no-return-spring': noReturnSpring,
  'single-return-spring': singleReturnSpring,
  'spring-opens': springOpens,
  'spring-dead-centre': springDeadCentre,
  'spring-slack': springSlack,
  'spring-overstressed': springOverstressed,
  'spring-overextended': springOverextended,
  'spring-coil-bind': springCoilBind,
  'spring-binds-on-arbor': springBindsOnArbor,
  'closing-lost': closingLost,
  'closing-dips': closingDips,
  'friction-lock': frictionLock,
  'closing-margin': closingMargin,
  'failure-holds-open': failureHoldsOpen,
  'out-of-step': outOfStep,
  'sensor-past-stop': sensorPastStop,
  'sensor-past-range': sensorPastRange,
  'signal-turns-back': signalTurnsBack,
  'signal-span': signalSpan,
  'signal-in-fault-band': signalInFaultBand,
  'touches-keep-out': touchesKeepOut,
  'parts-touch': partsTouch,
  'keep-out-clearance': keepOutClearance,
  'transmission-angle': transmissionAngle,
  'drive-angle': driveAngle,
  'rod-end-tilt': rodEndTilt,
  'cable-lead': cableLead,
  'profile-left': profileLeft,
  'groove-left': grooveLeft,
  'slot-run-out': slotRunOut,
  'rod-out-of-adjustment': rodOutOfAdjustment,
  'off-plane': offPlane,
  'movement-at-rest': movementAtRest,
  'movement-at-full': movementAtFull,
  'tolerance-fails-requirement': toleranceFailsRequirement,
  'free-on-bound': freeOnBound,
  'not-told-apart': notToldApart,
};

/** Codes whose rules take too long to be asked at every key press. */
export const LATE: ReadonlySet<string> = new Set<FindingCode>(['failure-holds-open', 'tolerance-fails-requirement', 'not-told-apart']);

/** What is found while a file is being written: all but what single failures do. */
export function findAll(study: Study): readonly Finding[] {
  return withoutConsequences(study, foundBy(study, false));
}

/** What single failures, tolerances and readings do, apart from the others: told once typing rests, and by `pedal-to-plate check`. */
export function findLate(study: Study): readonly Finding[] {
  return foundBy(study, true);
}

/** Both together, in the order in which they are told. */
export function inOrder(findings: readonly Finding[], late: readonly Finding[]): readonly Finding[] {
  if (late.length === 0) return findings;
  const order = Object.keys(RULES);
  return [...findings, ...late].sort((one, other) => order.indexOf(one.code) - order.indexOf(other.code));
}

function foundBy(study: Study, late: boolean): readonly Finding[] {
  return Object.entries(RULES).flatMap(([code, rule]) => (LATE.has(code) === late ? rule(study) : []));
}
