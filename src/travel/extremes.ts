/** Least and greatest of a figure over the travel, and where it lies beyond a limit. */
import { bracketedRoot, lastWithValue } from '../numeric/roots.ts';
import { upsideDown, type Along, type Extreme } from './along.ts';
import { leastOf, withDips, withEdges, withGaps } from './course.ts';
import { merge } from './places.ts';

export { following, upsideDown, type Along, type Extreme } from './along.ts';
export { leastOf, valuesOver } from './course.ts';

/** Stations between which a figure without known turning places is searched. */
const STATIONS = 201;
const GRID: readonly number[] = Array.from({ length: STATIONS }, (_, i) => i / (STATIONS - 1));

/** The travels at which figures are taken: the given places and a grid. */
export function samplesOf(places: readonly number[]): readonly number[] {
  return merge(GRID, places);
}

export function greatestOf(figure: Along, samples: readonly number[]): Extreme | undefined {
  const least = leastOf(upsideDown(figure), samples);
  return least && { value: -least.value, travel: least.travel };
}

/** Dips, edges and samples at which a figure is `most` or less, rising. */
export function placesAtMost(figure: Along, samples: readonly number[], most: number): readonly number[] {
  const { travels, values } = withDips(figure, samples);
  return merge(travels.filter((_, i) => values[i]! <= most));
}

export interface Range {
  readonly from: number;
  readonly to: number;
}

/** Where a figure is below zero, as stretches of the travel with refined ends. Where it has no value it is not. */
export function rangesBelow(figure: Along, samples: readonly number[]): readonly Range[] {
  // Of most figures nothing is below.
  if (!((leastOf(figure, samples)?.value ?? 0) < 0)) return [];
  const { travels, values } = withGaps(figure, samples);
  const at = (i: number): Extreme | undefined => (i < 0 ? undefined : { travel: travels[i]!, value: values[i]! });
  const ranges: Range[] = [];
  let open: number | undefined;
  for (let i = 0; i < values.length; i++) {
    const below = values[i]! < 0;
    if (below && open === undefined) open = edge(figure, at(i - 1), at(i)!);
    if (!below && open !== undefined) {
      ranges.push({ from: open, to: edge(figure, at(i), at(i - 1)!) });
      open = undefined;
    }
  }
  if (open !== undefined) ranges.push({ from: open, to: travels.at(-1)! });
  return ranges;
}

/** Pedal travels at which a figure is zero, rising; each stretch between places is searched once. */
export function zerosOf(figure: Along, samples: readonly number[]): readonly number[] {
  const { travels, values } = withEdges(figure, samples);
  const zeros: number[] = [];
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (value === 0) zeros.push(travels[i]!);
    else if (i > 0 && values[i - 1]! * value < 0) {
      zeros.push(bracketedRoot(figure, travels[i - 1]!, values[i - 1]!, travels[i]!, value, 0));
    }
  }
  return zeros;
}

/** The travel at which a figure comes below zero between a place where it is not and one where it is. */
function edge(figure: Along, outside: Extreme | undefined, inside: Extreme): number {
  if (outside === undefined) return inside.travel;
  // A figure that is nothing over a stretch and then below it: the edge is where that begins.
  if (outside.value === 0) return lastWithValue((travel) => (figure(travel) < 0 ? NaN : 0), outside.travel, inside.travel);
  if (!Number.isNaN(outside.value)) return bracketedRoot(figure, outside.travel, outside.value, inside.travel, inside.value, 0);
  return lastWithValue(figure, inside.travel, outside.travel);
}
