/**
 * What of a build matters to who drives it, each a figure: how far the shafts with plates open, whether they stand alike at rest, what the
 * sensors say, how squarely each part drives, and what the foot feels.
 *
 * The effort is that of pressing, with friction where the file gives any, and says so. The least of an angle is that of 101 stations from
 * rest to full pedal.
 */
import { lostJoint } from '../../definition/lost.ts';
import type { Dimension } from '../../definition/dimensions.ts';
import { OPENING_TOLERANCE } from '../../findings/openingTolerance.ts';
import { limitOf, type Study } from '../../findings/study.ts';
import { degrees } from '../../findings/words.ts';
import { createStatics } from '../../forces/closing.ts';
import { isGiven } from '../../forces/friction/missing.ts';
import { createFriction } from '../../forces/friction/statics.ts';
import { advance } from '../../kinematics/advance.ts';
import type { SensorModel } from '../../kinematics/attached.ts';
import type { Build } from '../../kinematics/build.ts';
import type { LeverModel } from '../../kinematics/model.ts';
import { createPose, type Pose } from '../../kinematics/pose.ts';
import { fullTravel, signalAt } from '../../sensor/sensorAt.ts';
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
}

export type Reading =
  /** A sum of the levers' rotations. */
  | { readonly kind: 'rotations'; readonly at: PedalEnd; readonly of: readonly { readonly lever: number; readonly times: number }[] }
  | { readonly kind: 'signal'; readonly at: PedalEnd; readonly sensor: SensorModel }
  /** The least of a column from rest to full pedal. */
  | { readonly kind: 'least'; readonly column: Column }
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
    ...leastTransmissions(study),
    ...effort(study),
  ];
}

function openings({ travel: { mechanism } }: Study, { index, name, fullOpening }: LeverModel): readonly Outcome[] {
  const of = [{ lever: index, times: mechanism.senses[index]! }];
  const full: Outcome = { name: `opening of ${name} at full pedal`, dimension: 'angle', reading: { kind: 'rotations', at: 'full', of } };
  return [
    fullOpening === undefined
      ? full
      : {
          ...full,
          least: ({ parameters }) => parameters[fullOpening]! - OPENING_TOLERANCE,
          limit: `open fully, to its stop or \`full_opening\`, less ${degrees(OPENING_TOLERANCE)}`,
        },
    { name: `opening of ${name} at rest`, dimension: 'angle', reading: { kind: 'rotations', at: 'rest', of } },
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

/** A drum is always pulled square, and a coupling has no angle. */
function leastTransmissions(study: Study): readonly Outcome[] {
  const limit = limitOf(study, 'transmission').warning;
  return study.travel.mechanism.joints.flatMap((joint): Outcome[] => {
    const column = study.columns.get(`${joint.name}.transmission`);
    if (column === undefined || joint.kind === 'coupling' || (joint.kind === 'cable' && joint.drivenEnd.kind === 'drum')) return [];
    return [
      {
        name: `least transmission angle of ${joint.name}`,
        dimension: 'angle',
        reading: { kind: 'least', column },
        least: () => limit,
        limit: `at least ${degrees(limit)}`,
      },
    ];
  });
}

/** Of springs that are not all known nothing is told. */
function effort({ definition, travel: { mechanism }, columns }: Study): readonly Outcome[] {
  const known = definition.unread?.some(({ path }) => path.startsWith('springs.')) !== true && lostJoint(definition) === undefined;
  if (!known || !columns.has('pedal.effort') || mechanism.attached.springs.length === 0) return [];
  const friction = isGiven(mechanism.friction);
  const name = `effort at half pedal, ${friction ? 'with the friction that the file gives' : 'without friction'}`;
  return [{ name, dimension: 'force', reading: { kind: 'effort', friction } }];
}

export interface Gauge {
  /** Outcomes of the build as it is settled now, SI; NaN for one that has no value. */
  read(into: Float64Array): void;
}

/** Stations from rest to full pedal. */
export const STATIONS = 101;

/** @param build may be given other dimensions between one reading and the next */
export function createGauge(build: Build, outcomes: readonly Outcome[]): Gauge {
  const pose = createPose(build.mechanism);
  const rubs = outcomes.some(({ reading }) => reading.kind === 'effort' && reading.friction);
  const acts = rubs ? createFriction(build) : createStatics(build);
  const ends = outcomes.map(({ reading }) => ('at' in reading ? reading.at : undefined));
  const leasts = outcomes.flatMap(({ reading }, index) => (reading.kind === 'least' ? [{ index, column: reading.column }] : []));
  const efforts = outcomes.flatMap(({ reading }, index) => (reading.kind === 'effort' ? [index] : []));
  const readEnd = (end: PedalEnd, into: Float64Array): void => {
    for (let i = 0; i < outcomes.length; i++) if (ends[i] === end) into[i] = endFigure(build, pose, outcomes[i]!.reading);
  };
  return {
    read(into) {
      const full = fullTravel(build);
      const stations = leasts.length > 0 ? STATIONS : 2;
      for (const { index } of leasts) into[index] = Infinity;
      for (let station = 0; station < stations; station++) {
        advance(build, station === stations - 1 ? full : (full * station) / (stations - 1), pose);
        if (station === 0) readEnd('rest', into);
        for (const { index, column } of leasts) into[index] = Math.min(into[index]!, column.read(build, pose));
        if (station === stations - 1) readEnd('full', into);
      }
      if (efforts.length === 0) return;
      advance(build, full / 2, pose);
      for (const index of efforts) into[index] = acts.at(pose).effort;
    },
  };
}

function endFigure(build: Build, pose: Pose, reading: Reading): number {
  if (reading.kind === 'signal') return signalAt(build, pose, reading.sensor);
  if (reading.kind !== 'rotations') return NaN;
  let sum = 0;
  for (const { lever, times } of reading.of) sum += times * pose.rotation[lever]!;
  return sum;
}
