/**
 * A part cannot reach: no position of the driven lever keeps the rod, slot or cable together.
 *
 * What hangs on the lever is not reported besides. Cure: a longer rod or driven arm, a shorter driving arm, or less travel.
 */
import type { Joint } from '../../kinematics/model.ts';
import { rangesBelow } from '../../travel/extremes.ts';
import type { Finding } from '../finding.ts';
import type { Study } from '../study.ts';
import { rangeWords } from '../words.ts';

export function notAssembled(study: Study): readonly Finding[] {
  const { build, mechanism, poseAt, samples } = study.travel;
  return mechanism.joints.flatMap((joint): Finding[] => {
    if (
      joint.kind === 'coupling' ||
      (joint.kind !== 'cable' || joint.drivenEnd.kind === 'pin' ? Number.isNaN(build.parameters[joint.side]!) : false)
    )
      return [];
    const ranges = rangesBelow((travel) => {
      const pose = poseAt(travel);
      const driven = pose.rotation[joint.driven]!;
      const driver = joint.driver === undefined ? 0 : pose.rotation[joint.driver]!;
      return Number.isNaN(driven) && !Number.isNaN(driver) ? -1 : 1;
    }, samples);
    if (ranges.length === 0) return [];
    const driven = mechanism.levers[joint.driven]!.name;
    return [
      {
        code: 'not-assembled',
        severity: 'error',
        part: joint.name,
        span: joint.source.nameSpan,
        message: `${nameOf(joint)} cannot reach ${driven} ${rangeWords(ranges)}: no position of ${driven} keeps it together`,
        cure: 'Lengthen the rod or the driven arm, shorten the driving arm, or take less travel',
        ranges,
      },
    ];
  });
}

export function nameOf(joint: Joint): string {
  return `The ${joint.kind} ${joint.name}`;
}
