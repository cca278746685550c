/**
 * A lever closes again while the pedal still goes down.
 *
 * The arm that drives it has passed its dead centre. From there on, pressing further closes the throttle, and full throttle lies
 * somewhere before the floor. It is told beside that dead centre (`toggle-returning`, or `change-point`) where that explains all of it,
 * and is a finding of its own where it does not.
 *
 * ```yaml
 * format: 1
 * levers:
 *   pedal: {pivot: [0, 0], arms: {out: {radius: 20 mm, angle: 170 deg}}}
 *   shaft: {pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 90 deg}}}
 * pedal: {lever: pedal, opens: counterclockwise, travel: 60 deg}
 * rods:
 *   link: {from: pedal.out, to: shaft.arm}
 * # ^^^^ error[toggle-returning]: the throttle can stay open
 * ```
 *
 * Cure: take less travel, or clock the driving arm back so that it does not reach its dead centre.
 */
import { rangesBelow, type Along } from '../../travel/extremes.ts';
import type { Finding, Mend, TravelRange } from '../finding.ts';
import { along, leverFigure, writeBy, type Study } from '../study.ts';
import { openingLevers, SAME_OPENING } from '../wayOfOpening.ts';
import { degrees, rangeWords } from '../words.ts';

export function turnsBack(study: Study): readonly Finding[] {
  const { mechanism, samples, poseAt } = study.travel;
  return openingLevers(study).flatMap((lever): Finding[] => {
    const sense = mechanism.senses[lever.index]!;
    const speed = leverFigure(study, lever.index, 'speed', (travel) => {
      const pose = poseAt(travel, lever.index);
      return Number.isNaN(pose.rotation[lever.index]!) ? NaN : sense * pose.rate[lever.index]!;
    });
    const ranges = rangesBelow(speed, samples).filter(({ from, to }) => to - from > SAME_OPENING);
    if (ranges.length === 0) return [];
    const opening = along(study, `${lever.name}.opening`);
    const worst = ranges
      .map(({ from, to }) => ({ value: opening(from) - opening(to), travel: to }))
      .reduce((most, each) => (each.value > most.value ? each : most));
    if (worst.value <= SAME_OPENING) return [];
    return [
      {
        code: 'turns-back',
        severity: 'warning',
        part: lever.name,
        span: lever.source.nameSpan,
        message: `${lever.name} turns back by ${degrees(worst.value)} ${rangeWords(ranges)}, while the pedal still goes down`,
        cure: 'Take less travel, or turn the arm that drives it so that it does not pass its dead centre',
        ranges,
        worst: { ...worst, dimension: 'angle' },
        ...lessPedal(study, ranges, opening),
      },
    ];
  });
}

/** Ending the pedal's travel where the lever turns back, if it does so once and to the end, and stands somewhere before that. */
function lessPedal({ definition: { pedal } }: Study, ranges: readonly TravelRange[], opening: Along): { readonly mend?: Mend } {
  const [range] = ranges;
  if (pedal === undefined || range === undefined || ranges.length > 1 || range.to < 1 || !(range.from > 0)) return {};
  if (Number.isNaN(opening(range.from / 2))) return {};
  const travel = pedal.kind === 'lever' ? pedal.travel : pedal.pull;
  return writeBy(travel, travel.nominal * range.from);
}
