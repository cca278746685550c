/**
 * Rod, cable or fork leaves the driving arm too nearly in line.
 *
 * The drive angle lies between the part and the arm that moves it. Going down, a flat one is welcome: it makes the throttle open
 * softly. Coming back it is what the return springs push through, and near 0° friction in the driving lever is enough to hold the
 * throttle. A warning comes under 20°, an error under 10°: common practice, no source. Both can be set under `limits: {drive: …}`.
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
import { clockingMend } from '../clocking.ts';
import type { Finding } from '../finding.ts';
import { ANGLE_MARGIN } from '../margin.ts';
import { limitOf, type Study } from '../study.ts';

export function driveAngle(study: Study): readonly Finding[] {
  const limit = limitOf(study, 'drive');
  return study.travel.mechanism.joints.flatMap((joint): Finding[] => {
    if (joint.kind === 'coupling') return [];
    const found = angleBeyondLimit(study, joint, {
      code: 'drive-angle',
      angle: 'drive',
      limit,
      way: 1,
      what: 'a drive angle',
      cure: 'Turn the driving arm nearer to square with it there',
    });
    return found ? [{ ...found, ...clockingMend(study, joint, 'drive', limit.warning + ANGLE_MARGIN) }] : [];
  });
}
