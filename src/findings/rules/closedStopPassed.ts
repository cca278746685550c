/**
 * Somewhere on the way a lever would stand below its closed stop.
 *
 * The stop holds it there and the pedal still wants to move it: the linkage jams, or something bends. It comes from a lever that
 * turns back so far that it passes the position in which it was drawn.
 *
 * ```yaml
 * format: 1
 * levers:
 *   pedal: {pivot: [0, 0], arms: {out: {radius: 20 mm, angle: 150 deg}}}
 *   shaft:
 *     pivot: [100, 0]
 *     arms: {arm: {radius: 40 mm, angle: 100 deg}}
 *     stops: {closed: 0 deg}
 * #                   ^^^^^ error[closed-stop-passed]: below its closed stop at 100 % of pedal travel
 * pedal: {lever: pedal, opens: counterclockwise, travel: 120 deg}
 * rods:
 *   link: {from: pedal.out, to: shaft.arm}
 * # ^^^^ error[toggle-returning]: the throttle can stay open
 * ```
 *
 * Cure: end the pedal's travel before the dead centre from which the lever turns back, or clock the driving arm so that it does not reach
 * it.
 */
import { leastOf, rangesBelow } from '../../travel/extremes.ts';
import type { Finding } from '../finding.ts';
import { along, type Study } from '../study.ts';
import { openingLevers, SAME_OPENING } from '../wayOfOpening.ts';
import { degrees, percent, rangeWords } from '../words.ts';

export function closedStopPassed(study: Study): readonly Finding[] {
  const { build, samples } = study.travel;
  return openingLevers(study).flatMap((lever): Finding[] => {
    if (lever.closedStop === undefined) return [];
    const closed = build.parameters[lever.closedStop.parameter]!;
    const opening = along(study, `${lever.name}.opening`);
    const least = leastOf(opening, samples);
    if (least === undefined || least.value >= closed - SAME_OPENING) return [];
    const ranges = rangesBelow((travel) => opening(travel) - closed + SAME_OPENING, samples);
    return [
      {
        code: 'closed-stop-passed',
        severity: 'error',
        part: lever.name,
        span: lever.closedStop.span,
        message: `${lever.name} would stand ${degrees(closed - least.value)} below its closed stop at ${percent(least.travel)} of pedal travel (${rangeWords(ranges)}): the linkage jams there`,
        ranges,
        worst: { ...least, dimension: 'angle' },
        limit: { value: closed, dimension: 'angle', from: 'closed stop of this lever' },
      },
    ];
  });
}
