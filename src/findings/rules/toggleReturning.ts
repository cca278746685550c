/**
 * Rod or cable comes in line with the arm that drives it: the return springs cannot push back through it.
 *
 * The drive angle is 0 there. The throttle springs pull on the driving arm without turning it, so a throttle that has passed this
 * place can stay open with the foot off. That is the most dangerous thing a linkage can do.
 *
 * ```yaml
 * format: 1
 * levers:
 *   pedal: {pivot: [0, 0], arms: {out: {radius: 20 mm, angle: 150 deg}}}
 *   shaft: {pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 100 deg}}}
 * # ^^^^^ warning[turns-back]: while the pedal still goes down
 * pedal: {lever: pedal, opens: counterclockwise, travel: 80 deg}
 * rods:
 *   link: {from: pedal.out, to: shaft.arm}
 * # ^^^^ error[toggle-returning]: the throttle can stay open
 * # ^^^^ error[drive-angle]: it is under 20°
 * ```
 *
 * Cure: clock the driving arm so that it does not reach the line of the rod, or take less travel.
 */
import { deadCentres } from '../deadCentres.ts';
import type { Finding } from '../finding.ts';
import type { Study } from '../study.ts';

export function toggleReturning(study: Study): readonly Finding[] {
  return deadCentres(study, 'drive');
}
