/**
 * Clocking for transmission and drive angle where the arm's angle follows from a formula: the finding itself knows only plain figures. The
 * driven arm counts only where the joint takes its length from the drawing; a joint of a given length meets it as before.
 */
import type { PartReference } from '../definition/definition.ts';
import type { Finding } from '../findings/finding.ts';
import { ANGLE_MARGIN } from '../findings/margin.ts';
import { limitOf, type Study } from '../findings/study.ts';
import type { Joint } from '../kinematics/model.ts';
import type { FixAim } from './fixAim.ts';

/** @param angle `transmission` at the driven arm, `drive` at the driving one */
export function aimsToSquare(study: Study, finding: Finding, angle: 'transmission' | 'drive'): readonly FixAim[] {
  const joint = study.travel.mechanism.joints.find(({ name }) => name === finding.part);
  const arm = joint === undefined ? undefined : armOf(joint, angle);
  if (arm === undefined) return [];
  return [
    {
      unknown: `levers.${arm.lever}.arms.${arm.part}.angle`,
      outcome: { kind: 'least', column: `${finding.part}.${angle}` },
      target: () => limitOf(study, angle).warning + ANGLE_MARGIN,
    },
  ];
}

function armOf(joint: Joint, angle: 'transmission' | 'drive'): PartReference | undefined {
  const driven = angle === 'transmission';
  switch (joint.kind) {
    case 'rod':
      if (!driven) return joint.source.from;
      return joint.source.length === undefined ? joint.source.to : undefined;
    case 'cable': {
      const end = driven ? joint.source.to : joint.source.from;
      return end?.kind === 'arm' ? end : undefined;
    }
    case 'slot':
      return !driven && joint.source.drives === 'fork' ? joint.source.pin : undefined;
    case 'coupling':
      return undefined;
  }
}
