/** What the foot feels, with the friction that the file gives: effort, its step at tip-in, the way back and the loop of both. */
import { isGiven } from '../../forces/friction/missing.ts';
import { isMoved } from '../../forces/springsReaching.ts';
import { startOfOpening } from '../../plates/tipIn.ts';
import { createFriction } from '../../forces/friction/statics.ts';
import { leastOf, type Along } from '../../travel/extremes.ts';
import type { Fact } from '../finding.ts';
import { effortAlong, releaseAlong } from '../forcesAlong.ts';
import { whyClosingUnknown } from '../platesClosing.ts';
import type { Study } from '../study.ts';
import { extremeFacts } from './extremeFacts.ts';
import { GREATEST_EFFORT, isAtPad, LEAST_EFFORT, pathOfForce } from './pad.ts';

/** Pedal effort, where the file says where the foot presses; of a pedal that is a cable the pull at its end without a lever ratio. */
export function effortFacts(study: Study): readonly Fact[] {
  const { mechanism, samples } = study.travel;
  if (!study.columns.has('pedal.effort')) return [];
  const { pad, springs } = mechanism.attached;
  const label = pad?.kind === 'cable' && pad.ratio === undefined ? 'pull at the pedal end of the cable' : 'effort';
  const common = { key: 'effort', part: 'pedal', label, note: isGiven(mechanism.friction) ? '' : ', friction left out' };
  const moved = springs.filter((spring) => isMoved(mechanism, spring));
  const why = whyClosingUnknown(study, moved);
  if (why !== undefined) return [{ key: 'effort-at-rest', part: 'pedal', label: `${label} at rest${common.note}`, why }];
  const guidance = isAtPad(pad) ? { least: LEAST_EFFORT, greatest: GREATEST_EFFORT } : {};
  const effort = extremeFacts({ ...common, dimension: 'force', figure: effortAlong(study), samples, guidance });
  const felt = [...effort, ...tipInFacts(study, common.note)];
  return isGiven(mechanism.friction) ? [...felt, ...releaseFacts(study)] : felt;
}

/**
 * How much more the foot has to press where the throttle starts to open than just before: the springs of the shaft come in there. Where
 * it starts from rest all of it is met at once.
 */
function tipInFacts(study: Study, note: string): readonly Fact[] {
  const { travel } = study;
  const effort = effortAlong(study);
  const starts = travel.mechanism.levers
    .filter(({ plates, group }) => plates.length > 0 && group >= 0)
    .flatMap(({ index }) => startOfOpening(travel, index) ?? []);
  if (starts.length === 0) return [];
  const start = Math.min(...starts);
  const step = effort(Math.min(1, start + BESIDE)) - (start <= BESIDE ? 0 : effort(start - BESIDE));
  const common = { key: 'tip-in-step', part: 'pedal', label: `step in the effort where the throttle starts to open${note}` };
  return [Number.isFinite(step) ? { ...common, figure: { value: step, dimension: 'force' }, travel: start } : { ...common, why: NO_VALUE }];
}

/** So far to either side of a kink, as a fraction of the travel, its figures are those of that side. Kinks are known to 1e-9. */
const BESIDE = 1e-7;
const NO_VALUE = 'it has no value there';

/** Least and greatest force on the way back, and the loop of both: how far it stands open on average, and the work that it takes. */
function releaseFacts(study: Study): readonly Fact[] {
  const { samples } = study.travel;
  const [effort, release] = [effortAlong(study), releaseAlong(study)];
  const told = { key: 'release', part: 'pedal', label: 'force on the way back', note: '', dimension: 'force', samples } as const;
  const width = loopWidth((at) => effort(at) - release(at), samples);
  const path = pathOfForce(study.definition, study.travel.build);
  const loop = (key: string, label: string, value: number, dimension: 'force' | 'energy'): Fact =>
    Number.isNaN(value)
      ? { key, part: 'pedal', label, why: 'it has no value somewhere' }
      : { key, part: 'pedal', label, figure: { value, dimension } };
  return [
    ...extremeFacts({ ...told, figure: release }),
    ...releaseOffFacts(study),
    loop('loop-width', 'effort less the force on the way back, on average', width, 'force'),
    ...(path === undefined ? [] : [loop('loop-work', 'work that friction takes in one stroke and back', width * path, 'energy')]),
  ];
}

/** Least force on the way back with each return spring off in turn: 0 where friction then holds the pedal. */
function releaseOffFacts({ travel }: Study): readonly Fact[] {
  const { mechanism, build, samples, poseAt } = travel;
  const returning = mechanism.attached.springs.filter((spring) => spring.source.countsAsReturn && isMoved(mechanism, spring));
  const solver = createFriction(build);
  return returning.map(({ name }): Fact => {
    const least = leastOf((at) => solver.at(poseAt(at), name).release, samples);
    const common = { key: `release-least-off-${name}`, part: 'pedal', label: `least force on the way back with ${name} off` };
    return least === undefined || !Number.isFinite(least.value)
      ? { ...common, why: NO_VALUE }
      : { ...common, figure: { value: least.value, dimension: 'force' }, travel: least.travel };
  });
}

/** The loop's area over the travel, by trapezia between the samples. */
function loopWidth(gap: Along, samples: readonly number[]): number {
  let area = 0;
  for (let i = 1; i < samples.length; i++) area += ((gap(samples[i - 1]!) + gap(samples[i]!)) / 2) * (samples[i]! - samples[i - 1]!);
  return area / (samples.at(-1)! - samples[0]!);
}
