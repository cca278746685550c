/**
 * Fixes that solve for a figure, as they are offered: nothing is computed yet. A finding's own mend comes first, then other figures that
 * would do it; where a figure follows from a formula of one `let`, that `let` is offered.
 */
import type { Value } from '../definition/definition.ts';
import type { Span } from '../definition/span.ts';
import type { FindingCode } from '../findings/codes.ts';
import { withFollowing } from '../findings/consequences.ts';
import type { Finding } from '../findings/finding.ts';
import type { Study } from '../findings/study.ts';
import type { Answers } from '../solve.ts';
import type { FixAim } from './fixAim.ts';
import { letBehind } from './letBehind.ts';
import { goalOf, wordsOf } from './fixWords.ts';
import { aimsToSquare } from './fixesForAngles.ts';
import { aimsToLead } from './fixesForCables.ts';
import { aimsToAdjust, aimsToHang, aimsToLevel, aimsToOvercome, aimsToSlacken, aimsToWind } from './fixesForClosing.ts';
import { aimsToEndBefore, aimsToEndBeforeChange, aimsToEndBeforeReturn, aimsToReach } from './fixesForDeadCentres.ts';
import { aimsToClose, aimsToLand, aimsToOpen, aimsToSeat, aimsToSquarePlates } from './fixesForOpening.ts';
import { aimsToFitSensor } from './fixesForSensor.ts';
import { touches } from './touches.ts';
import { valueAt } from './values.ts';

/** A fix to choose; `solveFix` works it out. */
export interface OfferedFix {
  /** What is solved for and what for, e.g. `Solve for the length of link so that shaft closes`: the figure is not known yet. */
  readonly title: string;
  /** Of the finding that it mends. */
  readonly code: FindingCode;
  /** The part that the finding is about. */
  readonly part: string;
  /** Place of the finding. */
  readonly span: Span;
  /** Path of the figure that is written. */
  readonly writes: string;
  /** Path of the figure that is meant: another one where `writes` is the `let` behind it. */
  readonly figure: string;
}

/** An offered fix with what it takes to work it out. */
export interface Plan {
  readonly offer: OfferedFix;
  readonly aim: FixAim;
  readonly finding: Finding;
  readonly study: Study;
  /** The figure at `offer.figure`; undefined where the file leaves it out. */
  readonly value: Value | undefined;
}

/** The fixes for the findings that a stretch touches, in their order, the finding's own mend first. Computes nothing. */
export function offeredFixes(answers: Answers, span: Span): readonly OfferedFix[] {
  return plansAt(answers, span).map(({ offer }) => offer);
}

/** The plan of an offer in answers that may be newer; undefined where it is offered no longer. */
export function planOf(answers: Answers, { code, part, writes, figure, span }: OfferedFix): Plan | undefined {
  const alike = plansFor(answers, (finding) => finding.code === code && finding.part === part).filter(
    ({ offer }) => offer.writes === writes && offer.figure === figure,
  );
  return alike.find(({ offer }) => offer.span.start === span.start) ?? alike[0];
}

/** What could be written besides, once something is written that leaves an offer's part wanting still: the plans for it in these answers. */
export function offersBeside(answers: Answers, { offer }: Plan, written: readonly string[]): readonly OfferedFix[] {
  const goOn = plansFor(answers, ({ part }) => part === offer.part).filter(({ aim }) => aim.goesOn === true);
  return goOn.map((plan) => plan.offer).filter(({ writes }) => !written.includes(writes));
}

function plansAt(answers: Answers, span: Span): readonly Plan[] {
  return plansFor(answers, (finding) => touches(finding.span, span));
}

function plansFor({ study, findings }: Answers, isMeant: (finding: Finding) => boolean): readonly Plan[] {
  if (study === undefined) return [];
  const ofFindings = withFollowing(findings)
    .filter(isMeant)
    .flatMap((finding) => {
      const aims = AIMS[finding.code]?.(study, finding) ?? [];
      // An aim that says on which side to stay knows more than the finding's own mend of the same figure.
      const isKnownBetter = aims.some(({ unknown, stay }) => stay !== undefined && unknown === finding.mend?.unknown);
      const own: readonly FixAim[] = finding.mend === undefined || isKnownBetter ? [] : [aimOf(finding.mend)];
      return distinct([...own, ...aims].flatMap((aim) => planFor(study, aim, finding) ?? []));
    });
  return sayingMore(ofFindings);
}

function aimOf({ unknown, outcome, target }: NonNullable<Finding['mend']>): FixAim {
  return { unknown, outcome, target: () => target };
}

/** What could mend a finding besides its own mend, for those that something could. */
const AIMS: Readonly<Partial<Record<FindingCode, (study: Study, finding: Finding) => readonly FixAim[]>>> = {
  'opening-missed': aimsToOpen,
  'opening-early': aimsToLand,
  'plate-past-square': aimsToSquarePlates,
  'held-open': aimsToClose,
  'plate-below-seat': (study, finding) => [...aimsToSeat(study, finding), ...aimsToEndBeforeReturn(study, finding)],
  'closed-stop-passed': aimsToEndBeforeReturn,
  'not-assembled': aimsToReach,
  'change-point': aimsToEndBeforeChange,
  'transmission-angle': (study, finding) => aimsToSquare(study, finding, 'transmission'),
  'toggle-opening': (study, finding) => [
    ...aimsToSquare(study, finding, 'transmission'),
    ...aimsToEndBefore(study, finding.part, 'transmission'),
  ],
  'drive-angle': (study, finding) => aimsToSquare(study, finding, 'drive'),
  'toggle-returning': (study, finding) => [...aimsToSquare(study, finding, 'drive'), ...aimsToEndBefore(study, finding.part, 'drive')],
  'sensor-past-range': aimsToFitSensor,
  'sensor-past-stop': aimsToFitSensor,
  'signal-in-fault-band': aimsToFitSensor,
  'closing-lost': aimsToWind,
  'closing-margin': aimsToOvercome,
  'friction-lock': aimsToOvercome,
  'closing-dips': aimsToLevel,
  'spring-dead-centre': aimsToHang,
  'cable-lead': aimsToLead,
  'slack-used-up': aimsToSlacken,
  'rod-out-of-adjustment': aimsToAdjust,
};

/** Whether there are fixes for findings of its kind. Which of them its own figures allow, `offeredFixes` says. */
export const isMendable = ({ code, mend }: Finding): boolean => mend !== undefined || AIMS[code] !== undefined;

/** Undefined where the figure is not one that the file could hold, or follows from more than one `let`. */
function planFor(study: Study, aim: FixAim, finding: Finding): Plan | undefined {
  const { code, part, span } = finding;
  const { definition, travel } = study;
  const value = valueAt(definition, aim.unknown);
  // What is not in the file may be added where the linkage knows it; a spring's preload is 0 where left out.
  const canAdd =
    aim.unknown.endsWith('.preload') || travel.mechanism.dimensions.some(({ path, kind }) => path === aim.unknown && kind !== 'written');
  if (value === undefined && !canAdd) return undefined;
  const behind = value?.formula === undefined ? undefined : letBehind(definition, value);
  if (value?.formula !== undefined && behind === undefined) return undefined;
  const writes = behind?.value.path ?? aim.unknown;
  const title = `Solve for ${wordsOf(writes).figure} so that ${goalOf(code, part, aim.outcome, writes)}`;
  return { offer: { title, code, part, span, writes, figure: aim.unknown }, aim, finding, study, value };
}

/** Without those that another, of a finding told before, says already in the same words. */
function sayingMore(plans: readonly Plan[]): readonly Plan[] {
  return plans.filter(({ offer }, i) => plans.findIndex((other) => other.offer.title === offer.title) === i);
}

/** The first of those that write the same figure: the finding knows its target best. */
function distinct(plans: readonly Plan[]): readonly Plan[] {
  return plans.filter(({ offer }, i) => plans.findIndex((other) => other.offer.writes === offer.writes) === i);
}
