/**
 * Levers that go the wrong way as the pedal goes down.
 *
 * `turns-back`: a lever closes again. `closed-stop-passed`: it would stand below its closed stop, where the stop holds it and the
 * linkage jams. `plate-below-seat`: its plate would stand beyond its seat and jam in the bore.
 */
import type { LeverModel } from '../../kinematics/model.ts';
import { leastOf, rangesBelow } from '../../travel/extremes.ts';
import type { Finding } from '../finding.ts';
import { along, type Study } from '../study.ts';
import { degrees, percent, rangeWords } from '../words.ts';

/** rad; less is rounding. */
const SAME = 1e-9;

export function turnsBack(study: Study): readonly Finding[] {
  const { mechanism, samples, poseAt } = study.travel;
  return moving(study).flatMap((lever): Finding[] => {
    const sense = mechanism.senses[lever.index]!;
    const speed = (travel: number): number => {
      const pose = poseAt(travel);
      return Number.isNaN(pose.rotation[lever.index]!) ? NaN : sense * pose.rate[lever.index]!;
    };
    const ranges = rangesBelow((travel) => speed(travel) + SAME, samples).filter(({ from, to }) => to - from > SAME);
    if (ranges.length === 0) return [];
    const opening = along(study, `${lever.name}.opening`);
    const worst = ranges
      .map(({ from, to }) => ({ value: opening(from) - opening(to), travel: to }))
      .reduce((most, each) => (each.value > most.value ? each : most));
    return [
      {
        code: 'turns-back',
        severity: 'warning',
        part: lever.name,
        span: lever.source.nameSpan,
        message: `${lever.name} turns back by ${degrees(worst.value, 2)} ${rangeWords(ranges)}, while the pedal still goes down`,
        cure: 'Take less travel, or turn the arm that drives it so that it does not pass its dead centre',
        ranges,
        worst: { ...worst, dimension: 'angle' },
      },
    ];
  });
}

export function closedStopPassed(study: Study): readonly Finding[] {
  const { build, samples } = study.travel;
  return moving(study).flatMap((lever): Finding[] => {
    if (lever.closedStop === undefined) return [];
    const closed = build.parameters[lever.closedStop.parameter]!;
    const opening = along(study, `${lever.name}.opening`);
    const least = leastOf(opening, samples);
    const found: Finding[] = [];
    if (least !== undefined && least.value < closed - SAME) {
      const ranges = rangesBelow((travel) => opening(travel) - closed + SAME, samples);
      found.push({
        code: 'closed-stop-passed',
        severity: 'error',
        part: lever.name,
        span: lever.closedStop.span,
        message: `${lever.name} would stand ${degrees(closed - least.value, 2)} below its closed stop at ${percent(least.travel)} of pedal travel (${rangeWords(ranges)}): the linkage jams there`,
        ranges,
        worst: { ...least, dimension: 'angle' },
        limit: { value: closed, dimension: 'angle', from: 'closed stop of this lever' },
      });
    }
    for (const plates of lever.plates) {
      const seat = -(plates.idle?.nominal ?? 0);
      if (least === undefined || !(least.value < seat - SAME)) continue;
      const ranges = rangesBelow((travel) => opening(travel) - seat + SAME, samples);
      found.push({
        code: 'plate-below-seat',
        severity: 'error',
        part: plates.name,
        span: plates.idle?.span ?? plates.nameSpan,
        message: `The plates ${plates.name} would stand ${degrees(seat - least.value, 2)} beyond their seat at ${percent(least.travel)} of pedal travel: they jam in the bore`,
        ranges,
        worst: { ...least, dimension: 'angle' },
        limit: { value: seat, dimension: 'angle', from: 'seat of these plates' },
      });
    }
    return found;
  });
}

/** Levers that the pedal moves. */
function moving(study: Study): readonly LeverModel[] {
  return study.travel.mechanism.levers.filter((lever) => lever.group >= 0);
}
