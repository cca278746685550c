/**
 * Dead centres within the travel.
 *
 * `toggle-opening`: rod and driven arm come in line (transmission angle 0): the pedal cannot turn the lever further.
 * `toggle-returning`: rod and driving arm come in line (drive angle 0): the return springs cannot push back through, and a
 * throttle that passes it stays open.
 */
import type { CouplingJoint, Joint } from '../../kinematics/model.ts';
import { leastOf, placesAtMost } from '../../travel/extremes.ts';
import type { Finding } from '../finding.ts';
import { along, type Study } from '../study.ts';
import { rangeWords } from '../words.ts';
import { nameOf } from './notAssembled.ts';

/** rad; at a dead centre found to the last bit of the travel the angle is the square root of that. */
const DEAD = 1e-6;

export function toggles(study: Study): readonly Finding[] {
  return study.travel.mechanism.joints.flatMap((joint): Finding[] => {
    if (joint.kind === 'coupling') return [];
    return [...deadCentres(study, joint, 'transmission'), ...deadCentres(study, joint, 'drive')];
  });
}

function deadCentres(study: Study, joint: Exclude<Joint, CouplingJoint>, which: 'transmission' | 'drive'): readonly Finding[] {
  const { mechanism, samples } = study.travel;
  const figure = along(study, `${joint.name}.${which}`);
  const least = leastOf(figure, samples);
  if (least === undefined || least.value > DEAD) return [];
  const opening = which === 'transmission';
  const places = apart(placesAtMost(figure, samples, DEAD)).filter((travel) => !opening || !goesOn(study, joint, travel));
  const [first] = places;
  if (first === undefined) return [];
  const ranges = places.map((travel) => ({ from: travel, to: travel }));
  const lever = mechanism.levers[opening ? joint.driven : (joint.driver ?? joint.driven)]!.name;
  const met = `${nameOf(joint)} comes in line with the arm of ${lever} ${rangeWords(ranges)}`;
  return [
    {
      code: opening ? 'toggle-opening' : 'toggle-returning',
      severity: 'error',
      part: joint.name,
      span: joint.source.nameSpan,
      message: opening
        ? `${met}: the pedal cannot turn ${lever} beyond it`
        : `${met}: the return springs cannot push back through it, and the throttle can stay open`,
      cure: `Change the clocking of the ${opening ? 'driven' : 'driving'} arm, or take less travel`,
      worst: { value: figure(first), dimension: 'angle', travel: first },
      ranges,
    },
  ];
}

/** Places nearer together than they are known count as one. */
function apart(places: readonly number[]): readonly number[] {
  return places.filter((travel, i) => i === 0 || travel - places[i - 1]! > KNOWN);
}

/** Of the travel. */
const KNOWN = 1e-9;

/** Whether the linkage can be assembled on both sides: a change point, which its own rule speaks of. */
function goesOn(study: Study, joint: Joint, travel: number): boolean {
  const assembled = (at: number): boolean => !Number.isNaN(study.travel.poseAt(at).rotation[joint.driven]!);
  return travel > BESIDE && travel < 1 - BESIDE && assembled(travel - BESIDE) && assembled(travel + BESIDE);
}

/** Of the travel; how far beside a dead centre is looked whether the linkage goes on. */
const BESIDE = 1e-6;
