/**
 * An end of a rod tilts further on its bolt than it can.
 *
 * A rod end or ball stud swivels a few degrees before its race meets the bolt's head; beyond that the rod bends, or the end works
 * loose and drops off. The tilt is how far the rod leaves the plane square to the bolt. Where the rod's `ends` give `misalignment`,
 * that is the limit, and passing it is an error. Else a warning comes by `limits: {misalignment: …}` or by their kind: rod ends from
 * 12°, the lower end of the 12° to 18° that a trade article gives; ball studs from 15° and clevises from 1°, both common practice,
 * no source.
 *
 * ```yaml
 * format: 1
 * levers:
 *   pedal: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 60 deg}}}
 *   shaft: {pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 60 deg, offset: 26 mm}}}
 * pedal: {lever: pedal, opens: counterclockwise, travel: 60 deg}
 * rods:
 *   link: {from: pedal.out, to: shaft.arm, ends: {kind: rod_end}}
 * # ^^^^ warning[rod-end-tilt]: an end tilt of 14.6°
 * ```
 *
 * Cure: bring the two pins into one plane, turn a bolt, or take ends that tilt more.
 */
import type { Rod } from '../../definition/definition.ts';
import { angleBeyondLimit } from '../angleBeyondLimit.ts';
import type { Finding, Mend } from '../finding.ts';
import { ANGLE_MARGIN } from '../margin.ts';
import { mendBy, tiltLimit, type Study } from '../study.ts';

export function rodEndTilt(study: Study): readonly Finding[] {
  return study.travel.mechanism.joints.flatMap((joint): Finding[] => {
    if (joint.kind !== 'rod' || joint.source.ends === undefined) return [];
    const limit = tiltLimit(study, joint.source.ends);
    const found = angleBeyondLimit(study, joint, {
      code: 'rod-end-tilt',
      angle: 'misalignment',
      limit,
      way: -1,
      what: 'an end tilt',
      cure: 'Bring the two pins into one plane, turn a bolt, or take ends that tilt more',
    });
    return found ? [{ ...found, ...offsetMend(study, joint.source, limit.warning - ANGLE_MARGIN) }] : [];
  });
}

/** Moving the pin at one end along its lever's axis: the driven one where the file gives its offset, else the driving one. */
function offsetMend(study: Study, { name, from, to }: Rod, target: number): { readonly mend?: Mend } {
  const mends = [to, from].map(({ lever, part }) =>
    mendBy(study, `levers.${lever}.arms.${part}.offset`, { kind: 'greatest', column: `${name}.misalignment` }, target),
  );
  return mends.find(({ mend }) => mend !== undefined) ?? {};
}
