/** The limits that hold for a part, in words, with the figure that each judges: of this file where it gives them, else the usual ones. */
import type { LimitKey } from '../definition/definition.ts';
import type { LimitPair } from '../findings/limits.ts';
import type { PartFigure, PathPart } from '../findings/part.ts';
import { along, limitOf, type Study } from '../findings/study.ts';
import { openingLevers } from '../findings/wayOfOpening.ts';
import type { CableJoint } from '../kinematics/model.ts';
import { figureText } from '../outputs/figure.ts';
import { outOfStep } from '../plates/outOfStep.ts';
import { greatestOf, leastOf, type Extreme } from '../travel/extremes.ts';

export interface PartLimit {
  /** What it limits, e.g. `transmission angle`. */
  readonly of: string;
  /** E.g. `warning below 40°, error below 25°`. */
  readonly text: string;
  /** What it judges, e.g. `least transmission angle`; without a figure where that has no value. */
  readonly judged: PartFigure;
}

export function limitsOf(study: Study, { kind, name }: PathPart): readonly PartLimit[] {
  const { samples, mechanism } = study.travel;
  const least = (key: LimitKey): PartLimit => {
    const found = leastOf(along(study, `${name}.${key}`), samples);
    return limitText(`${key} angle`, limitOf(study, key), 'below', angleFigure(`least ${key} angle`, found));
  };
  const cable = mechanism.cables.find((joint) => joint.name === name);
  switch (kind) {
    case 'rod':
      return [least('transmission'), least('drive'), ...tiltLimit(study, name)];
    case 'slot':
      return [least('transmission'), least('drive')];
    case 'cable':
      return [
        // A drum is pulled square always.
        ...(cable?.drivenEnd.kind === 'pin' ? [least('transmission')] : []),
        ...(cable?.driverEnd?.kind === 'pin' ? [least('drive')] : []),
        ...(cable === undefined ? [] : [leadLimit(study, cable)]),
      ];
    case 'plates':
      return stepLimits(study, name);
    default:
      return [];
  }
}

const angle = (value: number): string => figureText({ value, dimension: 'angle' });

const angleFigure = (label: string, found: Extreme | undefined): PartFigure =>
  found === undefined ? { label } : { label, figure: { value: found.value, dimension: 'angle' }, travel: found.travel };

function limitText(of: string, { warning, error }: LimitPair, side: 'below' | 'above', judged: PartFigure): PartLimit {
  const words = (severity: string, value: number): string => `${severity} ${side} ${angle(value)}`;
  return { of, text: [words('warning', warning), ...(error === undefined ? [] : [words('error', error)])].join(', '), judged };
}

/** What the ends of the rod allow by themselves, else what their kind does. */
function tiltLimit(study: Study, name: string): readonly PartLimit[] {
  const ends = study.definition.rods.find((rod) => rod.name === name)?.ends;
  if (ends === undefined) return [];
  const judged = angleFigure('greatest end tilt', greatestOf(along(study, `${name}.misalignment`), study.travel.samples));
  const own = ends.misalignment?.nominal;
  if (own === undefined) return [limitText('end tilt', limitOf(study, 'misalignment', ends.kind), 'above', judged)];
  return [{ of: 'end tilt', text: `error above ${angle(own)}`, judged }];
}

/** A housing end whose direction is not given is taken to be aimed as well as can be. */
function leadLimit(study: Study, { name, source }: CableJoint): PartLimit {
  const isAimed = source.leavesAlong !== undefined || source.entersAlong !== undefined;
  const label = isAimed ? 'greatest lead' : 'greatest lead, housing ends aimed midway';
  const judged = angleFigure(label, greatestOf(along(study, `${name}.lead`), study.travel.samples));
  return limitText('lead', limitOf(study, 'lead'), 'above', judged);
}

/** How far two shafts with plates may be out of step: each shaft is held against the first, and the first against each. */
function stepLimits(study: Study, name: string): readonly PartLimit[] {
  const { mechanism } = study.travel;
  const shafts = mechanism.attached.plates.filter(({ lever }, i, all) => all.findIndex((each) => each.lever === lever) === i);
  if (shafts.length < 2) return [];
  const { warning, error = warning } = limitOf(study, 'step');
  const opening = new Set(openingLevers(study).map(({ index }) => index));
  const [first, ...others] = shafts.filter(({ lever }) => opening.has(lever));
  const own = mechanism.attached.plates.find((each) => each.name === name)?.lever;
  const pairs = own === first?.lever ? others : others.filter(({ lever }) => lever === own);
  if (first === undefined || pairs.length === 0) {
    const of = 'out of step';
    return [{ of, text: `at most ${angle(warning)} near idle, ${angle(error)} further up`, judged: { label: of } }];
  }
  return pairs.flatMap((second) => {
    const other = mechanism.levers[own === first.lever ? second.lever : first.lever]!.name;
    const { atRest, nearIdle, above } = outOfStep(study.travel, first, second);
    const limit = (where: string, most: number, found: Extreme | undefined): PartLimit => {
      const of = `out of step with ${other} ${where}`;
      return { of, text: `at most ${angle(most)}`, judged: angleFigure(of, found && { ...found, value: Math.abs(found.value) }) };
    };
    return [limit('near idle', warning, larger(atRest.opening, nearIdle.opening)), limit('further up', error, above.opening)];
  });
}

const larger = (one: Extreme | undefined, other: Extreme | undefined): Extreme | undefined =>
  one === undefined || (other !== undefined && Math.abs(other.value) > Math.abs(one.value)) ? other : one;
