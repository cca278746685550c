/**
 * A linkage with some of its dimensions at other values, read at given positions of the pedal, with how the readings change.
 *
 * The pedal stands where its travel says, or where a cable has been pulled so far: the travel t at which pull(t, d) is what was read. It
 * moves with the dimensions then, dt/dd = −(∂pull/∂d) / (∂pull/∂t).
 */
import { advance } from '../../kinematics/advance.ts';
import { createBuild, putDimensions } from '../../kinematics/createBuild.ts';
import { pullTangent, type TangentState } from '../../kinematics/jointTangents.ts';
import type { Mechanism } from '../../kinematics/model.ts';
import { createPose, type Pose } from '../../kinematics/pose.ts';
import { alongDimensions, rotationRatesAlong, type DimensionDirection } from '../../kinematics/sensitivity.ts';
import type { Column } from '../../table/column.ts';
import { columnsOf } from '../../table/columns.ts';
import { settleStops } from '../../travel/stops.ts';
import { travelOf } from '../../travel/travel.ts';
import { travelAtPull } from './pulled.ts';
import { slopeOf } from './slopes.ts';

/** Where the pedal is. */
export interface Station {
  /** Pedal travel, a fraction; or the pull of the cable, m. */
  readonly position: number;
  /** Index of the cable among the mechanism's. */
  readonly cable: number | undefined;
}

/** What is read where. */
export interface CarReading {
  /** Index of the station. */
  readonly station: number;
  /** Name of a column that the linkage has. */
  readonly column: string;
}

export interface CarUnknown {
  /** Index into `mechanism.dimensions`. */
  readonly index: number;
  /** SI, above 0: differences are a thousandth of it. */
  readonly scale: number;
}

/** From which side a change is looked at where a lever just meets its stop, or a cable just comes taut. */
export type Side = 'growing' | 'both';

export interface Car {
  readonly mechanism: Mechanism;
  /** Puts values of the unknowns in, SI. */
  put(values: Float64Array): void;
  /** Every reading as it would be, SI; NaN where there is none. */
  read(into: Float64Array): void;
  /** Travel of every station, as the last `read` had it; NaN where there is none. */
  readonly travels: Float64Array;
  /**
   * d reading / d unknown at the values put in last, one row a reading, SI; yields after each unknown. 0 where there is no reading.
   * @param side where differences are taken both count always
   */
  differentiate(side: Side, into: Float64Array): Generator<undefined, void>;
  /** Of each reading: whether its derivatives are in closed form, those by dimensions that change its own shape perhaps left out. */
  readonly closedForm: readonly boolean[];
}

/** @param base values of all dimensions, SI, as many as the mechanism has: those that are not unknown stay so; the file's where absent */
export function createCar(
  mechanism: Mechanism,
  stations: readonly Station[],
  readings: readonly CarReading[],
  unknowns: readonly CarUnknown[],
  base: Float64Array = mechanism.nominal,
): Car {
  const build = createBuild(mechanism, base);
  const pose = createPose(mechanism);
  const dimensions = Float64Array.from(base);
  const named = (): ReadonlyMap<string, Column> => new Map(columnsOf(travelOf(build)).map((each) => [each.name, each]));
  let columns = named();
  // What acts, and what follows from the ends of the travel, keeps what it worked out of a build, and this one has other figures soon.
  const remembers = readings.some(({ column }) => keepsFigures(columns.get(column)!));
  const slopes = readings.map(({ column }) => slopeOf(mechanism, columns.get(column)!));
  const at: number[][] = stations.map(() => []);
  readings.forEach(({ station }, i) => at[station]!.push(i));
  const travels = Float64Array.from(stations, ({ position, cable }) => (cable === undefined ? position : NaN));
  const current = Float64Array.from(unknowns, ({ index }) => base[index]!);
  const n = unknowns.length;

  const settle = (): void => {
    putDimensions(build, dimensions);
    if (remembers) columns = named();
    else settleStops(build);
  };
  const put = (values: Float64Array): void => {
    unknowns.forEach(({ index }, j) => (dimensions[index] = current[j] = values[j]!));
    settle();
  };
  const stand = (s: number): void => {
    const { position, cable } = stations[s]!;
    if (cable !== undefined) travels[s] = travelAtPull(build, cable, position, travels[s]!, pose);
    advance(build, travels[s]!, pose);
  };
  const read = (into: Float64Array): void => {
    for (let s = 0; s < stations.length; s++) {
      stand(s);
      for (const i of at[s]!) into[i] = columns.get(readings[i]!.column)!.read(build, pose);
    }
  };

  const alongOf = (j: number, way: 1 | -1): DimensionDirection => {
    const direction = new Float64Array(mechanism.dimensions.length);
    direction[unknowns[j]!.index] = way;
    return alongDimensions(build, direction);
  };
  /** Fills in what has a closed form of one unknown; names the readings that have none. */
  const closed = (j: number, way: 1 | -1, share: number, into: Float64Array): readonly number[] => {
    const rotationRates = new Float64Array(mechanism.levers.length);
    const state: TangentState = { build, pose, ...alongOf(j, way), rotationRates };
    const left: number[] = [];
    for (let s = 0; s < stations.length; s++) {
      stand(s);
      rotationRatesAlong(build, pose, state, rotationRates);
      followPull(state, stations[s]!);
      for (const i of at[s]!) {
        const rate = slopes[i]?.(build, state);
        if (rate === undefined) left.push(i);
        else into[i * n + j] = into[i * n + j]! + share * way * finite(rate, unknowns[j]!.scale);
      }
    }
    return left;
  };
  const [beyond, short] = [new Float64Array(readings.length), new Float64Array(readings.length)];
  const byDifferences = (j: number, left: readonly number[], into: Float64Array): void => {
    const { index, scale } = unknowns[j]!;
    const step = DIFFERENCE * scale;
    const values = [current[j]! + step, current[j]! - step].map((value, side) => {
      dimensions[index] = value;
      settle();
      read(side === 0 ? beyond : short);
      return value;
    });
    dimensions[index] = current[j]!;
    settle();
    for (const i of left) into[i * n + j] = finite((beyond[i]! - short[i]!) / (values[0]! - values[1]!), scale);
  };

  return {
    mechanism,
    put,
    read,
    travels,
    closedForm: slopes.map((slope) => slope !== undefined),
    *differentiate(side, into) {
      into.fill(0);
      for (let j = 0; j < n; j++) {
        const left = closed(j, 1, side === 'both' ? 0.5 : 1, into);
        if (side === 'both') closed(j, -1, 0.5, into);
        if (left.length > 0) byDifferences(j, left, into);
        yield undefined;
      }
    },
  };
}

/** Of an unknown's scale. */
const DIFFERENCE = 1e-3;

/** At a dead centre a lever turns without end: no step is taken by such a reading. */
function finite(rate: number, scale: number): number {
  return Math.abs(rate) * scale < ENDLESS ? rate : 0;
}

/** SI for a whole scale of the unknown: more radians, volts, newtons than any linkage has. */
const ENDLESS = 1e4;

function keepsFigures({ forces, key }: Column): boolean {
  return forces === true || key === 'percent' || key === 'lead' || key === 'torque';
}

/** Where a cable's pull says where the pedal is, the pedal goes along with the dimensions: what that adds to every rate. */
function followPull(state: TangentState, { cable }: Station): void {
  if (cable === undefined) return;
  const { build, pose, rotationRates } = state;
  const rate = travelRate(pose, cable, pullTangent(state, build.mechanism.cables[cable]!));
  // A lever that a stop holds has no rate, and stays where it is.
  for (let lever = 0; lever < rotationRates.length; lever++) rotationRates[lever] = rotationRates[lever]! + rate * pose.rate[lever]!;
}

function travelRate(pose: Pose, cable: number, pullRate: number): number {
  const along = pose.pullRate[cable]!;
  return pose.travel > 0 && along !== 0 ? -pullRate / along : 0;
}
