/**
 * Rod, cable or fork leaves the driving arm too nearly in line.
 *
 * The drive angle lies between the part and the arm that moves it. Going down, a flat one is welcome: it makes the throttle open
 * softly. Coming back it is what the return springs push through, and near 0° friction in the driving lever is enough to hold the
 * throttle. A warning comes under 20°, an error under 10°: common practice, no source. Both can be set under `limits: {drive: …}`. A
 * stretch that runs to 0° is told with its dead centre (`toggle-returning`).
 *
 * ```yaml
 * format: 1
 * levers:
 *   pedal: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 30 deg}}}
 *   shaft: {pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 90 deg}}}
 * pedal: {lever: pedal, opens: counterclockwise, travel: 40 deg}
 * rods:
 *   link: {from: pedal.out, to: shaft.arm}
 * # ^^^^ warning[drive-angle]: a drive angle of 13° at 0 % of pedal travel
 * ```
 *
 * Cure: clock the driving arm so that it is nearer to square with the rod there, even if the throttle then opens less softly.
 */
import { angleBeyondLimit } from '../angleBeyondLimit.ts';
import { driveCheck } from '../angleChecks.ts';
import { clockingMend } from '../clocking.ts';
import type { Finding } from '../finding.ts';
import { ANGLE_MARGIN } from '../margin.ts';
import type { Study } from '../study.ts';

export function driveAngle(study: Study): readonly Finding[] {
  const check = driveCheck(study);
  return study.travel.mechanism.joints.flatMap((joint): Finding[] => {
    const found = joint.kind === 'coupling' ? undefined : angleBeyondLimit(study, joint, check);
    if (joint.kind === 'coupling' || found === undefined) return [];
    return [{ ...found, ...clockingMend(study, joint, 'drive', check.limit.warning + ANGLE_MARGIN) }];
  });
}
