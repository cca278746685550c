/**
 * Between what the figures along the pedal's travel lie in most builds: the same random builds as those of the outcomes
 * (`monteCarlo.ts`), each read at every station, and of each station the percentiles.
 */
import type { Study } from '../../findings/study.ts';
import { advance } from '../../kinematics/advance.ts';
import type { Mechanism } from '../../kinematics/model.ts';
import { createPose } from '../../kinematics/pose.ts';
import { quantile } from '../../numeric/quantile.ts';
import type { Column } from '../../table/column.ts';
import { saying } from '../saying.ts';
import { drawsOf, type BuildsRequest } from './monteCarlo.ts';
import { createPlacing } from './placing.ts';
import type { Progress } from './stack.ts';
import type { Toleranced } from '../../kinematics/toleranced.ts';

/** What is read of each build. */
export type Figure = Pick<Column, 'name' | 'unit' | 'scale' | 'read'>;

/** The figures of one column, one a station, SI; NaN where fewer than half of the builds have one. */
export interface Band<Of extends Figure = Figure> {
  readonly column: Of;
  readonly low: Float64Array;
  readonly middle: Float64Array;
  readonly high: Float64Array;
}

export interface Bands<Of extends Figure = Figure> {
  /** Builds that have no figure somewhere where the middle of all builds has one; there they are left out. */
  readonly missing: number;
  readonly bands: readonly Band<Of>[];
}

/** Of the builds that lie below `low`, `middle` and `high`. */
export const BAND_SHARES = { low: 0.05, middle: 0.5, high: 0.95 } as const;

/** The curves that matter most: openings of shafts with plates, areas, signals, and what the foot feels. */
export function mainCurves({ columns, travel: { mechanism } }: Study): readonly Column[] {
  const isShaft = (owner: string): boolean => (mechanism.levers[mechanism.leverIndex.get(owner) ?? -1]?.plates.length ?? 0) > 0;
  const isFelt = (name: string): boolean => name === 'pedal.effort' || name === 'pedal.release';
  return [...columns.values()].filter(
    ({ key, owner, name }) => key === 'area' || key === 'signal' || (key === 'opening' && isShaft(owner)) || isFelt(name),
  );
}

/** Enough for a twentieth at either side to be steady to what is seen in a chart. Common practice, no source. */
export const BAND_BUILDS = 1000;

/**
 * Yields as it goes.
 * @param columns those of what acts count the friction that the file gives
 * @param stations pedal travels, fractions, at least two of them different: columns of what acts keep what they found at the last travel
 */
export function* bandsOf<Of extends Figure>(
  mechanism: Mechanism,
  columns: readonly Of[],
  toleranced: readonly Toleranced[],
  stations: readonly number[],
  { seed, law, from, to }: BuildsRequest,
): Generator<Progress, Bands<Of>> {
  const count = Math.max(0, to - from);
  const draw = drawsOf(seed, law, toleranced);
  const { build, put } = createPlacing(mechanism, toleranced, true);
  const offsets = new Float64Array(toleranced.length);
  const pose = createPose(mechanism);
  /** Of each column and station, a figure a build. */
  const figures = columns.map(() => stations.map(() => new Float64Array(count)));
  /** Whether the middle of all builds has one. */
  const isKnown = columns.map(() => new Uint8Array(stations.length));
  /** How many figures are missing of those that are known in the middle of all builds. */
  const readAll = (each: (value: number, column: number, station: number) => void): number => {
    let gone = 0;
    for (let station = 0; station < stations.length; station++) {
      advance(build, stations[station]!, pose);
      for (let column = 0; column < columns.length; column++) {
        const value = columns[column]!.read(build, pose);
        each(value, column, station);
        if (isKnown[column]![station] === 1 && !Number.isFinite(value)) gone++;
      }
    }
    return gone;
  };
  put(offsets);
  readAll((value, column, station) => (isKnown[column]![station] = Number.isFinite(value) ? 1 : 0));
  let missing = 0;
  for (let k = 0; k < count; k++) {
    for (let j = 0; j < toleranced.length; j++) offsets[j] = draw(from + k, j);
    put(offsets);
    if (readAll((value, column, station) => (figures[column]![station]![k] = value)) > 0) missing++;
    yield { done: k + 1, of: count };
  }
  const bands: Band<Of>[] = [];
  const built = (): Progress => ({ done: count, of: count });
  for (let column = 0; column < columns.length; column++) {
    bands.push(yield* saying(bandOf(columns[column]!, figures[column]!), built));
  }
  return { missing, bands };
}

/** Yields after each station. */
function* bandOf<Of extends Figure>(column: Of, figures: readonly Float64Array[]): Generator<undefined, Band<Of>> {
  const [low, middle, high] = [0, 0, 0].map(() => new Float64Array(figures.length)) as [Float64Array, Float64Array, Float64Array];
  for (let station = 0; station < figures.length; station++) {
    const all = figures[station]!;
    const known = all.filter((value) => Number.isFinite(value)).sort();
    const isEnough = known.length > 0 && 2 * known.length >= all.length;
    low[station] = isEnough ? quantile(known, BAND_SHARES.low) : NaN;
    middle[station] = isEnough ? quantile(known, BAND_SHARES.middle) : NaN;
    high[station] = isEnough ? quantile(known, BAND_SHARES.high) : NaN;
    yield undefined;
  }
  return { column, low, middle, high };
}
