/**
 * What the foot feels, with the friction that the file gives: effort, its step at tip-in, the way back and the loop of both, and effort and
 * way back with each return spring off in turn.
 */
import { isGiven } from '../../forces/friction/missing.ts';
import { isMoved } from '../../forces/springsReaching.ts';
import { greatestOf, leastOf, type Along, type Extreme } from '../../travel/extremes.ts';
import type { Fact } from '../finding.ts';
import { footOff } from '../footOff.ts';
import { effortAlong, releaseAlong } from '../forcesAlong.ts';
import { whyClosingUnknown } from '../platesClosing.ts';
import type { Study } from '../study.ts';
import { isUnbounded } from '../unbounded.ts';
import { effortAtStop } from './effortAtStop.ts';
import { extremeFacts } from './extremeFacts.ts';
import { GREATEST_EFFORT, isAtPad, LEAST_EFFORT, pathOfForce } from './pad.ts';
import { tipInAtPad } from './tipInStep.ts';

/** Pedal effort, where the file says where the foot presses; of a pedal that is a cable the pull at its end without a lever ratio. */
export function effortFacts(study: Study): readonly Fact[] {
  if (!study.columns.has('pedal.effort')) return [];
  const { mechanism } = study.travel;
  const { label, note } = feltAt(study);
  const why = whyUntold(study);
  if (why !== undefined) return [{ key: 'effort-at-rest', part: 'pedal', label: `${label} at rest${note}`, why }];
  return [
    ...extremeEffort(study),
    ...effortAtStop(study, label, note),
    ...tipInAtPad(study, note),
    ...effortOffFacts(study, label, note),
    ...(isGiven(mechanism.friction) ? releaseFacts(study) : []),
  ];
}

/** The greatest effort alone; undefined where it is not known. */
export function greatestEffort(study: Study): Fact | undefined {
  if (!study.columns.has('pedal.effort') || whyUntold(study) !== undefined) return undefined;
  return extremeEffort(study).find(({ key, figure }) => key === 'effort-greatest' && figure !== undefined);
}

function extremeEffort(study: Study): readonly Fact[] {
  const { mechanism, samples } = study.travel;
  const guidance = isAtPad(mechanism.attached.pad) ? { least: LEAST_EFFORT, greatest: GREATEST_EFFORT } : {};
  const common = { key: 'effort', part: 'pedal', dimension: 'force', ...feltAt(study) } as const;
  return extremeFacts({ ...common, figure: effortAlong(study), samples, guidance });
}

/** What it is called, and what is left out of it. */
function feltAt({ travel: { mechanism } }: Study): { readonly label: string; readonly note: string } {
  const { pad } = mechanism.attached;
  const label = pad?.kind === 'cable' && pad.ratio === undefined ? 'pull at the pedal end of the cable' : 'effort';
  return { label, note: isGiven(mechanism.friction) ? '' : ', friction left out' };
}

/** Undefined where it is known. */
function whyUntold(study: Study): string | undefined {
  const { mechanism } = study.travel;
  return whyClosingUnknown(
    study,
    mechanism.attached.springs.filter((spring) => isMoved(mechanism, spring)),
  );
}

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

/** Greatest force that presses the pedal with each return spring off in turn. */
function effortOffFacts(study: Study, label: string, note: string): readonly Fact[] {
  return returning(study).map((name) =>
    offFact(
      name,
      'effort-greatest-off',
      `greatest ${label} with it off${note}`,
      greatestOf(footOff(study, name).effort, study.travel.samples),
    ),
  );
}

/** Least force on the way back with each return spring off in turn: 0 where friction then holds the pedal. */
function releaseOffFacts(study: Study): readonly Fact[] {
  return returning(study).map((name) =>
    offFact(
      name,
      'release-least-off',
      'least force on the way back with it off',
      leastOf(footOff(study, name).release, study.travel.samples),
    ),
  );
}

/** Names of the return springs of which the pedal moves an end. */
function returning({ travel: { mechanism } }: Study): readonly string[] {
  return mechanism.attached.springs.filter((spring) => spring.source.countsAsReturn && isMoved(mechanism, spring)).map(({ name }) => name);
}

function offFact(part: string, key: string, label: string, found: Extreme | undefined): Fact {
  const common = { key, part, label };
  if (found === undefined || !Number.isFinite(found.value)) return { ...common, why: NO_VALUE };
  if (isUnbounded(found.value, 'force')) return { ...common, why: 'without bound, at a dead centre' };
  return { ...common, figure: { value: found.value, dimension: 'force' }, travel: found.travel };
}

/** The loop's area over the travel, by trapezia between the samples. */
function loopWidth(gap: Along, samples: readonly number[]): number {
  let area = 0;
  for (let i = 1; i < samples.length; i++) area += ((gap(samples[i - 1]!) + gap(samples[i]!)) / 2) * (samples[i]! - samples[i - 1]!);
  return area / (samples.at(-1)! - samples[0]!);
}
