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
import { drawsOf, type BuildsRequest } from './monteCarlo.ts';
import { createPlacing } from './placing.ts';
import { PIECE, type Progress } from './stack.ts';
import type { Toleranced } from '../../kinematics/toleranced.ts';

/** The figures of one column, one a station, SI; NaN where fewer than half of the builds have one. */
export interface Band {
  readonly column: Column;
  readonly low: Float64Array;
  readonly middle: Float64Array;
  readonly high: Float64Array;
}

export interface Bands {
  /** Builds that have no figure somewhere; there they are left out. */
  readonly missing: number;
  readonly bands: readonly Band[];
}

/** Of the builds that lie below `low`, `middle` and `high`. */
export const BAND_SHARES = { low: 0.05, middle: 0.5, high: 0.95 } as const;

/** The curves that matter most and follow from where the parts stand: openings of shafts with plates, areas and signals. */
export function mainCurves({ columns, travel: { mechanism } }: Study): readonly Column[] {
  const isShaft = (owner: string): boolean => (mechanism.levers[mechanism.leverIndex.get(owner) ?? -1]?.plates.length ?? 0) > 0;
  return [...columns.values()].filter(
    ({ key, owner, forces }) => forces !== true && (key === 'area' || key === 'signal' || (key === 'opening' && isShaft(owner))),
  );
}

/** Enough for a twentieth at either side to be steady to what is seen in a chart. Common practice, no source. */
export const BAND_BUILDS = 1000;

/**
 * Yields as it goes.
 * @param columns read off a pose alone: what acts is not looked at
 * @param stations pedal travels, fractions
 */
export function* bandsOf(
  mechanism: Mechanism,
  columns: readonly Column[],
  toleranced: readonly Toleranced[],
  stations: readonly number[],
  { seed, law, from, to }: BuildsRequest,
): Generator<Progress, Bands> {
  const count = Math.max(0, to - from);
  const draw = drawsOf(seed, law, toleranced);
  const { build, put } = createPlacing(mechanism, toleranced, true);
  const offsets = new Float64Array(toleranced.length);
  const pose = createPose(mechanism);
  /** Of each column and station, a figure a build. */
  const figures = columns.map(() => stations.map(() => new Float64Array(count)));
  let missing = 0;
  for (let k = 0; k < count; k++) {
    for (let j = 0; j < toleranced.length; j++) offsets[j] = draw(from + k, j);
    put(offsets);
    let isWhole = true;
    for (let station = 0; station < stations.length; station++) {
      advance(build, stations[station]!, pose);
      for (let column = 0; column < columns.length; column++) {
        const value = columns[column]!.read(build, pose);
        figures[column]![station]![k] = value;
        isWhole &&= Number.isFinite(value);
      }
    }
    if (!isWhole) missing++;
    if ((k + 1) % PIECE === 0) yield { done: k + 1, of: count };
  }
  return { missing, bands: columns.map((column, i) => bandOf(column, figures[i]!)) };
}

function bandOf(column: Column, figures: readonly Float64Array[]): Band {
  const [low, middle, high] = [0, 0, 0].map(() => new Float64Array(figures.length)) as [Float64Array, Float64Array, Float64Array];
  figures.forEach((all, station) => {
    const known = all.filter((value) => Number.isFinite(value)).sort();
    const isEnough = known.length > 0 && 2 * known.length >= all.length;
    low[station] = isEnough ? quantile(known, BAND_SHARES.low) : NaN;
    middle[station] = isEnough ? quantile(known, BAND_SHARES.middle) : NaN;
    high[station] = isEnough ? quantile(known, BAND_SHARES.high) : NaN;
  });
  return { column, low, middle, high };
}
