/**
 * Levers that go the wrong way as the pedal goes down.
 *
 * `opens-otherwise`: a lever goes against its `opens` altogether. `turns-back`: a lever closes again. `closed-stop-passed`: it would stand below its closed stop, where the stop holds it and the
 * linkage jams. `plate-below-seat`: its plate would stand beyond its seat and jam in the bore.
 */
import type { LeverModel } from '../../kinematics/model.ts';
import { greatestOf, leastOf, rangesBelow } from '../../travel/extremes.ts';
import type { Finding } from '../finding.ts';
import { along, type Study } from '../study.ts';
import { degrees, percent, rangeWords } from '../words.ts';

/** rad; less is rounding. */
const SAME = 1e-9;

export function opensOtherwise(study: Study): readonly Finding[] {
  return driven(study)
    .filter((lever) => goesOtherwise(study, lever))
    .map((lever) => ({
      code: 'opens-otherwise',
      severity: 'error',
      part: lever.name,
      span: lever.source.nameSpan,
      message: `${lever.name} is driven the other way than its \`opens\` says: it would close as the pedal goes down`,
      cure: 'Check `opens` of this lever, `wraps` of the drum and `opens` of the pedal',
    }));
}

/** Whether a lever closes where it should open; everything else said of its way would follow from that. */
function goesOtherwise(study: Study, lever: LeverModel): boolean {
  if (lever.source.opens === undefined) return false;
  const opening = along(study, `${lever.name}.opening`);
  const least = leastOf(opening, study.travel.samples)?.value ?? 0;
  const most = greatestOf(opening, study.travel.samples)?.value ?? 0;
  return least < -SAME && -least > most;
}

export function turnsBack(study: Study): readonly Finding[] {
  const { mechanism, samples, poseAt } = study.travel;
  return moving(study).flatMap((lever): Finding[] => {
    const sense = mechanism.senses[lever.index]!;
    const speed = (travel: number): number => {
      const pose = poseAt(travel);
      return Number.isNaN(pose.rotation[lever.index]!) ? NaN : sense * pose.rate[lever.index]!;
    };
    const ranges = rangesBelow(speed, samples).filter(({ from, to }) => to - from > SAME);
    if (ranges.length === 0) return [];
    const opening = along(study, `${lever.name}.opening`);
    const worst = ranges
      .map(({ from, to }) => ({ value: opening(from) - opening(to), travel: to }))
      .reduce((most, each) => (each.value > most.value ? each : most));
    if (worst.value <= SAME) return [];
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
function driven(study: Study): readonly LeverModel[] {
  return study.travel.mechanism.levers.filter((lever) => lever.group >= 0);
}

/** Those of them that go the way they should. */
function moving(study: Study): readonly LeverModel[] {
  return driven(study).filter((lever) => !goesOtherwise(study, lever));
}
