/** What closes each shaft with plates, and what the foot feels of it, without friction. */
import type { LeverModel } from '../../kinematics/model.ts';
import { greatestOf, leastOf, type Along, type Extreme } from '../../travel/extremes.ts';
import type { Fact } from '../finding.ts';
import { isMoved, springsReaching } from '../../forces/springsReaching.ts';
import { effortAlong } from '../forcesAlong.ts';
import { closingOf, whyClosingUnknown } from '../platesClosing.ts';
import type { Study } from '../study.ts';
import { isUnbounded } from '../unbounded.ts';

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

/** Pedal effort, where the file says where the foot presses; of a pedal that is a cable the pull at its end without a lever ratio. */
export function effortFacts(study: Study): readonly Fact[] {
  const { mechanism, samples } = study.travel;
  if (!study.columns.has('pedal.effort')) return [];
  const { pad, springs } = mechanism.attached;
  const label = pad?.kind === 'cable' && pad.ratio === undefined ? 'pull at the pedal end of the cable' : 'pedal effort';
  const common = { key: 'effort', part: 'pedal', label, note: ', friction left out' };
  const moved = springs.filter((spring) => isMoved(mechanism, spring));
  const why = whyClosingUnknown(study, moved);
  if (why !== undefined) return [{ key: 'effort-at-rest', part: 'pedal', label: `${label} at rest${common.note}`, why }];
  return extremeFacts({ ...common, dimension: 'force', figure: effortAlong(study), samples });
}

interface Told {
  readonly key: string;
  readonly part: string;
  readonly label: string;
  /** Behind each label. */
  readonly note: string;
  readonly dimension: 'torque' | 'force';
  readonly figure: Along;
  readonly samples: readonly number[];
}

/** At rest, least and greatest. */
function extremeFacts({ key, part, label, note, dimension, figure, samples }: Told): readonly Fact[] {
  const fact = (suffix: string, words: string, found: Extreme | undefined): Fact => {
    const common = { key: `${key}-${suffix}`, part, label: `${words}${note}` };
    return found === undefined || Number.isNaN(found.value)
      ? { ...common, why: 'it has no value there' }
      : { ...common, figure: { value: found.value, dimension }, travel: found.travel };
  };
  const extreme = (suffix: string, words: string, found: Extreme | undefined): Fact => {
    const { figure: shown, ...without } = fact(suffix, words, found);
    if (shown === undefined) return without;
    return isUnbounded(shown.value, dimension) ? { ...without, why: 'without bound, at a dead centre' } : { ...without, figure: shown };
  };
  // The label says where it holds.
  const { travel: _atRest, ...rest } = extreme('at-rest', `${label} at rest`, { value: figure(0), travel: 0 });
  return [
    rest,
    extreme('least', `least ${label}`, leastOf(figure, samples)),
    extreme('greatest', `greatest ${label}`, greatestOf(figure, samples)),
  ];
}
