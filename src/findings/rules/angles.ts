/**
 * Angles that bind: the transmission angle at the driven arm, the drive angle at the driving arm, the tilt of a rod's ends, and the
 * lead of a cable into its housing, each against its limit.
 *
 * Example: a rod that meets the shaft's arm at 22° wedges it into its bearings instead of turning it. Cure: turn the arms so that
 * rod and arm are nearer to square where the effort is greatest.
 */
import type { CableJoint, RodJoint } from '../../kinematics/model.ts';
import { innerAt } from '../../table/geometry.ts';
import type { LimitKey } from '../../definition/definition.ts';
import type { FindingCode } from '../codes.ts';
import type { Finding, Mend } from '../finding.ts';
import type { LimitPair } from '../limits.ts';
import { along, limitOf, mendBy, trespass, type Study } from '../study.ts';
import { degrees, percent, rangeWords } from '../words.ts';
import { nameOf } from './notAssembled.ts';

export function angles(study: Study): readonly Finding[] {
  return study.travel.mechanism.joints.flatMap((joint): Finding[] => {
    if (joint.kind === 'coupling') return [];
    const check = (code: FindingCode, key: string, limit: LimitPair, way: 1 | -1, what: string, cure: string): Finding[] => {
      const beyond = trespass(study, along(study, `${joint.name}.${key}`), limit, way);
      if (beyond === undefined) return [];
      const { severity, worst, ranges } = beyond;
      const side = way > 0 ? 'under' : 'over';
      return [
        {
          code,
          severity,
          part: joint.name,
          span: joint.source.nameSpan,
          message: `${nameOf(joint)} has ${what} of ${degrees(worst.value)} at ${percent(worst.travel)} of pedal travel; it is ${side} ${degrees(limit.warning)} ${rangeWords(ranges)}`,
          cure,
          ranges,
          worst: { ...worst, dimension: 'angle' },
          limit: { value: beyond.limit, dimension: 'angle', from: limit.from },
          ...(joint.kind === 'rod' && armMend(study, joint, key, limit.warning)),
        },
      ];
    };
    const limits = (key: LimitKey): LimitPair => limitOf(study, key);
    const found = [
      ...check(
        'transmission-angle',
        'transmission',
        limits('transmission'),
        1,
        'a transmission angle',
        'Turn the driven arm nearer to square with it there',
      ),
      ...check('drive-angle', 'drive', limits('drive'), 1, 'a drive angle', 'Turn the driving arm nearer to square with it there'),
    ];
    if (joint.kind === 'rod' && joint.source.ends !== undefined) {
      found.push(
        ...check(
          'rod-end-tilt',
          'misalignment',
          tiltLimit(study, joint.source.ends),
          -1,
          'an end tilt',
          'Bring the two pins into one plane, turn a bolt, or take ends that tilt more',
        ),
      );
    }
    if (joint.kind === 'cable') {
      found.push(...insideDrum(study, joint), ...check('cable-lead', 'lead', limits('lead'), -1, ...leadWords(joint)));
    }
    return found;
  });
}

/** How the lead is spoken of, and its cure: a housing end whose direction is not given is taken to be aimed as well as can be. */
function leadWords({ source }: CableJoint): [what: string, cure: string] {
  if (source.leavesAlong !== undefined || source.entersAlong !== undefined) {
    return ['a lead', 'Move or turn the housing end so that the inner runs straight out of it'];
  }
  return ['a lead (housing ends aimed midway of what the inner sweeps)', 'Move the housing end further off, so that the inner sweeps less'];
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

/** Clocking the arm at which the angle is measured. */
function armMend(study: Study, { source, name }: RodJoint, key: string, target: number): { readonly mend?: Mend } {
  const end = key === 'transmission' ? source.to : key === 'drive' ? source.from : undefined;
  if (end === undefined) return {};
  return mendBy(study, `levers.${end.lever}.arms.${end.part}.angle`, { kind: 'least', column: `${name}.${key}` }, target);
}

function tiltLimit(study: Study, ends: { readonly kind: string; readonly misalignment?: { readonly nominal: number } }): LimitPair {
  if (ends.misalignment === undefined) return limitOf(study, 'misalignment', ends.kind);
  const own = ends.misalignment.nominal;
  return { warning: own, error: own, from: 'misalignment given for these ends' };
}
