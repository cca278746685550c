/**
 * A part cannot reach: no position of the driven lever keeps the rod, slot or cable together.
 *
 * What hangs on the lever is not reported besides. Cure: a longer rod or driven arm, a shorter driving arm, or less travel.
 */
import type { Build } from '../../kinematics/build.ts';
import { turnedAt } from '../../table/geometry.ts';
import { minus, vectorAt } from '../../numeric/vector.ts';
import type { CouplingJoint, Joint } from '../../kinematics/model.ts';
import { trigValue } from '../../numeric/trigPolynomial.ts';
import { rangesBelow } from '../../travel/extremes.ts';
import { slotForm } from '../../travel/jointForms.ts';
import type { Finding } from '../finding.ts';
import type { Study } from '../study.ts';
import { rangeWords } from '../words.ts';

export function notAssembled(study: Study): readonly Finding[] {
  const { build, mechanism, poseAt, samples } = study.travel;
  return mechanism.joints.flatMap((joint): Finding[] => {
    if (joint.kind === 'coupling' || isUndecided(build, joint)) return [];
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
        cure: reachCure(study, joint, ranges[0]!.from),
        ranges,
      },
    ];
  });
}

const CURES = {
  cable: 'Lengthen the driven arm, move the housing end away from it, or take less pull',
  slot: 'Lessen the offset of the fork, or bring its pin and its pivot to where they meet all the way',
} as const;

/**
 * Whether a part stands drawn at its dead centre, so that nothing says on which side it works. A fork too far off its pin to meet it
 * at all has no side either, and is no such case.
 */
export function isUndecided(build: Build, joint: Joint): boolean {
  if (joint.kind === 'coupling' || (joint.kind === 'cable' && joint.drivenEnd.kind === 'drum')) return false;
  const p = build.parameters;
  if (!Number.isNaN(p[joint.side]!)) return false;
  return joint.kind !== 'slot' || !(trigValue(slotForm(joint, p), 0) < -MISSED * trigSize(slotForm(joint, p)));
}

/** Squared sine of the angle within which a fork at its dead centre counts as meeting its pin. */
const MISSED = 1e-12;

function trigSize(form: readonly number[]): number {
  return Math.max(...form.map(Math.abs));
}

export function nameOf(joint: Joint): string {
  return `The ${joint.kind} ${joint.name}`;
}

/** Whether a rod is too short or too long where it first fails to reach. */
function reachCure(study: Study, joint: Exclude<Joint, CouplingJoint>, travel: number): string {
  const { build, poseAt } = study.travel;
  if (joint.kind !== 'rod') return CURES[joint.kind];
  const p = build.parameters;
  const pin = turnedAt(build, poseAt(travel), joint.driver, joint.driverPin);
  const from = minus(pin, vectorAt(p, joint.drivenPin));
  const tooLong = Math.hypot(...from) < p[joint.length]!;
  return tooLong
    ? 'Shorten the rod, lengthen the driven arm, or take less travel'
    : 'Lengthen the rod or the driven arm, shorten the driving arm, or take less travel';
}
