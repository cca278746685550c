/**
 * A mechanism with its free dimensions at some place within their bounds, held against the wanted curve and the angles that must be kept.
 *
 * Free dimensions are counted in parts of their bounds, 0 to 1. The residuals are, at each station, how far the column is off the curve, in
 * parts of the curve's height; and how far each guarded angle is below its limit, in radians. The derivatives of openings are those of
 * `kinematics/sensitivity.ts`, in closed form; all others are differences.
 */
import { advance } from '../../kinematics/advance.ts';
import type { Build } from '../../kinematics/build.ts';
import { createBuild, putDimensions } from '../../kinematics/createBuild.ts';
import type { Mechanism } from '../../kinematics/model.ts';
import { createPose, type Pose } from '../../kinematics/pose.ts';
import { alongDimensions, rotationRatesAlong } from '../../kinematics/sensitivity.ts';
import { differences } from '../../numeric/differences.ts';
import type { LeastSquares } from '../../numeric/leastSquares.ts';
import type { Column } from '../../table/column.ts';
import { columnsOf } from '../../table/columns.ts';
import { settleStops } from '../../travel/stops.ts';
import { travelOf, type Travel } from '../../travel/travel.ts';
import type { Wanted } from './wanted.ts';

/** A dimension that may be chosen. */
export interface FreeDimension {
  readonly name: string;
  /** Index into `mechanism.dimensions`. */
  readonly index: number;
  /** SI, `from` less than `to`. */
  readonly from: number;
  readonly to: number;
  /** SI; undefined where any value within the bounds will do. */
  readonly step: number | undefined;
}

/** A column that must not fall below a limit anywhere. */
export interface Guard {
  readonly column: string;
  /** SI. */
  readonly least: number;
}

export interface TrialCase {
  readonly mechanism: Mechanism;
  readonly free: readonly FreeDimension[];
  /** Name of the column that is to follow the curve. */
  readonly column: string;
  readonly wanted: Wanted;
  readonly guards: readonly Guard[];
}

export interface Trial {
  readonly case: TrialCase;
  /** Residuals for `leastSquares`; the weights multiply those of the curve, one a station. @param firmness multiplies those of the angles; 1 where absent */
  problem(weights: Float64Array, firmness?: number): LeastSquares;
  /** Pedal travels at which the curve is held. */
  readonly stations: readonly number[];
  /** By the curve's own weights, one a station. */
  readonly ownWeights: Float64Array;
  /** The travel with the free dimensions at x. It holds until the next call. */
  travelAt(x: Float64Array): Travel;
  /** Off the curve at a travel, SI, as the last call of `travelAt` has it. */
  errorAt(travel: Travel, at: number): number;
  /** How far the angles are below their limits in all, rad; 0 where all are kept at the stations. NaN where a station has none. */
  trespassAt(x: Float64Array): number;
  /** SI values of the free dimensions. */
  valuesAt(x: Float64Array): Float64Array;
  readonly height: number;
}

export function createTrial(of: TrialCase): Trial {
  const { mechanism, free, wanted, guards } = of;
  const build = createBuild(mechanism);
  const columns = new Map(columnsOf(travelOf(build)).map((each) => [each.name, each]));
  let column = columns.get(of.column)!;
  const watched = guards.flatMap(({ column: name, least }) => {
    const found = columns.get(name);
    return found === undefined ? [] : [{ column: found, least }];
  });
  const stations = stationsOf(wanted);
  const goals = Float64Array.from(stations, wanted.value);
  const height = heightOf(goals);
  const values = Float64Array.from(mechanism.nominal);
  const pose = createPose(mechanism);
  const count = stations.length * (1 + watched.length);
  const opening = openingOf(mechanism, column);

  const put = (x: Float64Array): void => {
    free.forEach(({ index, from, to }, i) => (values[index] = from + x[i]! * (to - from)));
    putDimensions(build, values);
    settleStops(build);
    // What acts keeps what it worked out of a build, and this one has other figures now.
    if (column.forces === true) column = columnsOf(travelOf(build)).find(({ name }) => name === of.column)!;
  };
  const evaluate = (x: Float64Array, weights: Float64Array, firmness: number, into: Float64Array): boolean => {
    put(x);
    let row = stations.length;
    for (let i = 0; i < stations.length; i++) {
      advance(build, stations[i]!, pose);
      const residual = (weights[i]! * (column.read(build, pose) - goals[i]!)) / height;
      if (!Number.isFinite(residual)) return false;
      into[i] = residual;
      for (const { column: angle, least } of watched) {
        const below = least - angle.read(build, pose);
        if (Number.isNaN(below)) return false;
        into[row++] = Math.max(0, firmness * GUARD_WEIGHT * (below + KEPT));
      }
    }
    return true;
  };
  const plain = Float64Array.from(stations, wanted.weight);
  const scratch = new Float64Array(count);
  return {
    case: of,
    stations,
    ownWeights: plain,
    height,
    problem(weights, firmness = 1) {
      const evaluateWith = (x: Float64Array, into: Float64Array): boolean => evaluate(x, weights, firmness, into);
      const bounds = { from: new Float64Array(free.length), to: new Float64Array(free.length).fill(1) };
      const byDifferences = (
        x: Float64Array,
        residuals: Float64Array,
        jacobian: Float64Array,
        firstRow: number,
      ): Generator<undefined, void> => differences(evaluateWith, x, residuals, { ...bounds, step: DIFFERENCE, firstRow }, jacobian);
      return {
        count,
        ...bounds,
        evaluate: evaluateWith,
        *differentiate(x, residuals, jacobian) {
          if (opening === undefined) return yield* byDifferences(x, residuals, jacobian, 0);
          jacobian.fill(0);
          const isGuarded = residuals.subarray(stations.length).some((residual) => residual > 0);
          if (isGuarded) yield* byDifferences(x, residuals, jacobian, stations.length);
          put(x);
          openingRates(build, pose, of, stations, opening, (i, j, rate) => {
            jacobian[i * free.length + j] = (weights[i]! * rate) / height;
          });
          yield undefined;
        },
      };
    },
    travelAt(x) {
      put(x);
      return travelOf(build);
    },
    errorAt: (travel, at) => column.read(travel.build, travel.poseAt(at)) - wanted.value(at),
    trespassAt(x) {
      if (!evaluate(x, plain, 1, scratch)) return NaN;
      return scratch.subarray(stations.length).reduce((sum, each) => sum + each, 0) / GUARD_WEIGHT;
    },
    valuesAt: (x) => Float64Array.from(free, ({ from, to }, i) => from + x[i]! * (to - from)),
  };
}

/** Of an angle in radians beside parts of the curve's height: a degree below a limit weighs as 5 % of the height off the curve. */
const GUARD_WEIGHT = 3;
/** rad; the angles are kept with this much to spare, since they are least between stations. */
const KEPT = 2e-4;
/** In parts of a dimension's bounds. */
const DIFFERENCE = 1e-6;
/** Stations spread evenly over the curve, beside the points that the file names. */
const STATIONS = 25;

/** Rising. */
function stationsOf({ from, to, points }: Wanted): readonly number[] {
  const even = Array.from({ length: STATIONS }, (_, i) => (i === STATIONS - 1 ? to : from + ((to - from) * i) / (STATIONS - 1)));
  const all = [...even, ...points].sort((a, b) => a - b);
  return all.filter((at, i) => i === 0 || at - all[i - 1]! > NEAR);
}

/** Of the travel; a station nearer than this to the one before is left out. */
const NEAR = 1e-9;

/** Of the wanted values, so that residuals are parts of it; of a level curve its own size. */
function heightOf(goals: Float64Array): number {
  const [least, most] = [Math.min(...goals), Math.max(...goals)];
  return most - least || Math.abs(most) || 1;
}

interface Opening {
  readonly lever: number;
  readonly sense: number;
}

/** The lever whose opening a column is, if it is one. */
function openingOf(mechanism: Mechanism, { key, owner }: Column): Opening | undefined {
  const lever = key === 'opening' ? mechanism.leverIndex.get(owner) : undefined;
  return lever === undefined ? undefined : { lever, sense: mechanism.senses[lever]! };
}

/** d opening / d x of each free dimension at each station, of the dimensions that the build has. */
function openingRates(
  build: Build,
  pose: Pose,
  { mechanism, free }: TrialCase,
  stations: readonly number[],
  { lever, sense }: Opening,
  take: (station: number, free: number, rate: number) => void,
): void {
  const direction = new Float64Array(mechanism.dimensions.length);
  const rates = new Float64Array(mechanism.levers.length);
  const directions = free.map(({ index, from, to }) => {
    direction.fill(0);
    direction[index] = to - from;
    return alongDimensions(build, direction);
  });
  stations.forEach((at, i) => {
    advance(build, at, pose);
    directions.forEach((along, j) => {
      rotationRatesAlong(build, pose, along, rates);
      take(i, j, sense * rates[lever]!);
    });
  });
}
