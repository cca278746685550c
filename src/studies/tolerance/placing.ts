/**
 * A build whose figures are put off their middles, one after the other build in the same place.
 *
 * A toleranced dimension is moved in the vector of dimensions. Play is none of these: a pin in it makes its rod longer or shorter, or stands
 * off the middle of its slot, whose own play is then none, since the pin stands somewhere certain in it.
 */
import type { Build } from '../../kinematics/build.ts';
import { createBuild, putDimensions } from '../../kinematics/createBuild.ts';
import type { Mechanism } from '../../kinematics/model.ts';
import { settleStops } from '../../travel/stops.ts';
import { createSettle } from './quickSettle.ts';
import { middleValues, type Toleranced } from '../../kinematics/toleranced.ts';

export interface Placing {
  /** As it was put last; at first with every figure in its middle. */
  readonly build: Build;
  /** Puts each figure so far off its middle, SI, in their order, and settles rest and open stops. */
  put(offsets: Readonly<Float64Array>): void;
}

/**
 * @param quick whether contacts may be followed from those of the middle, to 1e-9 of the travel: for many builds, and too coarse for
 * differences of a micrometre
 */
export function createPlacing(mechanism: Mechanism, varied: readonly Toleranced[], quick: boolean): Placing {
  const middle = middleValues(mechanism);
  const values = Float64Array.from(middle);
  const taken = new Float64Array(varied.length);
  const shift = shiftOf(varied, taken);
  const build = createBuild(mechanism, middle);
  putDimensions(build, middle, shift);
  settleStops(build);
  const settle = quick
    ? createSettle(mechanism, middle, shift)
    : (of: Build, at: Float64Array): void => {
        putDimensions(of, at, shift);
        settleStops(of);
      };
  return {
    build,
    put(offsets) {
      for (const { index, middle: from } of varied) if (index >= 0) values[index] = from;
      for (let j = 0; j < varied.length; j++) {
        const { index } = varied[j]!;
        if (index >= 0) values[index]! += offsets[j]!;
        else taken[j] = offsets[j]!;
      }
      settle(build, values);
    },
  };
}

/** What play does to the parameters; undefined where there is none. */
function shiftOf(varied: readonly Toleranced[], taken: Float64Array): ((parameters: Float64Array) => void) | undefined {
  const plays = varied.flatMap(({ play }, j) => (play === undefined ? [] : [{ joint: play.joint, j }]));
  if (plays.length === 0) return undefined;
  return (parameters) => {
    for (const { joint, j } of plays) {
      if (joint.kind === 'rod') parameters[joint.length]! += taken[j]!;
      else {
        parameters[joint.offset]! += taken[j]!;
        if (joint.play !== undefined) parameters[joint.play] = 0;
      }
    }
  };
}
