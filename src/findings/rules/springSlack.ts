/**
 * A spring is slack over part of the travel: shorter, or for a compression spring longer, than without load.
 *
 * There it closes nothing. Its hooks rattle in their holes or its end leaves its seat, it wears through or drops off, and what comes
 * back of the pedal there is up to the other springs. A spring with initial tension takes hold with a jerk where it is drawn tight.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft:
 *     pivot: [100, 0]
 *     arms: {tail: {radius: 20 mm, angle: 240 deg}}
 *     drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}
 * pedal: {cable: main, pull: 34.3 mm}
 * cables: {main: {enters: [40, 24], to: shaft.wheel}}
 * springs:
 *   winder: {lever: shaft, rate: 3 N*mm/deg, preload: 400 N*mm}
 *   tail: {from: [40, 0], to: shaft.tail, rate: 0.5 N/mm, free_length: 55 mm}
 * #                                                                    ^^^^^ warning[spring-slack]: tail is slack from 0 % to 7.4 %
 * ```
 *
 * Cure: take a spring with a shorter free length, a longer one where it works in compression, or move its anchor.
 */
import type { Finding } from '../finding.ts';
import { LENGTH_MARGIN } from '../margin.ts';
import { springActions } from '../springActions.ts';
import { writeBy, type Study } from '../study.ts';
import { millimetres, percent, rangeWords } from '../words.ts';

export function springSlack(study: Study): readonly Finding[] {
  const { build } = study.travel;
  return springActions(study).flatMap(({ spring, slack, loosest }): Finding[] => {
    if (spring.kind === 'torsion' || spring.freeLength === undefined || loosest === undefined || slack.length === 0) return [];
    const free = build.parameters[spring.freeLength]!;
    const pulls = spring.kind === 'extension';
    const wanted = loosest.value + (pulls ? -LENGTH_MARGIN : LENGTH_MARGIN);
    return [
      {
        code: 'spring-slack',
        severity: 'warning',
        part: spring.name,
        span: spring.source.freeLength?.span ?? spring.source.nameSpan,
        message: `${spring.name} is slack ${rangeWords(slack)}: at ${percent(loosest.travel)} it is ${millimetres(loosest.value)} long and would be ${millimetres(free)} without load`,
        cure: `Take a ${pulls ? 'shorter' : 'longer'} free length, or move its anchor`,
        ranges: slack,
        worst: { ...loosest, dimension: 'length' },
        limit: { value: free, dimension: 'length', from: 'free length of this spring' },
        ...(wanted > 0 && writeBy(spring.source.freeLength, wanted)),
      },
    ];
  });
}
