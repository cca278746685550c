/**
 * Rod, cable or fork meets the driven arm too nearly in line.
 *
 * The transmission angle lies between the part and the arm it turns; at 90° all its force turns the arm, at 0° none does. The
 * flatter it is, the more of the foot's force goes into the throttle shaft's bearings instead, and friction can hold the shaft where
 * it stands. A warning comes under 40°, a textbook minimum from memory, an error under 25°: common practice, no source. Both can be
 * set under `limits: {transmission: …}`. A stretch that runs to 0° is told with its dead centre (`toggle-opening`).
 *
 * ```yaml
 * format: 1
 * levers:
 *   pedal: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 60 deg}}}
 *   shaft: {pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 60 deg}}}
 * pedal: {lever: pedal, opens: counterclockwise, travel: 90 deg}
 * rods:
 *   link: {from: pedal.out, to: shaft.arm}
 * # ^^^^ warning[transmission-angle]: a transmission angle of 30° at 100 % of pedal travel
 * ```
 *
 * Cure: clock the driven arm so that it is nearer to square with the rod there, or take less travel.
 */
import { angleBeyondLimit } from '../angleBeyondLimit.ts';
import { transmissionCheck } from '../angleChecks.ts';
import { clockingMend } from '../clocking.ts';
import type { Finding } from '../finding.ts';
import { ANGLE_MARGIN } from '../margin.ts';
import type { Study } from '../study.ts';

export function transmissionAngle(study: Study): readonly Finding[] {
  const check = transmissionCheck(study);
  return study.travel.mechanism.joints.flatMap((joint): Finding[] => {
    const found = joint.kind === 'coupling' ? undefined : angleBeyondLimit(study, joint, check);
    if (joint.kind === 'coupling' || found === undefined) return [];
    return [{ ...found, ...clockingMend(study, joint, 'transmission', check.limit.warning + ANGLE_MARGIN) }];
  });
}
