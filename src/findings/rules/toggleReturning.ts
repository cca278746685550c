/**
 * Rod or cable comes in line with the arm that drives it: the return springs cannot push back through it.
 *
 * The drive angle is 0 there. The throttle springs pull on the driving arm without turning it, so a throttle that has passed this
 * place can stay open with the foot off. That is the most dangerous thing a linkage can do. What only follows from it is told beside it
 * and not as findings of their own: that the drive angle runs through its limit to 0 there, that the levers behind turn back from there,
 * that they never open fully.
 *
 * ```yaml
 * format: 1
 * levers:
 *   pedal: {pivot: [0, 0], arms: {out: {radius: 20 mm, angle: 150 deg}}}
 *   shaft: {pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 100 deg}}}
 * pedal: {lever: pedal, opens: counterclockwise, travel: 80 deg}
 * rods:
 *   link: {from: pedal.out, to: shaft.arm}
 * # ^^^^ error[toggle-returning]: the throttle can stay open
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
