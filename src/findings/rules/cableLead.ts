/**
 * The inner cable leaves its housing at an angle.
 *
 * The lead is the angle between the inner and the way its housing end points. An inner that runs over the edge of its ferrule saws
 * into it, frays, and one day a strand catches with the throttle open. A warning comes over 5°, an error over 10°: common practice,
 * no source; both can be set under `limits: {lead: …}`. Where the file does not say which way a housing end points, it is taken to
 * be aimed midway of all that the inner sweeps. A housing end within the drum that its inner runs to is an error too.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft:
 *     pivot: [100, 0]
 *     opens: counterclockwise
 *     arms: {arm: {radius: 40 mm, angle: 250 deg}}
 * pedal: {cable: main, pull: 30 mm}
 * cables:
 *   main: {enters: [250, -40], enters_along: [-1, 0.11], to: shaft.arm}
 * # ^^^^ warning[cable-lead]: a lead of
 * ```
 *
 * Cure: turn the housing end so that the inner runs straight out of it, or move it further off, so that the inner sweeps less. To move it
 * takes two figures, and none is offered for that; where the file says which way it points, one of those figures is.
 */
import type { CableJoint } from '../../kinematics/model.ts';
import { innerAt } from '../../kinematics/poseGeometry.ts';
import { angleBeyondLimit } from '../angleBeyondLimit.ts';
import type { Finding } from '../finding.ts';
import { limitOf, type Study } from '../study.ts';

export function cableLead(study: Study): readonly Finding[] {
  return study.travel.mechanism.cables.flatMap((joint): Finding[] => {
    const found = angleBeyondLimit(study, joint, {
      code: 'cable-lead',
      angle: 'lead',
      limit: limitOf(study, 'lead'),
      way: -1,
      ...leadWords(joint),
    });
    return [...insideDrum(study, joint), ...(found ? [found] : [])];
  });
}

/** How the lead is spoken of, and its cure: a housing end whose direction is not given is taken to be aimed as well as can be. */
function leadWords({ source }: CableJoint): { readonly what: string; readonly cure: string } {
  if (source.leavesAlong !== undefined || source.entersAlong !== undefined) {
    return { what: 'a lead', cure: 'Move or turn the housing end so that the inner runs straight out of it' };
  }
  return {
    what: 'a lead (housing ends aimed midway of what the inner sweeps)',
    cure: 'Move the housing end further off, so that the inner sweeps less',
  };
}

/** A housing end inside the drum that its inner runs to: no cable can run so. */
function insideDrum(study: Study, joint: CableJoint): readonly Finding[] {
  const { build, poseAt } = study.travel;
  return (['leaves', 'enters'] as const).flatMap((which): Finding[] => {
    const end = which === 'leaves' ? joint.driverEnd : joint.drivenEnd;
    const place = joint.source[which];
    if (end?.kind !== 'drum' || place === undefined || innerAt(build, poseAt(0), joint, which) !== undefined) return [];
    return [
      {
        code: 'cable-lead',
        severity: 'error',
        part: joint.name,
        span: place.span,
        message: `The housing end of ${joint.name} lies within the drum ${end.drum.name}: its inner cannot run to the rim`,
        cure: 'Move it outside the drum',
      },
    ];
  });
}
