/**
 * Parts used beyond what they are made for.
 *
 * `profile-left`: a profiled drum turns beyond the openings of its profile, where the radius is only taken as constant.
 * `groove-left`: a drum turns further than its groove goes. `slot-run-out`: a pin leaves its fork. `rod-out-of-adjustment`: a rod's
 * length is one that its adjuster does not reach.
 */
import type { DrumModel } from '../../kinematics/model.ts';
import { greatestOf, leastOf, rangesBelow } from '../../travel/extremes.ts';
import type { Finding } from '../finding.ts';
import { along, type Study } from '../study.ts';
import { degrees, millimetres, percent, rangeWords } from '../words.ts';

/** rad or m; less is rounding. */
const SAME = 1e-9;

export function drumsLeft(study: Study): readonly Finding[] {
  return usedDrums(study).flatMap((drum) => [...profileLeft(study, drum), ...grooveLeft(study, drum)]);
}

export function slotRunOut(study: Study): readonly Finding[] {
  const { mechanism, samples } = study.travel;
  return mechanism.joints.flatMap((joint): Finding[] => {
    if (joint.kind !== 'slot' || joint.source.reach === undefined) return [];
    const { min, max, span } = joint.source.reach;
    const reach = along(study, `${joint.name}.reach`);
    const inside = (travel: number): number => Math.min(reach(travel) - min.nominal, max.nominal - reach(travel));
    const worst = leastOf(inside, samples);
    if (worst === undefined || worst.value >= -SAME) return [];
    const ranges = rangesBelow(inside, samples);
    return [
      {
        code: 'slot-run-out',
        severity: 'error',
        part: joint.name,
        span,
        message: `The pin of ${joint.name} leaves its fork by ${millimetres(-worst.value)} at ${percent(worst.travel)} of pedal travel (${rangeWords(ranges)})`,
        cure: 'Make the fork longer, or bring its pivot nearer to the middle of the pin’s way',
        ranges,
        worst: { value: reach(worst.travel), dimension: 'length', travel: worst.travel },
        limit: { value: reach(worst.travel) < min.nominal ? min.nominal : max.nominal, dimension: 'length', from: 'reach of this slot' },
      },
    ];
  });
}

export function rodOutOfAdjustment(study: Study): readonly Finding[] {
  const { mechanism, build } = study.travel;
  return mechanism.joints.flatMap((joint): Finding[] => {
    if (joint.kind !== 'rod') return [];
    const { adjust, length: written, nameSpan } = joint.source;
    const length = build.parameters[joint.length]!;
    const short = adjust?.min !== undefined && length < adjust.min.nominal - SAME;
    const long = adjust?.max !== undefined && length > adjust.max.nominal + SAME;
    const limit = short ? adjust.min : long ? adjust.max : undefined;
    if (limit === undefined || !Number.isFinite(length)) return [];
    return [
      {
        code: 'rod-out-of-adjustment',
        severity: 'error',
        part: joint.name,
        span: written?.span ?? nameSpan,
        message: `The rod ${joint.name} is ${millimetres(length)} long; its adjuster ends at ${millimetres(limit.nominal)}`,
        cure: `Bring its length within the adjuster's range, or give it another one`,
        worst: { value: length, dimension: 'length', travel: 0 },
        limit: { value: limit.nominal, dimension: 'length', from: 'adjuster of this rod' },
        related: [{ span: limit.span, message: 'end of its adjuster' }],
      },
    ];
  });
}

/** Each once, though several cables may lie on it. */
function usedDrums(study: Study): readonly DrumModel[] {
  const ends = study.travel.mechanism.cables.flatMap((cable) => [cable.driverEnd, cable.drivenEnd]);
  return [...new Set(ends.flatMap((end) => (end?.kind === 'drum' ? [end.drum] : [])))];
}

function profileLeft(study: Study, drum: DrumModel): readonly Finding[] {
  const { mechanism, build, samples } = study.travel;
  const { form } = drum;
  const lever = mechanism.levers[drum.lever]!;
  const source = lever.source.drums.find((each) => each.name === drum.name);
  if (form.kind !== 'profile' || source?.form.kind !== 'profile') return [];
  const first = build.parameters[form.openings]!;
  const last = build.parameters[form.openings + form.count - 1]!;
  const opening = along(study, `${lever.name}.opening`);
  const inside = (travel: number): number => Math.min(opening(travel) - first, last - opening(travel));
  const worst = leastOf(inside, samples);
  if (worst === undefined || worst.value >= -SAME) return [];
  const ranges = rangesBelow((travel) => inside(travel) + SAME, samples);
  return [
    {
      code: 'profile-left',
      severity: 'warning',
      part: `${lever.name}.${drum.name}`,
      span: source.form.span,
      message: `${lever.name} leaves the profile of ${drum.name} by ${degrees(-worst.value, 2)} (${rangeWords(ranges)}): its radius is taken as constant there`,
      cure: `Give the profile points from ${degrees(Math.min(first, opening(worst.travel)))} to ${degrees(Math.max(last, opening(worst.travel)))}`,
      ranges,
      worst: { value: opening(worst.travel), dimension: 'angle', travel: worst.travel },
      limit: { value: opening(worst.travel) < first ? first : last, dimension: 'angle', from: 'profile of this drum' },
    },
  ];
}

function grooveLeft(study: Study, drum: DrumModel): readonly Finding[] {
  const { mechanism, samples, poseAt } = study.travel;
  const lever = mechanism.levers[drum.lever]!;
  const source = lever.source.drums.find((each) => each.name === drum.name);
  if (source?.groove === undefined) return [];
  const groove = source.groove.nominal;
  const turned = (travel: number): number => Math.abs(poseAt(travel).rotation[drum.lever]!);
  const worst = greatestOf(turned, samples);
  if (worst === undefined || worst.value <= groove + SAME) return [];
  const ranges = rangesBelow((travel) => groove - turned(travel), samples);
  return [
    {
      code: 'groove-left',
      severity: 'error',
      part: `${lever.name}.${drum.name}`,
      span: source.groove.span,
      message: `${lever.name} turns ${degrees(worst.value)}, further than the ${degrees(groove)} of groove on ${drum.name} (${rangeWords(ranges)}): the cable leaves its seat`,
      cure: `Carry the groove on to ${degrees(worst.value)} or more`,
      ranges,
      worst: { ...worst, dimension: 'angle' },
      limit: { value: groove, dimension: 'angle', from: 'groove of this drum' },
    },
  ];
}
