/**
 * What can be wrong with a sensor over the travel, as figures; findings put them into words.
 */
import type { SensorModel } from '../kinematics/attached.ts';
import type { Build } from '../kinematics/build.ts';
import { following, greatestOf, leastOf, rangesBelow, zerosOf, type Along, type Extreme, type Range } from '../travel/extremes.ts';
import { oncePer } from '../travel/once.ts';
import { merge } from '../travel/places.ts';
import type { Travel } from '../travel/travel.ts';
import { throttleLever } from './resolution.ts';
import { rotorAngleAt, SAME_SIGNAL, signalAt, signalEnds, signalRateAt } from './sensorAt.ts';

/** How far the rotor goes past one end of a range. */
export interface Beyond {
  readonly side: 'below' | 'above';
  /** The end that it passes, rad. */
  readonly limit: number;
  /** Its angle where it is furthest past that end, rad. */
  readonly worst: Extreme;
  readonly ranges: readonly Range[];
}

/** Where the rotor leaves the range in which its signal is linear; none where it stays. */
export function beyondElectrical(travel: Travel, sensor: SensorModel): readonly Beyond[] {
  return beyond(travel, sensor, sensor.range);
}

/** Where the rotor is turned past its own stops; none where it is not, or where the file gives none. */
export function beyondMechanical(travel: Travel, sensor: SensorModel): readonly Beyond[] {
  return sensor.mechanical === undefined ? [] : beyond(travel, sensor, sensor.mechanical);
}

function beyond(travel: Travel, sensor: SensorModel, [first, last]: SensorModel['range']): readonly Beyond[] {
  const { build, samples } = travel;
  const angle = rotorAlong(travel, sensor);
  const past = (side: Beyond['side'], limit: number, way: 1 | -1): readonly Beyond[] => {
    const inside = following(angle, (at) => way * (at - limit) + SAME, `${way} past ${limit}`);
    const ranges = rangesBelow(inside, samples);
    const worst = leastOf(inside, samples);
    return worst === undefined || ranges.length === 0
      ? []
      : [{ side, limit, worst: { value: angle(worst.travel), travel: worst.travel }, ranges }];
  };
  return [...past('below', build.parameters[first]!, 1), ...past('above', build.parameters[last]!, -1)];
}

/** rad; a rotor that just comes to an end of its range stays within. */
const SAME = 1e-9;

/** A signal that goes back while the plates open. */
export interface TurnedBack {
  readonly ranges: readonly Range[];
  /** The most that it goes back in one stretch, V, above 0, and the pedal travel at that stretch's end. */
  readonly worst: Extreme;
}

/**
 * Where the signal goes against its own way from rest to full pedal while the lever of the plates goes on opening. A sensor whose
 * signal is at full pedal what it was at rest is held to the way in which its file has it go as its lever opens. Undefined where it
 * never does.
 */
export function turnsBackWhileOpening(travel: Travel, sensor: SensorModel): TurnedBack | undefined {
  const { build, mechanism, poseAt } = travel;
  const lever = throttleLever(mechanism, sensor);
  const way = signalWay(build, sensor);
  const signal: Along = (at) => signalAt(build, poseAt(at, sensor.lever), sensor);
  const forward: Along = (at) => {
    if (!(mechanism.senses[lever]! * poseAt(at, lever).rate[lever]! > 0)) return NaN;
    const pose = poseAt(at, sensor.lever);
    const stands = pose.rate[sensor.lever] === 0 && pose.curvature[sensor.lever] === 0;
    if (stands || isHeld(build, rotorAngleAt(build, pose, sensor), sensor)) return NaN;
    return way * signalRateAt(build, pose, sensor);
  };
  const back = rangesBelow(forward, withEnds(travel, sensor)).filter(({ from, to }) => to > from);
  const ranges = back.filter(({ from, to }) => way * (signal(from) - signal(to)) > SAME_SIGNAL);
  const [worst] = ranges
    .map(({ from, to }): Extreme => ({ value: way * (signal(from) - signal(to)), travel: to }))
    .sort((one, other) => other.value - one.value);
  return worst && { ranges, worst };
}

/** +1 where the signal rises from rest to full pedal, −1 where it falls. */
function signalWay(build: Build, sensor: SensorModel): 1 | -1 {
  const { rest, full } = signalEnds(build, sensor);
  if (Math.abs(full - rest) > SAME_SIGNAL) return full > rest ? 1 : -1;
  const [from, to] = sensor.signal;
  return sensor.way * (build.parameters[to]! - build.parameters[from]!) < 0 ? -1 : 1;
}

function isHeld({ parameters }: Build, angle: number, { range }: SensorModel): boolean {
  return angle < parameters[range[0]]! || angle > parameters[range[1]]!;
}

/** Samples with the places at which the rotor comes to the ends of its range. */
function withEnds(travel: Travel, sensor: SensorModel): readonly number[] {
  const { build, samples } = travel;
  const angle = rotorAlong(travel, sensor);
  return merge(
    samples,
    ...sensor.range.map((end) =>
      zerosOf(
        following(angle, (at) => at - build.parameters[end]!),
        samples,
      ),
    ),
  );
}

/** How much of the signal's span in the file the travel uses, a fraction of its size; undefined where the signal has no value. */
export function shareOfSpan(travel: Travel, sensor: SensorModel): number | undefined {
  const { build, poseAt, samples } = travel;
  const signal: Along = (at) => signalAt(build, poseAt(at, sensor.lever), sensor);
  const [least, greatest] = [leastOf(signal, samples), greatestOf(signal, samples)];
  const [from, to] = sensor.signal;
  const span = Math.abs(build.parameters[to]! - build.parameters[from]!);
  return least === undefined || greatest === undefined ? undefined : (greatest.value - least.value) / span;
}

/** Signals outside of which electronics take a sensor to be broken or cut off, V. */
export const FAULT_BAND = {
  low: 0.5,
  high: 4.5,
  from: 'Formula SAE Rules 2024 IC.4.4.8, which gives below 0.5 V or above 4.5 V as its example of a signal out of range',
} as const;

export interface FaultSignal {
  readonly at: 'rest' | 'full pedal';
  readonly side: 'below' | 'above';
  /** V. */
  readonly signal: number;
  /** V. */
  readonly limit: number;
}

/** The signals at rest and at full pedal that lie outside `FAULT_BAND`; none where both are within it or have no value. */
export function signalsTakenForFaults(travel: Travel, sensor: SensorModel): readonly FaultSignal[] {
  const { rest, full } = signalEnds(travel.build, sensor);
  const check = (at: FaultSignal['at'], signal: number): readonly FaultSignal[] => {
    if (signal < FAULT_BAND.low - SAME_SIGNAL) return [{ at, side: 'below', signal, limit: FAULT_BAND.low }];
    if (signal > FAULT_BAND.high + SAME_SIGNAL) return [{ at, side: 'above', signal, limit: FAULT_BAND.high }];
    return [];
  };
  return [...check('rest', rest), ...check('full pedal', full)];
}

/** Angle of the rotor along the pedal. */
const rotorAlong = oncePer(({ build, poseAt, memory }: Travel, sensor: SensorModel): Along => {
  const angle: Along = (at) => rotorAngleAt(build, poseAt(at, sensor.lever), sensor);
  const way = memory?.levers[sensor.lever];
  if (memory === undefined || way === undefined) return angle;
  const key = `rotor of ${sensor.name}`;
  const cause = memory.cause(key, { after: [way], words: `${sensor.way}`, figures: [build.parameters[sensor.atClosed]!] });
  return memory.remember(angle, key, cause);
});
