/**
 * What of a build matters to who drives it, each a figure: how far the shafts with plates open, whether they stand alike at rest, what the
 * sensors say, how squarely each part drives and is driven, how far rod ends tilt, and what the foot feels.
 *
 * The effort is that of pressing, with friction where the file gives any, and says so. The least or greatest of an angle is that of 101
 * stations from rest to full pedal; `rules.ts` judges fewer builds by all that lies between.
 */
import { lostJoint } from '../../definition/lost.ts';
import type { Dimension } from '../../definition/dimensions.ts';
import { OPENING_TOLERANCE, SHUT } from '../../findings/openingTolerance.ts';
import { limitOf, tiltLimit, type Study } from '../../findings/study.ts';
import { degrees } from '../../findings/words.ts';
import { isGiven } from '../../forces/friction/missing.ts';
import type { SensorModel } from '../../kinematics/attached.ts';
import type { Build } from '../../kinematics/build.ts';
import type { Joint, LeverModel } from '../../kinematics/model.ts';
import type { Column } from '../../table/column.ts';

export interface Outcome {
  /** As a person reads it, e.g. `opening of shaft at full pedal`; each once. */
  readonly name: string;
  readonly dimension: Dimension;
  readonly reading: Reading;
  /** What a build has to keep, SI; both absent where nothing judges the outcome. A limit may follow from the build itself. */
  least?(build: Build): number;
  most?(build: Build): number;
  /** The same in words, e.g. `at least 40°`. */
  readonly limit?: string;
  /** What holds it to one figure, where the build stands there; absent where nothing of the kind does. */
  readonly stop?: { readonly parameter: number; readonly words: string };
  /** Whether a line is enough for it as long as every build keeps its limit. */
  readonly isAside?: true;
}

export type Reading =
  /** A sum of the levers' rotations. */
  | { readonly kind: 'rotations'; readonly at: PedalEnd; readonly of: readonly { readonly lever: number; readonly times: number }[] }
  | { readonly kind: 'signal'; readonly at: PedalEnd; readonly sensor: SensorModel }
  /** The least or greatest of a column from rest to full pedal. */
  | { readonly kind: 'least' | 'greatest'; readonly column: Column }
  /** Of the pedal at half of its travel, pressing. */
  | { readonly kind: 'effort'; readonly friction: boolean };

/** Foot off, and the pedal down as far as it goes. */
export type PedalEnd = 'rest' | 'full';

/** In the order in which they are best read; empty where the file has nothing that they are of. */
export function outcomesOf(study: Study): readonly Outcome[] {
  const { mechanism } = study.travel;
  const shafts = mechanism.levers.filter(({ plates, group }) => plates.length > 0 && group >= 0);
  return [
    ...shafts.flatMap((lever) => openings(study, lever)),
    ...shafts.slice(1).map((lever) => outOfStep(study, shafts[0]!, lever)),
    ...mechanism.attached.sensors.filter(({ lever }) => mechanism.levers[lever]!.group >= 0).flatMap(signals),
    ...effort(study),
    ...study.travel.mechanism.joints.flatMap((joint) => angles(study, joint)),
  ];
}

function openings({ travel: { mechanism } }: Study, { index, name, fullOpening, openStop, closedStop }: LeverModel): readonly Outcome[] {
  const of = [{ lever: index, times: mechanism.senses[index]! }];
  return [
    {
      name: `opening of ${name} at full pedal`,
      dimension: 'angle',
      reading: { kind: 'rotations', at: 'full', of },
      ...(fullOpening !== undefined && {
        least: ({ parameters }: Build) => parameters[fullOpening]! - OPENING_TOLERANCE,
        limit: `open fully, to its stop or \`full_opening\`, less ${degrees(OPENING_TOLERANCE)}`,
      }),
      ...(openStop !== undefined && { stop: { parameter: openStop.parameter, words: 'its open stop' } }),
    },
    {
      name: `opening of ${name} at rest`,
      dimension: 'angle',
      reading: { kind: 'rotations', at: 'rest', of },
      ...(closedStop !== undefined && {
        // A closed stop above the drawn position holds it open by itself.
        most: ({ parameters }: Build) => (parameters[closedStop.parameter]! > SHUT ? -Infinity : parameters[closedStop.parameter]! + SHUT),
        limit: `comes to its closed stop, to ${degrees(SHUT)}`,
        stop: { parameter: closedStop.parameter, words: 'its closed stop' },
      }),
    },
  ];
}

/** The first less the second. */
function outOfStep(study: Study, first: LeverModel, second: LeverModel): Outcome {
  const { senses } = study.travel.mechanism;
  const limit = limitOf(study, 'step').warning;
  return {
    name: `opening of ${first.name} less that of ${second.name} at rest`,
    dimension: 'angle',
    reading: {
      kind: 'rotations',
      at: 'rest',
      of: [
        { lever: first.index, times: senses[first.index]! },
        { lever: second.index, times: -senses[second.index]! },
      ],
    },
    least: () => -limit,
    most: () => limit,
    limit: `at most ${degrees(limit)} apart`,
  };
}

function signals(sensor: SensorModel): readonly Outcome[] {
  const signal = (at: PedalEnd, where: string): Outcome => ({
    name: `signal of ${sensor.name} ${where}`,
    dimension: 'voltage',
    reading: { kind: 'signal', at, sensor },
  });
  return [signal('rest', 'at rest'), signal('full', 'at full pedal')];
}

/**
 * A drum is always pulled square, and a coupling has no angle. The lead of an inner is none of these: a housing end whose direction is not
 * given is aimed anew in each build, which takes its whole travel.
 */
function angles(study: Study, joint: Joint): readonly Outcome[] {
  if (joint.kind === 'coupling') return [];
  const ends = joint.kind === 'rod' ? joint.source.ends : undefined;
  return [
    ...(joint.kind === 'cable' && joint.drivenEnd.kind === 'drum' ? [] : least(study, joint, 'transmission')),
    ...(joint.kind === 'cable' && joint.driverEnd?.kind !== 'pin' ? [] : least(study, joint, 'drive')),
    ...(ends === undefined ? [] : greatestTilt(study, joint, tiltLimit(study, ends).warning)),
  ];
}

function least(study: Study, { name }: Joint, key: 'transmission' | 'drive'): readonly Outcome[] {
  const column = study.columns.get(`${name}.${key}`);
  const limit = limitOf(study, key).warning;
  if (column === undefined) return [];
  const told = { name: `least ${key} angle of ${name}`, dimension: 'angle', reading: { kind: 'least', column } } as const;
  return [{ ...told, least: () => limit, limit: `at least ${degrees(limit)}`, isAside: true }];
}

function greatestTilt(study: Study, { name }: Joint, limit: number): readonly Outcome[] {
  const column = study.columns.get(`${name}.misalignment`);
  if (column === undefined) return [];
  const told = { name: `greatest tilt of the ends of ${name}`, dimension: 'angle', reading: { kind: 'greatest', column } } as const;
  return [{ ...told, most: () => limit, limit: `at most ${degrees(limit)}`, isAside: true }];
}

/** Of springs that are not all known nothing is told. */
function effort({ definition, travel: { mechanism }, columns }: Study): readonly Outcome[] {
  const known = definition.unread?.some(({ path }) => path.startsWith('springs.')) !== true && lostJoint(definition) === undefined;
  if (!known || !columns.has('pedal.effort') || mechanism.attached.springs.length === 0) return [];
  const friction = isGiven(mechanism.friction);
  const name = `effort at half pedal, ${friction ? 'with the friction that the file gives' : 'without friction'}`;
  return [{ name, dimension: 'force', reading: { kind: 'effort', friction } }];
}
