/**
 * Only one spring that counts as return closes the plates of a shaft.
 *
 * Springs break, mostly at a hook, and their anchors come off. With one spring that is a throttle that stays where it is. Two are
 * common practice, and student-formula rules ask for them: two or more return springs, located at the throttle body, of which a
 * position sensor's spring is none (Formula SAE Rules 2024, IC.3.3.2), at least two springs (Formula Student Rules, CV1.5.2). Both
 * were read in a copy of those rules. Whether each of two closes it alone is not checked by this version.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft: {pivot: [100, 0], drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}, stops: {open: 80 deg}}
 * pedal: {cable: main, pull: 34.5 mm}
 * cables: {main: {enters: [40, 24], to: shaft.wheel, slack: 1 mm}}
 * plates:
 *   bank: {lever: shaft, count: 4, bore: 40 mm, seat: 6 deg, idle: 1.5 deg}
 * springs:
 *   winder: {lever: shaft, rate: 3 N*mm/deg, preload: 400 N*mm}
 * # ^^^^^^ warning[single-return-spring]: winder is the only return spring that closes shaft
 *   in_sensor: {lever: shaft, rate: 0.2 N*mm/deg, preload: 10 N*mm, counts_as_return: false}
 * ```
 *
 * Cure: put a second return spring on the shaft, so that either of them closes it alone.
 */
import type { Finding } from '../finding.ts';
import { hasUnreadSprings, platesBodies } from '../platesClosing.ts';
import type { Study } from '../study.ts';
import { listed } from '../words.ts';

export function singleReturnSpring(study: Study): readonly Finding[] {
  if (hasUnreadSprings(study)) return [];
  return platesBodies(study).flatMap(({ levers, springs }): Finding[] => {
    const [spring, second] = springs.filter(({ source }) => source.countsAsReturn);
    if (spring === undefined || second !== undefined) return [];
    const names = listed(levers.map(({ name }) => name));
    return [
      {
        code: 'single-return-spring',
        severity: 'warning',
        part: spring.name,
        span: spring.source.nameSpan,
        message: `${spring.name} is the only return spring that closes ${names}: where it breaks, nothing does`,
        cure: `Put a second return spring on ${levers[0]?.name ?? names}, so that either closes it alone`,
        limit: { value: LEAST_SPRINGS, dimension: 'number', from: FROM },
        related: springs
          .filter((each) => each !== spring)
          .map((each) => ({ span: each.source.nameSpan, message: `${each.name} reaches it, but does not count as return` })),
      },
    ];
  });
}

const LEAST_SPRINGS = 2;
const FROM =
  'two or more return springs at the throttle body, a position sensor’s not among them: Formula SAE Rules 2024 IC.3.3.2 and Formula Student Rules CV1.5.2, both read; elsewhere common practice';
