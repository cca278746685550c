/**
 * A drum turns further than its groove goes.
 *
 * The cable climbs out of its seat, and the next time it may come down beside the drum, where it holds the throttle open.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft:
 *     pivot: [100, 0]
 *     drums: {wheel: {radius: 20 mm, wraps: counterclockwise, groove: 55 deg}}
 * #                                                                   ^^^^^^ error[groove-left]: the cable leaves its seat
 * pedal: {cable: main, pull: 22 mm}
 * cables:
 *   main: {enters: [40, 20], to: shaft.wheel, slack: 1 mm}
 * ```
 *
 * Cure: carry the groove on to the greatest rotation or more, or take a larger drum.
 */
import { roundFigure } from '../../definition/quantity/roundFigures.ts';
import { greatestOf, rangesBelow } from '../../travel/extremes.ts';
import type { Finding } from '../finding.ts';
import { ANGLE_MARGIN } from '../margin.ts';
import { leverFigure, writeBy, type Study } from '../study.ts';
import { usedDrums, type UsedDrum } from '../usedDrums.ts';
import { degrees, quantityWords, rangeWords } from '../words.ts';

/** rad; less is rounding. */
const SAME = 1e-9;

export function grooveLeft(study: Study): readonly Finding[] {
  return usedDrums(study).flatMap((used) => grooveLeftBy(study, used));
}

function grooveLeftBy(study: Study, { drum, lever, source }: UsedDrum): readonly Finding[] {
  const { samples, poseAt } = study.travel;
  if (source.groove === undefined) return [];
  const groove = source.groove.nominal;
  const turned = leverFigure(study, drum.lever, 'turn', (travel) => Math.abs(poseAt(travel, drum.lever).rotation[drum.lever]!));
  const worst = greatestOf(turned, samples);
  if (worst === undefined || worst.value <= groove + SAME) return [];
  const enough = roundFigure(worst.value + ANGLE_MARGIN, 'angle', source.groove.unit, (angle) => angle >= worst.value);
  const ranges = rangesBelow((travel) => groove - turned(travel), samples);
  return [
    {
      code: 'groove-left',
      severity: 'error',
      part: `${lever.name}.${drum.name}`,
      span: source.groove.span,
      message: `${lever.name} turns ${degrees(worst.value)}, further than the ${degrees(groove)} of groove on ${drum.name} (${rangeWords(ranges)}): the cable leaves its seat`,
      cure: `Carry the groove on to ${quantityWords(enough, 'angle', source.groove.unit)} or more`,
      ranges,
      worst: { ...worst, dimension: 'angle' },
      limit: { value: groove, dimension: 'angle', from: 'groove of this drum' },
      ...writeBy(source.groove, enough),
    },
  ];
}
