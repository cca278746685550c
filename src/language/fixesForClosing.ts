/**
 * What brings closing torque, without friction and over it: the preload of each torsion spring that reaches the shaft, the clocking of a
 * spring's arm. And slack for a cable that is tight at rest.
 */
import type { Finding } from '../findings/finding.ts';
import { frictionUnits, LOCKS_AT } from '../findings/frictionUnits.ts';
import { LENGTH_MARGIN } from '../findings/margin.ts';
import { along, limitOf, type Study } from '../findings/study.ts';
import { springsReaching } from '../forces/springsReaching.ts';
import { greatestOf, leastOf } from '../travel/extremes.ts';
import type { FixAim } from './fixAim.ts';

/** Of the greatest closing torque, what the least is to come to: the same that the finding's own mend aims at. */
const SOUND = 0.1;

/**
 * Every return spring that can be wound tighter; the finding's own mend is for one of them. None where the finding knows of none though
 * the springs are plain: more preload does not make up for a spring that opens.
 */
export function aimsToWind(study: Study, finding: Finding): readonly FixAim[] {
  const { mechanism, samples } = study.travel;
  const lever = mechanism.levers.find(({ name }) => name === finding.part);
  if (lever === undefined) return [];
  const springs = springsReaching(mechanism, lever.index).flatMap(({ source, lever: on }) =>
    source.kind === 'torsion' && source.countsAsReturn ? [{ source, isOwn: on === lever.index }] : [],
  );
  if (finding.mend === undefined && springs.every(({ source }) => source.preload?.formula === undefined)) return [];
  const column = `${lever.name}.closing`;
  const sound = (): number => SOUND * (greatestOf(along(study, column), samples)?.value ?? NaN);
  const least = (): number => leastOf(along(study, column), samples)?.value ?? NaN;
  return springs.map(({ source: { name, preload }, isOwn }): FixAim => {
    const unknown = `springs.${name}.preload`;
    // On the lever itself all of it arrives.
    if (isOwn) return { unknown, outcome: { kind: 'itself' }, target: () => (preload?.nominal ?? 0) + sound() - least() };
    return { unknown, outcome: { kind: 'least', column }, target: sound };
  });
}

/**
 * What closes it over friction with any one spring off: more preload of a torsion spring that is left, a shorter free length of one that is
 * drawn out or a longer one of one that is pressed. Where friction holds it with all springs on, each is asked to do it without another.
 */
export function aimsToOvercome(study: Study, { code, part, without }: Finding): readonly FixAim[] {
  const unit = frictionUnits(study).find(({ lever }) => lever.name === part);
  const springs = unit?.springs.filter(({ source }) => source.countsAsReturn) ?? [];
  const target = (): number => Math.max(limitOf(study, 'closing_margin').warning, LOCKS_AT);
  return springs.flatMap(({ name, source }): FixAim[] => {
    if (name === without || (source.kind !== 'torsion' && source.freeLength === undefined)) return [];
    const off = without ?? (code === 'friction-lock' ? springs.find((other) => other.name !== name)?.name : undefined);
    return [
      {
        unknown: `springs.${name}.${source.kind === 'torsion' ? 'preload' : 'free_length'}`,
        outcome: { kind: 'least', column: `${part}.margin`, ...(off !== undefined && { without: off }) },
        target,
        goesOn: true,
      },
    ];
  });
}

/**
 * More preload of a torsion spring on the shaft itself, all of which arrives everywhere: the dip becomes a smaller share of what closes it
 * at rest. Of a torque m at the dip and r at rest, p more makes m + p of r + p.
 */
export function aimsToLevel(study: Study, finding: Finding): readonly FixAim[] {
  const lever = study.travel.mechanism.levers.find(({ name }) => name === finding.part);
  const { worst } = finding;
  if (lever === undefined || worst === undefined) return [];
  return springsReaching(study.travel.mechanism, lever.index).flatMap(({ source, lever: on }): FixAim[] => {
    if (source.kind !== 'torsion' || !source.countsAsReturn || on !== lever.index) return [];
    const more = (): number => (LEVEL * along(study, `${lever.name}.closing`)(0) - worst.value) / (1 - LEVEL);
    const target = (): number => (source.preload?.nominal ?? 0) + more();
    return [{ unknown: `springs.${source.name}.preload`, outcome: { kind: 'itself' }, target }];
  });
}

/** Of the closing torque at rest, what the finding leaves without remark. */
const LEVEL = 0.8;

/** The arm on which a spring hangs, clocked so that its line stays on one side of the pivot. */
export function aimsToHang(study: Study, finding: Finding): readonly FixAim[] {
  const spring = study.definition.springs.find(({ name }) => name === finding.part);
  if (spring === undefined || spring.kind === 'torsion') return [];
  const column = `${spring.name}.torque`;
  const target = (): number => SOUND * (greatestOf(along(study, column), study.travel.samples)?.value ?? NaN);
  return [{ unknown: `levers.${spring.to.lever}.arms.${spring.to.part}.angle`, outcome: { kind: 'least', column }, target }];
}

/** Slack where it follows from a formula. */
export function aimsToSlacken({ definition }: Study, finding: Finding): readonly FixAim[] {
  const slack = definition.cables.find(({ name }) => name === finding.part)?.slack;
  const { worst } = finding;
  if (slack === undefined || worst === undefined) return [];
  return [{ unknown: slack.path, outcome: { kind: 'itself' }, target: () => slack.nominal + worst.value + LENGTH_MARGIN }];
}

/** A rod's length, where it follows from a formula, at the end of its adjuster. */
export function aimsToAdjust({ definition }: Study, finding: Finding): readonly FixAim[] {
  const rod = definition.rods.find(({ name }) => name === finding.part);
  const { limit } = finding;
  if (rod?.length === undefined || limit === undefined) return [];
  return [{ unknown: rod.length.path, outcome: { kind: 'itself' }, target: () => limit.value }];
}
