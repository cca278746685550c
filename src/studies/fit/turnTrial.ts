/**
 * The built car held against the curves that were wanted, with its adjusters turned by so much.
 *
 * Where the openings of several shafts are wanted, those of all but the first are held against the first as well: barrels that stand apart
 * draw unlike air, which is worse than all of them being as far off together.
 */
import type { Study } from '../../findings/study.ts';
import type { Build } from '../../kinematics/build.ts';
import { leastSquares } from '../../numeric/leastSquares.ts';
import { merge } from '../../travel/places.ts';
import { endsOf } from '../tune/setting.ts';
import { wantedOf } from '../tune/wanted.ts';
import type { Turnable } from './adjusters.ts';
import { createCar, type CarUnknown } from './car.ts';

/** How far the car is off what was wanted. */
export interface OffCurve {
  /** Column that was wanted. */
  readonly column: string;
  /** Greatest, SI, and where, a fraction of the pedal's travel. NaN where it has no value somewhere. */
  readonly error: number;
  readonly at: number;
}

/** A curve that was wanted. */
export interface Goal {
  readonly of: 'tune' | 'drawing';
  readonly column: string;
  /** Fractions of the pedal's travel. */
  readonly stations: readonly number[];
  /** SI, one a station. */
  readonly values: Float64Array;
  readonly weights: Float64Array;
  /** SI: as near is as good as on it. */
  readonly enough: number;
}

/** The curve of `tune`, else the openings as drawn. A sentence without a full stop where there is none. */
export function goalsOf(study: Study): readonly Goal[] | string {
  const { definition, travel, columns } = study;
  const { curve, unread = [] } = definition.tune ?? {};
  if (curve !== undefined && unread.length === 0) {
    const column = `${curve.of.owner}.${curve.of.column}`;
    if (!columns.has(column)) return `${column}, of which the wanted curve is, cannot be solved in this file`;
    const wanted = wantedOf(curve, endsOf(study, column));
    const even = STATIONS.map((share) => wanted.from + share * (wanted.to - wanted.from));
    const stations = merge(even, wanted.points);
    return [goalOf('tune', column, columns.get(column)!.dimension === 'angle', stations, wanted.value, wanted.weight)];
  }
  const shafts = travel.mechanism.levers.filter(({ plates, group }) => plates.length > 0 && group >= 0);
  if (shafts.length === 0) return 'The file has neither plates nor a `tune` curve: there is no curve to restore';
  const goals = shafts.map(({ name }) => {
    const column = columns.get(`${name}.opening`)!;
    const value = (at: number): number => column.read(travel.build, travel.poseAt(at));
    return goalOf('drawing', column.name, true, STATIONS, value, () => 1);
  });
  // To leave out where the drawing has none would be to say that the car is near it there.
  const blank = goals.find(({ values }) => !values.every(Number.isFinite));
  return blank === undefined ? goals : `The drawing itself gives ${blank.column} no value somewhere along the travel: cure that first`;
}

function goalOf(
  of: Goal['of'],
  column: string,
  isAngle: boolean,
  stations: readonly number[],
  value: (at: number) => number,
  weight: (at: number) => number,
): Goal {
  const values = Float64Array.from(stations, value);
  const height = Math.max(...values) - Math.min(...values);
  return {
    of,
    column,
    stations,
    values,
    weights: Float64Array.from(stations, weight),
    enough: isAngle ? ENOUGH_ANGLE : ENOUGH_SHARE * height,
  };
}

/** rad; as for `tune`. */
const ENOUGH_ANGLE = (0.1 * Math.PI) / 180;
/** Of the curve's height. */
const ENOUGH_SHARE = 0.005;
const STATIONS: readonly number[] = Array.from({ length: 101 }, (_, i) => i / 100);

/** Changes are those of the adjusters, in their order, SI: longer, slacker or further open is positive. */
export interface TurnTrial {
  /** Half the sum of squares, in what is as good as none. */
  costAt(change: Float64Array): number;
  /** Undefined where a column has no value somewhere. */
  off(change: Float64Array): readonly OffCurve[] | undefined;
  /** Yields as it goes. @param turned numbers of the adjusters that may be */
  best(turned: readonly number[], start: Float64Array): Generator<undefined, Best>;
  /** With the adjusters turned, d weighted distance / d dimension in its scale, one row a distance; yields as it goes. */
  byDimension(change: Float64Array, of: readonly CarUnknown[]): Generator<undefined, Float64Array>;
  /** The same by adjusters, SI. @param of their numbers */
  byAdjuster(change: Float64Array, of: readonly number[]): Generator<undefined, Float64Array>;
}

/** Where the sum is least, as far as adjusters go; Infinity where there is none at the start. */
export interface Best {
  /** Of each adjuster, SI. */
  readonly change: Float64Array;
  readonly cost: number;
}

/** @param build as the car is */
export function createTurnTrial(build: Build, goals: readonly Goal[], adjusters: readonly Turnable[]): TurnTrial {
  const { mechanism } = build;
  const base = Float64Array.from(build.values);
  const stations = goals.flatMap((goal) => goal.stations.map((position) => ({ position, cable: undefined })));
  const owners = goals.flatMap((goal, g) => goal.stations.map((_, i) => ({ g, i })));
  const unknowns = adjusters.map(({ index, adjuster, rate }) => ({ index, scale: (adjuster.to - adjuster.from) / Math.abs(rate) / 10 }));
  const readings = owners.map(({ g }, station) => ({ station, column: goals[g]!.column }));
  const car = createCar(mechanism, stations, readings, unknowns, base);
  const apart = apartFrom(goals);
  const count = owners.length + apart.length;
  const found = new Float64Array(owners.length);
  const weightOf = ({ g, i }: { g: number; i: number }): number => goals[g]!.weights[i]! / goals[g]!.enough;
  const evaluate = (change: Float64Array, into: Float64Array): boolean => {
    car.put(Float64Array.from(adjusters, ({ index, rate }, k) => base[index]! + change[k]! / rate));
    car.read(found);
    owners.forEach((owner, row) => (into[row] = weightOf(owner) * (found[row]! - goals[owner.g]!.values[owner.i]!)));
    apart.forEach(({ one, other, times }, k) => (into[owners.length + k] = times * (into[one]! - into[other]!)));
    return into.every(Number.isFinite);
  };
  /** Of distances by so many dimensions, those of shafts apart too. @param factors one a dimension */
  const weigh = (slopes: Float64Array, factors: readonly number[], into: Float64Array): void => {
    const n = factors.length;
    owners.forEach((owner, row) => {
      for (let k = 0; k < n; k++) into[row * n + k] = weightOf(owner) * slopes[row * n + k]! * factors[k]!;
    });
    apart.forEach(({ one, other, times }, pair) => {
      const row = owners.length + pair;
      for (let k = 0; k < n; k++) into[row * n + k] = times * (into[one * n + k]! - into[other * n + k]!);
    });
  };
  const slopesOf = function* (
    change: Float64Array,
    of: readonly CarUnknown[],
    factors: readonly number[],
  ): Generator<undefined, Float64Array> {
    const turned = Float64Array.from(base);
    adjusters.forEach(({ index, rate }, k) => (turned[index] = turned[index]! + change[k]! / rate));
    const other = createCar(mechanism, stations, readings, of, turned);
    other.put(Float64Array.from(of, ({ index }) => turned[index]!));
    const slopes = new Float64Array(owners.length * of.length);
    yield* other.differentiate('both', slopes);
    const weighted = new Float64Array(count * of.length);
    weigh(slopes, factors, weighted);
    return weighted;
  };
  const residuals = new Float64Array(count);
  const half = (): number => residuals.reduce((sum, each) => sum + each * each, 0) / 2;
  return {
    costAt: (change) => (evaluate(change, residuals) ? half() : Infinity),
    off(change) {
      if (!evaluate(change, residuals)) return undefined;
      return goals.map(({ column, stations: at }, g): OffCurve => {
        let worst: OffCurve = { column, error: 0, at: at[0] ?? 0 };
        owners.forEach((owner, row) => {
          if (owner.g !== g || !(goals[g]!.weights[owner.i]! > 0)) return;
          const error = Math.abs(found[row]! - goals[g]!.values[owner.i]!);
          if (error > worst.error) worst = { column, error, at: at[owner.i]! };
        });
        return worst;
      });
    },
    *best(turned, start) {
      const bound = (end: 'from' | 'to'): Float64Array =>
        Float64Array.from(adjusters, ({ adjuster }, k) => (turned.includes(k) ? adjuster[end] - adjuster.now : start[k]!));
      const [from, to] = [bound('from'), bound('to')];
      const slopes = new Float64Array(owners.length * adjusters.length);
      const minimum = yield* leastSquares(
        {
          count,
          from,
          to,
          evaluate,
          *differentiate(x, _, jacobian) {
            car.put(Float64Array.from(adjusters, ({ index, rate }, k) => base[index]! + x[k]! / rate));
            yield* car.differentiate('both', slopes);
            weigh(slopes, adjusters.map(({ rate }) => 1 / rate), jacobian); // prettier-ignore
          },
        },
        start.map((value, k) => Math.min(to[k]!, Math.max(from[k]!, value))),
        { steps: 30, enough: 0, still: 1e-7 },
      );
      return minimum === undefined ? { change: start, cost: Infinity } : { change: minimum.x, cost: minimum.cost };
    },
    byDimension: (change, of) => slopesOf(change, of, of.map(({ scale }) => scale)), // prettier-ignore
    byAdjuster: (change, of) => slopesOf(change, of.map((k) => unknowns[k]!), of.map((k) => 1 / adjusters[k]!.rate)), // prettier-ignore
  };
}

interface Apart {
  /** Rows that are to be off alike. */
  readonly one: number;
  readonly other: number;
  /** As bad as being off together. */
  readonly times: number;
}

/** Each station of all openings but the first with the same of the first. */
function apartFrom([first, ...others]: readonly Goal[]): readonly Apart[] {
  if (first === undefined) return [];
  const count = first.stations.length;
  return others.flatMap((_, g) =>
    first.stations.map((__, i): Apart => {
      const times = (APART * NEARLY_CLOSED) / Math.max(NEARLY_CLOSED, first.values[i]!);
      return { one: (g + 1) * count + i, other: i, times };
    }),
  );
}

/** Common practice, no source: shafts are brought in step first, and closest at idle, where little air passes. */
const APART = 10;
/** rad */
const NEARLY_CLOSED = (5 * Math.PI) / 180;

/** Greatest distance from the goals in what is as good as none; 0 where there is none. */
export function worstOf(off: readonly OffCurve[], goals: readonly Goal[]): number {
  return off.reduce((most, { error }, i) => Math.max(most, error / goals[i]!.enough), 0);
}
