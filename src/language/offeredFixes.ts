/**
 * Fixes that solve for a figure, as they are offered: nothing is computed yet. A finding's own mend comes first, then other figures that
 * would do it; where a figure follows from a formula of one `let`, that `let` is offered.
 */
import type { Value } from '../definition/definition.ts';
import type { Span } from '../definition/span.ts';
import type { FindingCode } from '../findings/codes.ts';
import type { Finding } from '../findings/finding.ts';
import type { Study } from '../findings/study.ts';
import type { Answers } from '../solve.ts';
import type { FixAim } from './fixAim.ts';
import { letBehind } from './letBehind.ts';
import { goalOf, wordsOf } from './fixWords.ts';
import { aimsToSquare } from './fixesForAngles.ts';
import { aimsToAdjust, aimsToSlacken, aimsToWind } from './fixesForClosing.ts';
import { aimsAtStop, aimsToClose, aimsToLand, aimsToOpen } from './fixesForOpening.ts';
import { aimsToFitSensor } from './fixesForSensor.ts';
import { touches } from './touches.ts';
import { valueAt } from './values.ts';

/** A fix to choose; `solveFix` works it out. */
export interface OfferedFix {
  /** What is changed and what for, e.g. `Set the length of link so that shaft closes`. */
  readonly title: string;
  /** Of the finding that it mends; undefined for an open stop beyond the plates' 90°, of which nothing is found. */
  readonly code: FindingCode | undefined;
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
  readonly finding: Finding | undefined;
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
  const alike = plansFor(answers, (about) => about.code === code && about.part === part).filter(
    ({ offer }) => offer.writes === writes && offer.figure === figure,
  );
  return alike.find(({ offer }) => offer.span.start === span.start) ?? alike[0];
}

function plansAt(answers: Answers, span: Span): readonly Plan[] {
  return plansFor(answers, (about) => touches(about.span, span));
}

/** What a fix is about. */
interface About {
  readonly code: FindingCode | undefined;
  readonly part: string;
  readonly span: Span;
}

function plansFor({ study, findings, definition }: Answers, isMeant: (about: About) => boolean): readonly Plan[] {
  if (study === undefined || definition === undefined) return [];
  const ofFindings = findings.filter(isMeant).flatMap((finding) => {
    const own: readonly FixAim[] = finding.mend === undefined ? [] : [aimOf(finding.mend)];
    return distinct([...own, ...aimsFor(study, finding)].flatMap((aim) => planFor(study, aim, finding.part, finding.span, finding) ?? []));
  });
  const told = new Set(ofFindings.map(({ offer }) => `${offer.part} ${offer.writes}`));
  const ofStops = definition.levers.flatMap(({ name, stops }) => {
    const open = stops?.open;
    if (open === undefined || !isMeant({ code: undefined, part: name, span: open.span })) return [];
    return aimsAtStop(definition, name).flatMap((aim) => planFor(study, aim, name, open.span, undefined) ?? []);
  });
  return [...sayingMore(ofFindings), ...ofStops.filter(({ offer }) => !told.has(`${offer.part} ${offer.writes}`))];
}

function aimOf({ unknown, outcome, target }: NonNullable<Finding['mend']>): FixAim {
  return { unknown, outcome, target: () => target };
}

/** What could mend a finding besides its own mend. */
function aimsFor(study: Study, finding: Finding): readonly FixAim[] {
  switch (finding.code) {
    case 'opening-missed':
      return aimsToOpen(study, finding);
    case 'opening-early':
      return aimsToLand(study, finding);
    case 'held-open':
      return aimsToClose(study, finding);
    case 'transmission-angle':
    case 'toggle-opening':
      return aimsToSquare(study, finding, 'transmission');
    case 'drive-angle':
    case 'toggle-returning':
      return aimsToSquare(study, finding, 'drive');
    case 'sensor-past-range':
    case 'sensor-past-stop':
    case 'signal-in-fault-band':
      return aimsToFitSensor(study, finding);
    case 'closing-lost':
      return aimsToWind(study, finding);
    case 'slack-used-up':
      return aimsToSlacken(study, finding);
    case 'rod-out-of-adjustment':
      return aimsToAdjust(study, finding);
    default:
      return [];
  }
}

/** Undefined where the figure is not one that the file could hold, or follows from more than one `let`. */
function planFor(study: Study, aim: FixAim, part: string, span: Span, finding: Finding | undefined): Plan | undefined {
  const { definition, travel } = study;
  const value = valueAt(definition, aim.unknown);
  // What is not in the file may be added where the linkage knows it; a spring's preload is 0 where left out.
  const canAdd =
    aim.unknown.endsWith('.preload') || travel.mechanism.dimensions.some(({ path, kind }) => path === aim.unknown && kind !== 'written');
  if (value === undefined && !canAdd) return undefined;
  const behind = value?.formula === undefined ? undefined : letBehind(definition, value);
  if (value?.formula !== undefined && behind === undefined) return undefined;
  const writes = behind?.value.path ?? aim.unknown;
  const title = `${wordsOf(writes).change} so that ${goalOf(finding?.code, part, aim.outcome)}`;
  return { offer: { title, code: finding?.code, part, span, writes, figure: aim.unknown }, aim, finding, study, value };
}

/** Without those that another, of a finding told before, says already in the same words. */
function sayingMore(plans: readonly Plan[]): readonly Plan[] {
  return plans.filter(({ offer }, i) => plans.findIndex((other) => other.offer.title === offer.title) === i);
}

/** The first of those that write the same figure: the finding knows its target best. */
function distinct(plans: readonly Plan[]): readonly Plan[] {
  return plans.filter(({ offer }, i) => plans.findIndex((other) => other.offer.writes === offer.writes) === i);
}
