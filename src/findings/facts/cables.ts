/**
 * What each cable carries while the pedal is pressed, and what it gives away: the slack before it pulls, its stretch under load, which
 * the positions leave out, and the force with which it pulls on a stop that is met before the pedal's own.
 */
import { isGiven } from '../../forces/friction/missing.ts';
import { springsReaching } from '../../forces/springsReaching.ts';
import type { CableJoint } from '../../kinematics/model.ts';
import { CableState } from '../../kinematics/pose.ts';
import type { Fact, Figure } from '../finding.ts';
import { greatestOf } from '../../travel/extremes.ts';
import type { Travel } from '../../travel/travel.ts';
import { tensionAlong } from '../forcesAlong.ts';
import { whyClosingUnknown } from '../platesClosing.ts';
import type { Study } from '../study.ts';
import { isUnbounded } from '../unbounded.ts';
import { extremeFacts } from './extremeFacts.ts';
import { tipInAtCable } from './tipInStep.ts';

/** None of forces where the file describes no springs: nothing is known then of what the cables carry. */
export function cableFacts(study: Study): readonly Fact[] {
  const { mechanism } = study.travel;
  return mechanism.cables.flatMap((joint) => [
    ...slackFact(study, joint),
    ...(mechanism.attached.springs.length === 0 ? [] : loadFacts(study, joint)),
  ]);
}

function slackFact({ travel }: Study, joint: CableJoint): readonly Fact[] {
  const value = slackAtRest(travel, joint);
  return value === undefined
    ? []
    : [{ key: 'slack-at-rest', part: joint.name, label: 'slack at rest', figure: { value, dimension: 'length' } }];
}

/** Pull before anything moves, m; undefined of a cable that is tight at rest. */
export function slackAtRest({ build, poseAt }: Travel, { cable, slack }: CableJoint): number | undefined {
  const { cableState, pull } = poseAt(0);
  if (cableState[cable] !== CableState.slack) return undefined;
  const value = build.bounds.cableRest[cable]! + build.parameters[slack]! - pull[cable]!;
  return value > 0 ? value : undefined;
}

function loadFacts(study: Study, joint: CableJoint): readonly Fact[] {
  const { name: part, cable, driven } = joint;
  const { mechanism, samples } = study.travel;
  const figure = tensionAlong(study, cable);
  const note = isGiven(mechanism.friction) ? '' : ', friction left out';
  const label = 'tension at its pedal end';
  const why = whyClosingUnknown(study, springsReaching(mechanism, driven));
  if (why !== undefined) return [{ key: 'tension-greatest', part, label: `greatest ${label}${note}`, why }];
  const tension = extremeFacts({ key: 'tension', part, label, note, dimension: 'force', figure, samples }).slice(-1);
  return [...tension, ...tipInAtCable(study, joint, note), ...stretchFacts(study, joint, note)];
}

/** What its stiffness makes of its tension: before a stop a loss of travel, beyond one a force on that stop. */
function stretchFacts(study: Study, joint: CableJoint, note: string): readonly Fact[] {
  const { name: part, cable } = joint;
  const { travel } = study;
  const { mechanism, build, samples, poseAt } = travel;
  const stretchAt = (at: number): number => poseAt(at).stretch[cable]!;
  const beforeStop = greatestOf(
    tensionAlong(study, cable),
    samples.filter((at) => stretchAt(at) === 0),
  );
  const beyondStop = greatestOf(stretchAt, samples)?.value ?? 0;
  const parameter = mechanism.attached.stiffness[cable];
  const stiffness = parameter === undefined ? undefined : build.parameters[parameter]!;
  const isEndless = beforeStop !== undefined && isUnbounded(beforeStop.value, 'force');
  const fact = (key: string, label: string, figure: (stiffness: number) => Figure, endless = false): Fact =>
    endless
      ? { key, part, label, why: 'without bound, at a dead centre' }
      : stiffness === undefined
        ? { key, part, label, why: 'for want of `stiffness`' }
        : { key, part, label, figure: figure(stiffness) };
  const facts: Fact[] = [];
  if (beforeStop !== undefined && Number.isFinite(beforeStop.value)) {
    const stretch = (rate: number): number => beforeStop.value / rate;
    const lost = (rate: number): number => (slackAtRest(travel, joint) ?? 0) + stretch(rate);
    const label = `stretch under its tension before a stop${note}, which positions leave out`;
    facts.push(
      fact('stretch-under-load', label, (rate) => ({ value: stretch(rate), dimension: 'length' }), isEndless),
      fact(
        'lost-motion',
        `lost motion in all, slack at rest and stretch before a stop${note}`,
        (rate) => ({ value: lost(rate), dimension: 'length' }),
        isEndless,
      ),
    );
  }
  if (beyondStop > 0) {
    facts.push(
      fact('stop-force', 'greatest force with which it pulls on the stop that is met first', (rate) => ({
        value: beyondStop * rate,
        dimension: 'force',
      })),
    );
  }
  return facts;
}
