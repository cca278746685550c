/**
 * The springs leave nothing that closes a shaft with plates somewhere in the travel.
 *
 * The closing torque is what all springs together bring to the shaft, friction left out. Where it falls to zero the plates stay where
 * they are when the foot comes off; below zero they go on open by themselves. At rest it is what presses the plates on their idle
 * stop. Levers that rods and couplings join lose it together and are told together. 0.001 N·mm or less counts as none.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft: {pivot: [100, 0], drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}, stops: {open: 80 deg}}
 * # ^^^^^ error[closing-lost]: Nothing closes shaft from 0 % to 2.9 % of pedal travel
 * pedal: {cable: main, pull: 34.5 mm}
 * cables: {main: {enters: [40, 24], to: shaft.wheel, slack: 1 mm}}
 * plates:
 *   bank: {lever: shaft, count: 4, bore: 40 mm, seat: 6 deg, idle: 1.5 deg}
 * springs:
 *   first: {lever: shaft, rate: 3 N*mm/deg, preload: 0 N*mm}
 *   second: {lever: shaft, rate: 2 N*mm/deg}
 * ```
 *
 * Cure: give the springs more preload, or move the one that fails so that it still closes there.
 */
import { greatestOf, leastOf, rangesBelow } from '../../travel/extremes.ts';
import type { SpringModel } from '../../kinematics/attached.ts';
import type { LeverModel } from '../../kinematics/model.ts';
import { deadCentres } from '../deadCentres.ts';
import type { Finding, Mend } from '../finding.ts';
import { closingOf, platesBodies, type Closing } from '../platesClosing.ts';
import { NO_TORQUE, springActions } from '../springActions.ts';
import { mendBy, writeBy, type Study } from '../study.ts';
import { isUnbounded, worstTorque } from '../unbounded.ts';
import { listed, newtonMillimetres, percent, rangeWords } from '../words.ts';

export function closingLost(study: Study): readonly Finding[] {
  return platesBodies(study).flatMap(({ levers, springs }): Finding[] => {
    const [lever] = levers;
    const closing = lever && closingOf(study, lever, springs);
    const worst = closing && leastOf(closing.torque, closing.samples);
    if (lever === undefined || closing === undefined || worst === undefined || worst.value > NO_TORQUE) return [];
    const opens = hasOpening(study, springs);
    // Without bound by no spring's fault: the linkage is at its dead centre, and that is told.
    if (isUnbounded(worst.value, 'torque') && !opens && deadCentres(study, 'drive').length > 0) return [];
    const ranges = rangesBelow((at) => closing.torque(at) - NO_TORQUE, closing.samples);
    const names = listed(levers.map(({ name }) => name));
    const least = worst.value < -NO_TORQUE ? worst.value : 0;
    const brought = isUnbounded(least, 'torque')
      ? `open ${lever.name} without bound`
      : `bring ${newtonMillimetres(least)} to ${lever.name}`;
    return [
      {
        code: 'closing-lost',
        severity: 'error',
        part: lever.name,
        span: lever.source.nameSpan,
        message: `Nothing closes ${names} ${rangeWords(ranges)}: the springs ${brought} at ${percent(worst.travel)}`,
        cure: 'Give the springs more preload, or move the one that fails so that it still closes there',
        ranges,
        ...worstTorque(worst),
        limit: { value: 0, dimension: 'torque', from: 'below it the throttle opens by itself; friction left out' },
        related: failing(study, springs, worst.travel),
        ...preloadMend(study, lever, springs, closing),
      },
    ];
  });
}

function hasOpening(study: Study, springs: readonly SpringModel[]): boolean {
  return springActions(study).some(({ spring: { name }, opening }) => opening !== undefined && springs.some((each) => each.name === name));
}

/** The springs that close nothing there. */
function failing(study: Study, springs: readonly SpringModel[], at: number): Finding['related'] & {} {
  return springActions(study).flatMap(({ spring, torques }) => {
    if (!springs.some(({ name }) => name === spring.name)) return [];
    const torque = Math.min(...torques.map((each) => each.torque(at)));
    if (!(torque <= NO_TORQUE)) return [];
    const message = torque < -NO_TORQUE ? `${spring.name} opens it there` : `${spring.name} brings nothing there`;
    return [{ span: spring.source.nameSpan, message }];
  });
}

/**
 * Of the greatest closing torque, what a mend aims at for the least: a torque that is only just above nothing closes no throttle.
 * Common practice, no source.
 */
const SOUND = 0.1;

function preloadMend(
  study: Study,
  lever: LeverModel,
  springs: readonly SpringModel[],
  { torque, samples }: Closing,
): { readonly mend?: Mend } {
  const wound = springs.filter(({ kind, source }) => kind === 'torsion' && source.countsAsReturn);
  const spring = wound.find((each) => each.lever === lever.index) ?? wound[0];
  const [least, greatest] = [leastOf(torque, samples)?.value, greatestOf(torque, samples)?.value];
  // More preload does not make up for a spring that opens: that one is to be mended.
  if (hasOpening(study, springs) || spring?.kind !== 'torsion' || least === undefined || greatest === undefined || !(greatest > NO_TORQUE))
    return {};
  // Without bound there is nothing that the aim could be a share of, nor a preload that makes up for it.
  if (isUnbounded(least, 'torque') || isUnbounded(greatest, 'torque')) return {};
  const { preload } = spring.source;
  const target = SOUND * greatest;
  // On the lever itself all of it arrives, and the figure is known at once.
  if (spring.lever === lever.index) return writeBy(preload, (preload?.nominal ?? 0) + target - least);
  if (preload === undefined) return {};
  return mendBy(study, preload.path, { kind: 'least', column: `${lever.name}.closing` }, target);
}
