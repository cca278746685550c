/** How bad it is that a spring opens a lever. */
import { leversReaching } from '../forces/springsReaching.ts';
import type { SpringModel } from '../kinematics/attached.ts';
import type { LeverModel } from '../kinematics/model.ts';
import type { FindingSeverity } from './finding.ts';
import type { Study } from './study.ts';

/** An error for a return spring on a lever from which a torque comes to plates. */
export function openingSeverity({ travel: { mechanism } }: Study, spring: SpringModel, lever: LeverModel): FindingSeverity {
  const comesToPlates = mechanism.levers.some(
    ({ index, plates }) => plates.length > 0 && leversReaching(mechanism, index).has(lever.index),
  );
  return spring.source.countsAsReturn && comesToPlates ? 'error' : 'warning';
}
