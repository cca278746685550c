/** Curves as paths, and their figures between stations. */

/** Where a figure of a chart stands in its drawing, px. */
export interface Plot {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly x: (travel: number) => number;
  readonly y: (figure: number) => number;
}

/** Two figures nearer than this along the pedal share one column of pixels. */
const COLUMN_PX = 1;

/**
 * Path data of a curve; empty where it has no figure at all. It breaks where it has none, and of stations that share a column of pixels it
 * keeps the first, the least, the greatest and the last.
 */
export function curvePath(stations: Float64Array, values: Float64Array, plot: Plot): string {
  let path = '';
  let isDrawing = false;
  for (let index = 0; index < stations.length;) {
    if (Number.isNaN(values[index])) {
      isDrawing = false;
      index += 1;
      continue;
    }
    const end = endOfColumn(stations, values, index, plot);
    keepOf(values, index, end);
    for (let i = 0; i < kept.length; i++) {
      const at = kept[i]!;
      if (i > 0 && at === kept[i - 1]) continue;
      path += (isDrawing ? 'L' : 'M') + tenths(plot.x(stations[at]!)) + ' ' + tenths(plot.y(values[at]!));
      isDrawing = true;
    }
    // A figure alone between two gaps is a dot.
    if (end - index === 1 && Number.isNaN(values[index - 1] ?? Number.NaN) && Number.isNaN(values[end] ?? Number.NaN)) path += 'h0.1';
    index = end;
  }
  return path;
}

function endOfColumn(stations: Float64Array, values: Float64Array, from: number, plot: Plot): number {
  const limit = plot.x(stations[from]!) + COLUMN_PX;
  let end = from + 1;
  while (end < stations.length && !Number.isNaN(values[end]) && plot.x(stations[end]!) < limit) end += 1;
  return end;
}

/** Rising; what stands twice stands side by side. Written anew for each column: a curve has hundreds, and all are laid out at each change. */
const kept: [number, number, number, number] = [0, 0, 0, 0];

function keepOf(values: Float64Array, from: number, end: number): void {
  let [least, greatest] = [from, from];
  for (let index = from; index < end; index++) {
    if (values[index]! < values[least]!) least = index;
    if (values[index]! > values[greatest]!) greatest = index;
  }
  kept[0] = from;
  kept[1] = Math.min(least, greatest);
  kept[2] = Math.max(least, greatest);
  kept[3] = end - 1;
}

/** px, rounded to a tenth: finer is not seen. Few such figures fit a chart, and to write one is slow: each is written once. */
function tenths(px: number): string {
  const count = Math.round(10 * px);
  return (written[count] ??= String(count / 10));
}

/** By the number of tenths; those outside a chart are kept, too, as properties. */
const written: Record<number, string> = [];

/** The figure at a pedal travel, on a straight line between two stations; NaN where either of them has none. */
export function valueAt(stations: Float64Array, values: Float64Array, travel: number): number {
  let [low, high] = [0, stations.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (stations[middle]! <= travel) low = middle;
    else high = middle;
  }
  const share = (travel - stations[low]!) / (stations[high]! - stations[low]!);
  if (share <= 0) return values[low]!;
  if (share >= 1) return values[high]!;
  return values[low]! + share * (values[high]! - values[low]!);
}

/** The last station at which a curve has a figure; undefined where it has none. */
export function lastFigure(values: Float64Array): number | undefined {
  for (let index = values.length - 1; index >= 0; index--) if (!Number.isNaN(values[index])) return index;
  return undefined;
}
