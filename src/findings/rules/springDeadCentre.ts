/**
 * A spring's line passes the axis of its lever within the travel: on the other side it opens the throttle.
 *
 * At its dead centre a spring turns the lever neither way; beyond it pulls the lever on open, harder with every degree. A throttle
 * that was pushed past that place can stay there. It is an error for a spring that counts as return where a torque comes from its
 * lever to plates, else a warning. The place is where the line of the spring meets the lever's axis, computed and not sampled.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft:
 *     pivot: [100, 0]
 *     arms: {tail: {radius: 20 mm, angle: 240 deg}}
 *     drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}
 *     stops: {open: 60 deg}
 * pedal: {cable: main, pull: 25.13 mm}
 * cables: {main: {enters: [40, 24], to: shaft.wheel}}
 * plates: {bank: {lever: shaft, count: 4, bore: 40 mm, seat: 6 deg, idle: 1.5 deg}}
 * springs:
 *   winder: {lever: shaft, rate: 3 N*mm/deg, preload: 400 N*mm}
 * # ^^^^^^ warning[single-return-spring]: winder is the only return spring that closes shaft over the whole travel
 *   tail: {from: [100, 60], to: shaft.tail, rate: 0.5 N/mm, free_length: 40 mm}
 * # ^^^^ error[spring-dead-centre]: tail passes its dead centre at 50 % of pedal travel
 * ```
 *
 * Cure: clock the arm on which the spring hangs, or move its anchor, so that its line stays on one side of the pivot over the whole travel. Of
 * the anchor no figure is offered: it takes two.
 */
import type { Finding } from '../finding.ts';
import { openingSeverity } from '../openingSeverity.ts';
import { springActions } from '../springActions.ts';
import type { Study } from '../study.ts';
import { openingWords, worstTorque } from '../unbounded.ts';
import { percent, rangeWords } from '../words.ts';

export function springDeadCentre(study: Study): readonly Finding[] {
  return springActions(study).flatMap(({ spring, opening }): Finding[] => {
    if (opening === undefined || opening.deadCentres.length === 0) return [];
    const { lever, worst, ranges, deadCentres } = opening;
    const met = rangeWords(deadCentres.map((at) => ({ from: at, to: at })));
    return [
      {
        code: 'spring-dead-centre',
        severity: openingSeverity(study, spring, lever),
        part: spring.name,
        span: spring.source.nameSpan,
        message: `${spring.name} passes its dead centre ${met} and opens ${lever.name} ${rangeWords(ranges)}, ${openingWords(worst.value)} at ${percent(worst.travel)}${opening.brought ? `, both its ends through the linkage` : ''}`,
        cure: `Move its anchor or its arm so that its line stays on one side of the pivot of ${lever.name}`,
        ranges,
        ...worstTorque(worst),
      },
    ];
  });
}
