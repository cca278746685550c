/**
 * A position sensor as a build and a pose have it.
 *
 * The angle of its rotor is `at_closed` + opening of its lever, − opening where it is reversed. Its signal is linear in that angle
 * between the two ends of its range and is held outside. rad and V.
 */
import type { SensorModel } from '../kinematics/attached.ts';
import type { Build } from '../kinematics/build.ts';
import { advance } from '../kinematics/advance.ts';
import { createPose, type Pose } from '../kinematics/pose.ts';
import { openingAt } from '../plates/platesAt.ts';

/** rad; NaN where its lever cannot be assembled. */
export function rotorAngleAt(build: Build, pose: Pose, sensor: SensorModel): number {
  return build.parameters[sensor.atClosed]! + sensor.way * openingAt(build, pose, sensor.lever);
}

/** V. */
export function signalAt(build: Build, pose: Pose, sensor: SensorModel): number {
  return signalOf(build, sensor, rotorAngleAt(build, pose, sensor));
}

/** Signal at an angle of the rotor, V. */
export function signalOf({ parameters }: Build, { range, signal }: SensorModel, angle: number): number {
  const [from, to] = [parameters[range[0]]!, parameters[range[1]]!];
  const [atFrom, atTo] = [parameters[signal[0]]!, parameters[signal[1]]!];
  if (angle <= from) return atFrom;
  if (angle >= to) return atTo;
  return atFrom + ((atTo - atFrom) * (angle - from)) / (to - from);
}

/**
 * Change of the signal with the pedal, V for the whole travel; 0 where it is held, and at an end of the range the one on the side to
 * which the rotor turns. NaN where its lever cannot be assembled.
 */
export function signalRateAt(build: Build, pose: Pose, sensor: SensorModel): number {
  const { mechanism, parameters } = build;
  const { range, signal, lever, way } = sensor;
  const angle = rotorAngleAt(build, pose, sensor);
  if (Number.isNaN(angle)) return NaN;
  const [from, to] = [parameters[range[0]]!, parameters[range[1]]!];
  const rate = way * mechanism.senses[lever]! * pose.rate[lever]!;
  const held = rate > 0 ? angle < from || angle >= to : angle <= from || angle > to;
  return held ? 0 : ((parameters[signal[1]]! - parameters[signal[0]]!) / (to - from)) * rate;
}

/** Pedal travel at which the pedal stops, a fraction: 1, or less where an open stop with no cable before it takes the foot. */
export function fullTravel({ mechanism: { drive }, parameters, bounds }: Build): number {
  if (drive.kind === 'cable') return 1;
  const stopped = bounds.pedalStop / parameters[drive.travel]!;
  return stopped < 1 ? stopped : 1;
}

/** Signal with the foot off and with the pedal down as far as it goes, V; NaN where it has no value there. */
export interface SignalEnds {
  readonly rest: number;
  readonly full: number;
}

export function signalEnds(build: Build, sensor: SensorModel): SignalEnds {
  const pose = createPose(build.mechanism);
  const at = (travel: number): number => {
    advance(build, travel, pose);
    return signalAt(build, pose, sensor);
  };
  return { rest: at(0), full: at(fullTravel(build)) };
}

/** A signal within its own span from rest to full pedal, a fraction; NaN where there is no span. */
export function shareOf({ rest, full }: SignalEnds, signal: number): number {
  return Math.abs(full - rest) > SAME_SIGNAL ? (signal - rest) / (full - rest) : NaN;
}

/** V; less is rounding. */
export const SAME_SIGNAL = 1e-9;
