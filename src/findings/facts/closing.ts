/** What closes each shaft with plates, without friction, and what the foot feels of it, with the friction that the file gives. */
import type { LeverModel } from '../../kinematics/model.ts';
import { greatestOf, leastOf, type Along, type Extreme } from '../../travel/extremes.ts';
import type { Fact } from '../finding.ts';
import { isGiven } from '../../forces/friction/missing.ts';
import { isMoved, springsReaching } from '../../forces/springsReaching.ts';
import { effortAlong, releaseAlong, tensionAlong } from '../forcesAlong.ts';
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
  const common = { key: 'effort', part: 'pedal', label, note: isGiven(mechanism.friction) ? '' : ', friction left out' };
  const moved = springs.filter((spring) => isMoved(mechanism, spring));
  const why = whyClosingUnknown(study, moved);
  if (why !== undefined) return [{ key: 'effort-at-rest', part: 'pedal', label: `${label} at rest${common.note}`, why }];
  const effort = extremeFacts({ ...common, dimension: 'force', figure: effortAlong(study), samples });
  return isGiven(mechanism.friction) ? [...effort, ...releaseFacts(study), ...tensionFacts(study)] : effort;
}

/** Least and greatest force on the way back, and how far the loop of both stands open on average. */
function releaseFacts(study: Study): readonly Fact[] {
  const { samples } = study.travel;
  const [effort, release] = [effortAlong(study), releaseAlong(study)];
  const told = { key: 'release', part: 'pedal', label: 'force on the way back', note: '', dimension: 'force', samples } as const;
  const width = loopWidth((at) => effort(at) - release(at), samples);
  const common = { key: 'loop-width', part: 'pedal', label: 'effort less the force on the way back, on average' };
  return [
    ...extremeFacts({ ...told, figure: release }),
    Number.isNaN(width) ? { ...common, why: 'it has no value somewhere' } : { ...common, figure: { value: width, dimension: 'force' } },
  ];
}

/** Of each cable, at its pedal end while the pedal is pressed. */
function tensionFacts(study: Study): readonly Fact[] {
  const { mechanism, samples } = study.travel;
  return mechanism.cables.flatMap(({ name: part, cable }) => {
    const figure = tensionAlong(study, cable);
    return extremeFacts({ key: 'tension', part, label: 'tension at its pedal end', note: '', dimension: 'force', figure, samples }).slice(
      -1,
    );
  });
}

/** The loop's area over the travel, by trapezia between the samples. */
function loopWidth(gap: Along, samples: readonly number[]): number {
  let area = 0;
  for (let i = 1; i < samples.length; i++) area += ((gap(samples[i - 1]!) + gap(samples[i]!)) / 2) * (samples[i]! - samples[i - 1]!);
  return area / (samples.at(-1)! - samples[0]!);
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
