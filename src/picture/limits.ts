/** The limits that hold for a part, in words: of this file where it gives them, else the usual ones. */
import type { LimitKey } from '../definition/definition.ts';
import type { LimitPair } from '../findings/limits.ts';
import type { PathPart } from '../findings/part.ts';
import { limitOf, type Study } from '../findings/study.ts';
import { figureText } from '../outputs/figure.ts';

export interface PartLimit {
  /** What it limits, e.g. `transmission angle`. */
  readonly of: string;
  /** E.g. `warning below 40°, error below 25°`. */
  readonly text: string;
}

export function limitsOf(study: Study, { kind, name }: PathPart): readonly PartLimit[] {
  const least = (key: LimitKey, what: string): PartLimit => limitText(what, limitOf(study, key), 'below');
  const transmission = (): PartLimit => least('transmission', 'transmission angle');
  const drive = (): PartLimit => least('drive', 'drive angle');
  const cable = study.travel.mechanism.cables.find((joint) => joint.name === name);
  switch (kind) {
    case 'rod':
      return [transmission(), drive(), ...tiltLimit(study, name)];
    case 'slot':
      return [transmission(), drive()];
    case 'cable':
      return [
        // A drum is pulled square always.
        ...(cable?.drivenEnd.kind === 'pin' ? [transmission()] : []),
        ...(cable?.driverEnd?.kind === 'pin' ? [drive()] : []),
        limitText('lead', limitOf(study, 'lead'), 'above'),
      ];
    case 'plates':
      return stepLimit(study);
    default:
      return [];
  }
}

function limitText(what: string, { warning, error }: LimitPair, side: 'below' | 'above'): PartLimit {
  const of = (severity: string, value: number): string => `${severity} ${side} ${figureText({ value, dimension: 'angle' })}`;
  return { of: what, text: [of('warning', warning), ...(error === undefined ? [] : [of('error', error)])].join(', ') };
}

/** What the ends of the rod allow by themselves, else what their kind does. */
function tiltLimit(study: Study, name: string): readonly PartLimit[] {
  const ends = study.definition.rods.find((rod) => rod.name === name)?.ends;
  if (ends === undefined) return [];
  const own = ends.misalignment?.nominal;
  if (own === undefined) return [limitText('end tilt', limitOf(study, 'misalignment', ends.kind), 'above')];
  return [{ of: 'end tilt', text: `error above ${figureText({ value: own, dimension: 'angle' })}` }];
}

/** How far two shafts with plates may be out of step. */
function stepLimit(study: Study): readonly PartLimit[] {
  const shafts = new Set(study.travel.mechanism.attached.plates.map(({ lever }) => lever));
  if (shafts.size < 2) return [];
  const { warning, error = warning } = limitOf(study, 'step');
  const text = (value: number): string => figureText({ value, dimension: 'angle' });
  return [{ of: 'out of step', text: `at most ${text(warning)} near idle, ${text(error)} above` }];
}
