/**
 * What the tuner gets for a degree or for a percent of throttle: volts, and counts of the converter that reads them.
 *
 * With s the signal, φ the opening of the plates' lever and t the pedal, ds/dφ = (ds/dt) / (dφ/dt) where the plates start to move,
 * and Δs/Δφ over the whole travel. An ideal converter of n bits over the supply U has 2ⁿ/U counts for a volt (from memory).
 */
import type { Build } from '../kinematics/build.ts';
import type { SensorModel } from '../kinematics/attached.ts';
import type { LeverModel, Mechanism } from '../kinematics/model.ts';
import { openingAt } from '../plates/platesAt.ts';
import { startOfOpening } from '../plates/tipIn.ts';
import type { Travel } from '../travel/travel.ts';
import { fullTravel, signalEnds, signalRateAt } from './sensorAt.ts';

/** For a radian of opening and for the whole of the opening that counts as full; times 0.01 for a percent. Negative where it falls. */
export interface Resolution {
  /** V/rad. */
  readonly voltsPerAngle: number;
  /** V for full opening. */
  readonly voltsPerFull: number;
  /** Counts/rad and counts for full opening; undefined where the file gives the sensor no supply or no bits. */
  readonly countsPerAngle: number | undefined;
  readonly countsPerFull: number | undefined;
}

export interface SensorResolution {
  /** The lever by whose opening it is counted. */
  readonly lever: LeverModel;
  /** Where that lever starts to open, with the pedal travel; undefined where it never opens. */
  readonly tipIn: (Resolution & { readonly travel: number }) | undefined;
  /** Over the whole travel; undefined where its lever stands no further open at full pedal than at rest, or an end has no value. */
  readonly overall: Resolution | undefined;
}

export function sensorResolution(travel: Travel, sensor: SensorModel): SensorResolution {
  const { build, mechanism, poseAt } = travel;
  const lever = mechanism.levers[throttleLever(mechanism, sensor)]!;
  const opening = (at: number): number => openingAt(build, poseAt(at), lever.index);
  const opened = opening(fullTravel(build)) - opening(0);
  const full = lever.fullOpening === undefined ? opened : build.parameters[lever.fullOpening]!;
  const counts = countsPerVolt(build, sensor);
  const resolution = (voltsPerAngle: number): Resolution => {
    const voltsPerFull = voltsPerAngle * full;
    return {
      voltsPerAngle,
      voltsPerFull,
      countsPerAngle: counts && voltsPerAngle * counts,
      countsPerFull: counts && voltsPerFull * counts,
    };
  };
  const start = startOfOpening(travel, lever.index);
  const { rest, full: atFull } = signalEnds(build, sensor);
  return {
    lever,
    tipIn: start === undefined ? undefined : { ...resolution(slopeAt(travel, sensor, lever.index, start)), travel: start },
    overall: opened > 0 && !Number.isNaN(atFull - rest) ? resolution((atFull - rest) / opened) : undefined,
  };
}

/** Change of the signal with the opening of a lever, V/rad. */
function slopeAt({ build, mechanism, poseAt }: Travel, sensor: SensorModel, lever: number, at: number): number {
  const pose = poseAt(at);
  return signalRateAt(build, pose, sensor) / (mechanism.senses[lever]! * pose.rate[lever]!);
}

/**
 * The lever with plates that a sensor tells of: its own or the nearest on its way from the pedal that carries any, else the first in
 * the file that the pedal moves; its own where there are no such plates.
 */
export function throttleLever({ levers, joints }: Mechanism, sensor: SensorModel): number {
  for (let at: number | undefined = sensor.lever; at !== undefined;) {
    const lever: LeverModel = levers[at]!;
    if (lever.plates.length > 0) return at;
    at = lever.driver === undefined ? undefined : joints[lever.driver]!.driver;
  }
  return levers.find((lever) => lever.plates.length > 0 && lever.group >= 0)?.index ?? sensor.lever;
}

function countsPerVolt({ parameters }: Build, { supply, bits }: SensorModel): number | undefined {
  return supply === undefined || bits === undefined ? undefined : 2 ** parameters[bits]! / parameters[supply]!;
}
