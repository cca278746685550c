/** Between two stations a figure is taken as a straight line; at a station it is the station's own, to the last digit. */

/** A place among the stations: `share` of the way from station `from` to the next; 0 at a station and at the last. */
export interface Between {
  readonly from: number;
  readonly share: number;
}

/** @param stations rising, at least one; a travel beyond either end is taken as that end */
export function between(stations: Float64Array, travel: number): Between {
  const last = stations.length - 1;
  if (!(travel > stations[0]!)) return { from: 0, share: 0 };
  if (travel >= stations[last]!) return { from: last, share: 0 };
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (stations[middle]! <= travel) low = middle;
    else high = middle;
  }
  return { from: low, share: (travel - stations[low]!) / (stations[high]! - stations[low]!) };
}

/** NaN where either of the two stations has none; `every` and `offset` pick one of several figures that each station has. */
export function figureAt(series: Float64Array, { from, share }: Between, every = 1, offset = 0): number {
  const here = series[from * every + offset] ?? NaN;
  if (share === 0) return here;
  return here + share * ((series[(from + 1) * every + offset] ?? NaN) - here);
}

/** For each station the nearest one, itself or before, that has a figure; before the first with a figure, that one; -1 where none has. */
export function lastKnown(series: Float64Array): Int32Array {
  const gap = firstGap(series);
  if (gap === series.length) return everyStation(gap);
  const known = new Int32Array(series.length).fill(-1);
  let last = series.findIndex((figure) => !Number.isNaN(figure));
  for (let i = 0; i < series.length; i++) {
    if (!Number.isNaN(series[i])) last = i;
    known[i] = last;
  }
  return known;
}

/** The first station without a figure; as many as there are stations where each has one. */
function firstGap(series: Float64Array): number {
  let i = 0;
  while (i < series.length && !Number.isNaN(series[i])) i++;
  return i;
}

/** Of series without a gap: of hundreds of levers one is made, not one of each. */
function everyStation(count: number): Int32Array {
  if (stations.length !== count) stations = Int32Array.from({ length: count }, (_, i) => i);
  return stations;
}

let stations = new Int32Array(0);
