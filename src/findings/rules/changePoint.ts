/**
 * The links of a four-bar all come to lie on one line, and may go on from there either way.
 *
 * It happens where shortest and longest link together are exactly as long as the other two, as in a parallelogram: driven through
 * that line the linkage may fold over and drive the shaft backwards. Which way it goes hangs on play and dirt. That both angles of the rod
 * run to 0 there, that the return springs cannot push back through it and that the shaft turns back from there is told beside it.
 *
 * ```yaml
 * format: 1
 * levers:
 *   pedal: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 60 deg}}}
 *   shaft: {pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 60 deg}}}
 * pedal: {lever: pedal, opens: counterclockwise, travel: 150 deg}
 * rods:
 *   link: {from: pedal.out, to: shaft.arm}
 * # ^^^^ error[change-point]: passes its change point at 80 % of pedal travel
 * ```
 *
 * Cure: end the pedal's travel before it, or change one length by a few tenths of a millimetre, so that shortest and longest together are shorter
 * than the other two.
 */
import { classify } from '../../kinematics/fourBar/index.ts';
import { leastOf } from '../../travel/extremes.ts';
import { fourBarOf } from '../fourBarOf.ts';
import type { Finding } from '../finding.ts';
import { along, type Study } from '../study.ts';
import { percent } from '../words.ts';

/** rad; at a change point found to rounding the angle is the square root of that. */
const IN_LINE = 1e-5;

export function changePoint(study: Study): readonly Finding[] {
  const { mechanism, samples } = study.travel;
  return mechanism.joints.flatMap((joint): Finding[] => {
    if (joint.kind !== 'rod') return [];
    const links = fourBarOf(study.travel, joint);
    const kind = links && classify(links);
    if (kind?.kind !== 'class' || kind.grashof !== 'III') return [];
    const least = leastOf(along(study, `${joint.name}.transmission`), samples);
    if (least === undefined || least.value > IN_LINE) return [];
    return [
      {
        code: 'change-point',
        severity: 'error',
        part: joint.name,
        span: joint.source.nameSpan,
        message: `The four-bar of ${joint.name} (${kind.name}) passes its change point at ${percent(least.travel)} of pedal travel: all its links lie on one line, and it may go on either way`,
        cure: 'Change one of its lengths so that it has no change point, or take less travel',
        worst: { value: least.value, dimension: 'angle', travel: least.travel },
        ranges: [{ from: least.travel, to: least.travel }],
      },
    ];
  });
}
