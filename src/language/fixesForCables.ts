/** The way that a cable's housing end points: turned until the inner runs straight enough out of it. */
import type { Finding } from '../findings/finding.ts';
import { ANGLE_MARGIN } from '../findings/margin.ts';
import { limitOf, type Study } from '../findings/study.ts';
import type { Direction } from '../definition/definition.ts';
import type { FixAim } from './fixAim.ts';

/**
 * The lesser figure of each direction that the file gives: turning it a little hardly changes the other. Where it gives none, a housing end
 * is taken to be aimed as well as can be, and no one figure helps.
 */
export function aimsToLead(study: Study, finding: Finding): readonly FixAim[] {
  const cable = study.definition.cables.find(({ name }) => name === finding.part);
  const directions = [cable?.entersAlong, cable?.leavesAlong].filter((each): each is Direction => each !== undefined);
  return directions.map(({ x, y }) => ({
    unknown: (Math.abs(x.nominal) < Math.abs(y.nominal) ? x : y).path,
    outcome: { kind: 'greatest', column: `${finding.part}.lead` },
    target: () => limitOf(study, 'lead').warning - ANGLE_MARGIN,
  }));
}
