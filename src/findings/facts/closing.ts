/** What closes each shaft with plates, without friction. */
import type { LeverModel } from '../../kinematics/model.ts';
import { springsReaching } from '../../forces/springsReaching.ts';
import type { Fact } from '../finding.ts';
import { closingOf, whyClosingUnknown } from '../platesClosing.ts';
import type { Study } from '../study.ts';
import { extremeFacts } from './extremeFacts.ts';

/** None where the file describes no springs: nothing is known then of what closes the throttle. */
export function closingFacts(study: Study, lever: LeverModel): readonly Fact[] {
  const { mechanism } = study.travel;
  if (mechanism.attached.springs.length === 0) return [];
  const springs = springsReaching(mechanism, lever.index);
  const closing = closingOf(study, lever, springs);
  const part = lever.name;
  const label = 'closing torque';
  if (closing === undefined) {
    const why = springs.length === 0 ? 'no spring reaches it' : whyClosingUnknown(study, springs);
    return [{ key: 'closing-at-rest', part, label: `${label} at rest`, why: why ?? 'not known' }];
  }
  return extremeFacts({ key: 'closing', part, label, note: '', dimension: 'torque', figure: closing.torque, samples: closing.samples });
}
