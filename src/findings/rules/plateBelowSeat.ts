/**
 * Plates would stand beyond their seat.
 *
 * Closed by more than their idle opening they wedge in the bore and do not open again by themselves, or only with a jerk. It comes
 * from a closed stop set below the idle position, or from a shaft that turns back past it.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft:
 *     pivot: [100, 0]
 *     drums: {wheel: {radius: 20 mm, wraps: counterclockwise}}
 *     stops: {closed: -2 deg, open: 60 deg}
 * pedal: {cable: main, pull: 21.94 mm}
 * cables:
 *   main: {enters: [40, 20], to: shaft.wheel, slack: 1 mm}
 * plates:
 *   bank: {lever: shaft, count: 2, bore: 40 mm, seat: 6 deg, idle: 1.5 deg}
 * #                                                                ^^^^^^^ error[plate-below-seat]: 0.5° beyond their seat at 0 % of pedal travel
 * ```
 *
 * Cure: set the closed stop so that it is met before the plates touch the bore, at 0 where the plates are drawn on it; where the shaft turns
 * back past its seat, end the pedal's travel before the dead centre that it turns back from.
 */
import { leastOf, rangesBelow } from '../../travel/extremes.ts';
import type { Finding } from '../finding.ts';
import { along, writeBy, type Study } from '../study.ts';
import { openingLevers, SAME_OPENING } from '../wayOfOpening.ts';
import { degrees, percent } from '../words.ts';

export function plateBelowSeat(study: Study): readonly Finding[] {
  const { samples } = study.travel;
  return openingLevers(study).flatMap((lever): Finding[] => {
    // A lever with plates has a closed stop always, by itself at 0.
    if (lever.closedStop === undefined) return [];
    const opening = along(study, `${lever.name}.opening`);
    const least = leastOf(opening, samples);
    return lever.plates.flatMap((plates): Finding[] => {
      const seat = -(plates.idle?.nominal ?? 0);
      if (least === undefined || !(least.value < seat - SAME_OPENING)) return [];
      return [
        {
          code: 'plate-below-seat',
          severity: 'error',
          part: plates.name,
          span: plates.idle?.span ?? plates.nameSpan,
          message: `The plates ${plates.name} would stand ${degrees(seat - least.value)} beyond their seat at ${percent(least.travel)} of pedal travel: they jam in the bore`,
          ranges: rangesBelow((travel) => opening(travel) - seat + SAME_OPENING, samples),
          worst: { ...least, dimension: 'angle' },
          limit: { value: seat, dimension: 'angle', from: 'seat of these plates' },
          // They are drawn on their idle stop.
          ...((lever.source.stops?.closed?.nominal ?? 0) < seat && writeBy(lever.source.stops?.closed, 0)),
        },
      ];
    });
  });
}
