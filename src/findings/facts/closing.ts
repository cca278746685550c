/** What closes each shaft with plates: without friction, and over it, with all springs and with each return spring off. */
import { isGiven } from '../../forces/friction/missing.ts';
import type { LeverModel } from '../../kinematics/model.ts';
import { springsReaching } from '../../forces/springsReaching.ts';
import { leastOf } from '../../travel/extremes.ts';
import type { Fact } from '../finding.ts';
import { closingAlong, marginAlong } from '../forcesAlong.ts';
import { closingOf, whyClosingUnknown } from '../platesClosing.ts';
import type { Study } from '../study.ts';
import { isUnbounded } from '../unbounded.ts';
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
  return [
    ...extremeFacts({ key: 'closing', part, label, note: '', dimension: 'torque', figure: closing.torque, samples: closing.samples }),
    ...springs.filter(({ source }) => source.countsAsReturn).flatMap(({ name }) => offFacts(study, lever, closing.samples, name)),
    ...marginFact(study, lever, undefined),
  ];
}

/** With a spring off. */
function offFacts(study: Study, lever: LeverModel, samples: readonly number[], off: string): readonly Fact[] {
  const least = leastOf(closingAlong(study, lever.index, off), samples);
  const common = { key: `closing-least-off-${off}`, part: lever.name, label: `least closing torque with ${off} off` };
  const value = least?.value ?? NaN;
  const torque: Fact =
    least === undefined || !Number.isFinite(value) || isUnbounded(value, 'torque')
      ? { ...common, why: Number.isFinite(value) ? 'without bound, at a dead centre' : 'it has no value' }
      : { ...common, figure: { value, dimension: 'torque' }, travel: least.travel };
  return [torque, ...marginFact(study, lever, off)];
}

/** How near friction comes to holding it, and where; nothing where the file gives no friction. */
function marginFact(study: Study, lever: LeverModel, off: string | undefined): readonly Fact[] {
  const { mechanism, samples } = study.travel;
  if (!isGiven(mechanism.friction)) return [];
  const figure = marginAlong(study, lever.index, off);
  const least = leastOf((at) => Math.min(figure(at), PLENTY), samples);
  const common = {
    key: `margin-least${off === undefined ? '' : `-off-${off}`}`,
    part: lever.name,
    label: `least closing torque over friction${off === undefined ? '' : ` with ${off} off`}`,
  };
  if (least === undefined || Number.isNaN(least.value)) return [{ ...common, why: 'it has no value' }];
  if (least.value >= PLENTY) return [{ ...common, why: 'nothing rubs' }];
  return [{ ...common, figure: { value: least.value, dimension: 'number' }, travel: least.travel }];
}

/** Where nothing rubs the margin has no bound. */
const PLENTY = 1e6;
