/**
 * Dead centres within the travel: where the transmission angle at a driven arm, or the drive angle at a driving one, passes 0.
 */
import type { Joint } from '../kinematics/model.ts';
import { leastOf, placesAtMost } from '../travel/extremes.ts';
import { clockingMend, type AngledJoint } from './clocking.ts';
import type { Finding } from './finding.ts';
import { nameOf } from './jointName.ts';
import { ANGLE_MARGIN } from './margin.ts';
import { along, limitOf, type Study } from './study.ts';
import { rangeWords } from './words.ts';

/** rad; at a dead centre found to the last bit of the travel the angle is the square root of that. */
const DEAD = 1e-6;

/** One finding for each joint that comes in line with the arm at which the angle is measured. */
export function deadCentres(study: Study, angle: 'transmission' | 'drive'): readonly Finding[] {
  return study.travel.mechanism.joints.flatMap((joint) => (joint.kind === 'coupling' ? [] : deadCentresOf(study, joint, angle)));
}

function deadCentresOf(study: Study, joint: AngledJoint, angle: 'transmission' | 'drive'): readonly Finding[] {
  const { mechanism, samples } = study.travel;
  const figure = along(study, `${joint.name}.${angle}`);
  const least = leastOf(figure, samples);
  if (least === undefined || least.value > DEAD) return [];
  const opening = angle === 'transmission';
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
      ...clockingMend(study, joint, angle, limitOf(study, angle).warning + ANGLE_MARGIN),
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
