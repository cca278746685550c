/**
 * Reads outcomes of a build, one build after the other in the same place.
 */
import { createStatics } from '../../forces/closing.ts';
import { createFriction } from '../../forces/friction/statics.ts';
import { advance } from '../../kinematics/advance.ts';
import type { Build } from '../../kinematics/build.ts';
import { createPose, type Pose } from '../../kinematics/pose.ts';
import { fullTravel, signalAt } from '../../sensor/sensorAt.ts';
import type { Outcome, PedalEnd, Reading } from './outcomes.ts';

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
  const extremes = outcomes.flatMap(({ reading }, index) =>
    reading.kind === 'least' || reading.kind === 'greatest'
      ? [{ index, column: reading.column, way: reading.kind === 'least' ? 1 : -1 }]
      : [],
  );
  const efforts = outcomes.flatMap(({ reading }, index) => (reading.kind === 'effort' ? [index] : []));
  const readEnd = (end: PedalEnd, into: Float64Array): void => {
    for (let i = 0; i < outcomes.length; i++) if (ends[i] === end) into[i] = endFigure(build, pose, outcomes[i]!.reading);
  };
  return {
    read(into) {
      const full = fullTravel(build);
      const stations = extremes.length > 0 ? STATIONS : 2;
      for (const { index } of extremes) into[index] = Infinity;
      for (let station = 0; station < stations; station++) {
        advance(build, station === stations - 1 ? full : (full * station) / (stations - 1), pose);
        if (station === 0) readEnd('rest', into);
        for (const { index, column, way } of extremes) into[index] = Math.min(into[index]!, way * column.read(build, pose));
        if (station === stations - 1) readEnd('full', into);
      }
      for (const { index, way } of extremes) into[index]! *= way;
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
