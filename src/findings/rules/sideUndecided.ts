/**
 * A part is drawn exactly in line with the arm it drives.
 *
 * From such a position the driven lever may go on either way, and the drawing does not say which. Nothing that hangs on it can be
 * solved, so this is an error. A part that is drawn visibly to one side of the line is no such case.
 *
 * ```yaml
 * format: 1
 * levers:
 *   pedal: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 0 deg}}}
 *   shaft: {pivot: [100, 0], arms: {arm: {radius: 30 mm, angle: 180 deg}}}
 * pedal: {lever: pedal, opens: counterclockwise, travel: 10 deg}
 * rods:
 *   link: {from: pedal.out, to: shaft.arm}
 * # ^^^^ error[side-undecided]: which way shaft turns from there is not decided
 * ```
 *
 * Cure: draw the driven arm a little to the side on which it is to work.
 */
import type { Finding } from '../finding.ts';
import { nameOf } from '../jointName.ts';
import type { Study } from '../study.ts';
import { isUndecided } from '../undecidedSide.ts';

export function sideUndecided(study: Study): readonly Finding[] {
  const { build, mechanism } = study.travel;
  return mechanism.joints.flatMap((joint): Finding[] => {
    if (joint.kind === 'coupling' || !isUndecided(build, joint)) return [];
    const driven = mechanism.levers[joint.driven]!.name;
    return [
      {
        code: 'side-undecided',
        severity: 'error',
        part: joint.name,
        span: joint.source.nameSpan,
        message: `${nameOf(joint)} is drawn at its dead centre with the arm of ${driven}: which way ${driven} turns from there is not decided`,
        cure: `Draw the arm of ${driven} to the side on which it works`,
      },
    ];
  });
}
