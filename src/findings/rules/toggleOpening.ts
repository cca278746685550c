/**
 * Rod or cable comes in line with the arm it drives: the pedal can open the throttle no further.
 *
 * The transmission angle is 0 there. All the force goes into the bearing of the driven lever and none turns it, so the foot comes up
 * against something hard before the plates are open, and a worn joint may snap over to the other side. What only follows from it is told
 * beside it and not as findings of their own: that the part reaches no further, that its angle runs through the limit to 0 there, that
 * the shaft behind it never opens fully.
 *
 * ```yaml
 * format: 1
 * levers:
 *   crank:
 *     pivot: [0, 0]
 *     arms: {out: {radius: 36 mm, angle: 150 deg}}
 *     drums: {wheel: {radius: 25 mm, wraps: clockwise}}
 *   shaft: {pivot: [95, 14], arms: {arm: {radius: 30 mm, angle: 66 deg}}}
 * pedal: {cable: main, pull: 32 mm}
 * cables:
 *   main: {enters: [-70, 34], to: crank.wheel, slack: 1 mm}
 * rods:
 *   link: {from: crank.out, to: shaft.arm}
 * # ^^^^ error[toggle-opening]: the pedal cannot turn shaft beyond it
 * ```
 *
 * Cure: clock the driven arm so that it is nearest to square with the rod about the middle of its way, or take less travel.
 */
import { deadCentres } from '../deadCentres.ts';
import type { Finding } from '../finding.ts';
import type { Study } from '../study.ts';

export function toggleOpening(study: Study): readonly Finding[] {
  return deadCentres(study, 'transmission');
}
