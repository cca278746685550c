/**
 * A part is drawn exactly in line with the arm it drives, so that the drawing does not say which way it goes on from there.
 *
 * Cure: draw it a little to the side on which it is to work.
 */
import type { Finding } from '../finding.ts';
import type { Study } from '../study.ts';
import { isUndecided, nameOf } from './notAssembled.ts';

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
