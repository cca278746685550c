/**
 * A spring turns its lever open instead of closing it.
 *
 * Somewhere in the travel, or all the way, its torque goes with the foot and against the springs that close. A spring that counts as
 * return and from whose lever a torque comes to plates must never do that: it is an error. On a pedal behind a cable, or where
 * `counts_as_return: false` says that it is meant to help the foot, it is a warning. A spring that closes at first and opens past its
 * dead centre is `spring-dead-centre`.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft:
 *     pivot: [100, 0]
 *     arms: {tail: {radius: 20 mm, angle: 0 deg}}
 *     drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}
 *     stops: {open: 60 deg}
 * pedal: {cable: main, pull: 25.13 mm}
 * cables: {main: {enters: [40, 24], to: shaft.wheel}}
 * plates: {bank: {lever: shaft, count: 4, bore: 40 mm, seat: 6 deg, idle: 1.5 deg}}
 * springs:
 *   winder: {lever: shaft, rate: 3 N*mm/deg, preload: 900 N*mm}
 * # ^^^^^^ warning[single-return-spring]: winder is the only return spring that closes shaft over the whole travel
 *   tail: {from: [60, 60], to: shaft.tail, rate: 0.5 N/mm, free_length: 20 mm}
 * # ^^^^ error[spring-opens]: tail opens shaft from 0 % to 100 % of pedal travel, by up to 531 N·mm at 47.9 %
 * ```
 *
 * Cure: hang the spring on the other side of the pivot, or turn the way it is wound.
 */
import type { Finding } from '../finding.ts';
import { openingSeverity } from '../openingSeverity.ts';
import { springActions } from '../springActions.ts';
import { writeBy, type Study } from '../study.ts';
import { openingWords, worstTorque } from '../unbounded.ts';
import { percent, rangeWords } from '../words.ts';

export function springOpens(study: Study): readonly Finding[] {
  return springActions(study).flatMap(({ spring, opening }): Finding[] => {
    if (opening === undefined || opening.deadCentres.length > 0) return [];
    const { lever, worst, ranges } = opening;
    const { source } = spring;
    const preload = source.kind === 'torsion' ? source.preload : undefined;
    return [
      {
        code: 'spring-opens',
        severity: openingSeverity(study, spring, lever),
        part: spring.name,
        span: source.nameSpan,
        message: `${spring.name} opens ${lever.name} ${rangeWords(ranges)}, ${openingWords(worst.value)} at ${percent(worst.travel)}${opening.brought ? `, both its ends through the linkage` : ''}`,
        cure:
          source.kind === 'torsion'
            ? 'Wind it the other way, or give it more preload'
            : `Hang it on the other side of the pivot of ${lever.name}`,
        ranges,
        ...worstTorque(worst),
        ...(preload !== undefined && preload.nominal < 0 && writeBy(preload, -preload.nominal)),
      },
    ];
  });
}
