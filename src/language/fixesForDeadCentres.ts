/**
 * What keeps a joint from its dead centre besides clocking its arms: a pedal that ends before, and, of a rod of a given length, that
 * length; and the length at which a rod reaches at all.
 */
import { deadCentres } from '../findings/deadCentres.ts';
import type { Finding } from '../findings/finding.ts';
import { isBehind } from '../kinematics/isBehind.ts';
import { ANGLE_MARGIN } from '../findings/margin.ts';
import { drawnLength } from '../findings/rodsBefore.ts';
import { limitOf, type Study } from '../findings/study.ts';
import type { FixAim } from './fixAim.ts';
import { pedalPath } from './pedalPath.ts';

/** @param angle the one that is 0 there: `transmission` at the driven arm, `drive` at the driving one */
export function aimsToEndBefore(study: Study, joint: string, angle: 'transmission' | 'drive'): readonly FixAim[] {
  const rod = study.definition.rods.find(({ name }) => name === joint);
  const unknowns = [...(angle === 'transmission' && rod?.length !== undefined ? [`rods.${joint}.length`] : []), pedalPath(study)];
  return unknowns.map((unknown) => ({
    unknown,
    outcome: { kind: 'least', column: `${joint}.${angle}` },
    target: () => limitOf(study, angle).warning + ANGLE_MARGIN,
  }));
}

/** At a change point both angles are 0: the one that has more to keep counts. */
export function aimsToEndBeforeChange(study: Study, { part }: Finding): readonly FixAim[] {
  const angle = limitOf(study, 'transmission').warning >= limitOf(study, 'drive').warning ? 'transmission' : 'drive';
  return aimsToEndBefore(study, part, angle).filter(({ unknown }) => !unknown.startsWith('rods.'));
}

/** A lever that comes back below its closed stop, or plates below their seat, has passed a dead centre on its way: the pedal ends before. */
export function aimsToEndBeforeReturn(study: Study, { part }: Finding): readonly FixAim[] {
  const { mechanism } = study.travel;
  const on = study.definition.plates.find(({ name }) => name === part)?.lever.name ?? part;
  const lever = mechanism.levers.find(({ name }) => name === on);
  if (lever === undefined) return [];
  const passed = deadCentres(study, 'drive').filter(({ part: name }) =>
    mechanism.joints.some((joint) => joint.name === name && isBehind(mechanism, joint, lever)),
  );
  return passed.flatMap(({ part: joint }) => aimsToEndBefore(study, joint, 'drive'));
}

/** The length that a rod has as drawn, where it follows from a formula; a plain one the finding itself knows. */
export function aimsToReach(study: Study, { part }: Finding): readonly FixAim[] {
  const joint = study.travel.mechanism.joints.find(({ name }) => name === part);
  if (joint?.kind !== 'rod' || joint.source.length?.formula === undefined) return [];
  return [{ unknown: joint.source.length.path, outcome: { kind: 'itself' }, target: () => drawnLength(study, joint) }];
}
