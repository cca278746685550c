/**
 * Least and greatest of a figure over the travel, and where it lies beyond a limit.
 *
 * A figure is taken at the travel's samples, which hold every place where a joint's angles turn and a grid besides, and wherever
 * three neighbours have the middle one outermost it is refined; so a built-in angle cannot dip unseen.
 */
import { bracketedRoot, lastWithValue } from '../numeric/roots.ts';
import { merge } from './places.ts';

/** Stations between which a figure without known turning places is searched. */
const STATIONS = 201;
const GRID: readonly number[] = Array.from({ length: STATIONS }, (_, i) => i / (STATIONS - 1));

/** The travels at which figures are taken: the given places and a grid. */
export function samplesOf(places: readonly number[]): readonly number[] {
  return merge(GRID, places);
}

export interface Extreme {
  readonly value: number;
  /** Pedal travel, a fraction. */
  readonly travel: number;
}

/** A figure along the pedal; NaN where it has no value. */
export type Along = (travel: number) => number;

/** Undefined where the figure has no value anywhere. */
export function leastOf(figure: Along, samples: readonly number[]): Extreme | undefined {
  let best: Extreme | undefined;
  for (const each of withDips(figure, samples)) if (best === undefined || each.value < best.value) best = each;
  return best;
}

/** Dips, edges and samples at which a figure is `most` or less, rising. */
export function placesAtMost(figure: Along, samples: readonly number[], most: number): readonly number[] {
  return merge(withDips(figure, samples).flatMap(({ travel, value }) => (value <= most ? [travel] : [])));
}

/** The figure at the samples, at the edges of where it has a value, and at the bottom of each dip between, along the pedal. */
function withDips(figure: Along, samples: readonly number[]): readonly Extreme[] {
  const before = searched.get(figure);
  if (before?.samples === samples) return before.found;
  const found = searchDips(figure, samples);
  searched.set(figure, { samples, found });
  return found;
}

/** Several rules look at the same figure. */
const searched = new WeakMap<Along, { readonly samples: readonly number[]; readonly found: readonly Extreme[] }>();

function searchDips(figure: Along, samples: readonly number[]): readonly Extreme[] {
  const taken = sampled(figure, samples);
  const dips: Extreme[] = [];
  for (const [i, sample] of taken.entries()) {
    const before = taken[i - 1];
    const after = taken[i + 1];
    if (!before || !after || !isDip(before.value, sample.value, after.value)) continue;
    const dip = refineLeast(figure, before.travel, sample, after.travel);
    // A place known in closed form is not given up for one that only rounding makes lower.
    if (sample.value - dip.value > NOISE * Math.abs(sample.value)) dips.push(dip);
  }
  return dips.length === 0 ? taken : [...taken, ...dips].sort((a, b) => a.travel - b.travel);
}

/** Relative. */
const NOISE = 1e-13;

/** Whether the middle value lies below its neighbours, or level with one of them: a level stretch has nothing to refine. */
function isDip(before: number, middle: number, after: number): boolean {
  return middle <= before && middle <= after && (middle < before || middle < after);
}

export function greatestOf(figure: Along, samples: readonly number[]): Extreme | undefined {
  const least = leastOf(upsideDown(figure), samples);
  return least && { value: -least.value, travel: least.travel };
}

/** The same for the same figure, so that it is searched once. */
function upsideDown(figure: Along): Along {
  const before = mirrors.get(figure);
  if (before !== undefined) return before;
  const mirror: Along = (travel) => -figure(travel);
  mirrors.set(figure, mirror);
  return mirror;
}

const mirrors = new WeakMap<Along, Along>();

export interface Range {
  readonly from: number;
  readonly to: number;
}

/** Where a figure is below zero, as stretches of the travel with refined ends. Where it has no value it is not. */
export function rangesBelow(figure: Along, samples: readonly number[]): readonly Range[] {
  const taken = withGaps(figure, samples);
  const ranges: { from: number; to: number }[] = [];
  let open: number | undefined;
  for (const [i, sample] of taken.entries()) {
    const before = taken[i - 1];
    const below = sample.value < 0;
    if (below && open === undefined) open = edge(figure, before, sample);
    if (!below && open !== undefined && before !== undefined) {
      ranges.push({ from: open, to: edge(figure, sample, before) });
      open = undefined;
    }
  }
  const last = taken.at(-1);
  if (open !== undefined && last !== undefined) ranges.push({ from: open, to: last.travel });
  return ranges;
}

/** As `withDips`, with the samples at which the figure has no value. */
function withGaps(figure: Along, samples: readonly number[]): readonly Extreme[] {
  const found = withDips(figure, samples);
  const has = new Set(found.map(({ travel }) => travel));
  const lacks = samples.filter((travel) => !has.has(travel)).map((travel): Extreme => ({ travel, value: NaN }));
  return lacks.length === 0 ? found : [...found, ...lacks].sort((a, b) => a.travel - b.travel);
}

/** Pedal travels at which a figure is zero, rising; each stretch between places is searched once. */
export function zerosOf(figure: Along, samples: readonly number[]): readonly number[] {
  const taken = sampled(figure, samples);
  const zeros: number[] = [];
  for (const [i, sample] of taken.entries()) {
    const before = taken[i - 1];
    if (sample.value === 0) zeros.push(sample.travel);
    else if (before !== undefined && before.value * sample.value < 0) {
      zeros.push(bracketedRoot(figure, before.travel, before.value, sample.travel, sample.value, 0));
    }
  }
  return zeros;
}

/** Where the figure has a value; a sample beside one where it has none brings in the edge between them. */
function sampled(figure: Along, at: readonly number[]): Extreme[] {
  const samples: Extreme[] = [];
  let before: Extreme | undefined;
  for (const travel of at) {
    const sample = { travel, value: figure(travel) };
    if (before !== undefined && Number.isNaN(before.value) !== Number.isNaN(sample.value)) {
      const [has, lacks] = Number.isNaN(sample.value) ? [before, sample] : [sample, before];
      const edge = lastWithValue(figure, has.travel, lacks.travel);
      if (edge !== has.travel) samples.push({ travel: edge, value: figure(edge) });
    }
    if (!Number.isNaN(sample.value)) samples.push(sample);
    before = sample;
  }
  return samples;
}

/** The travel at which a figure comes below zero between a place where it is not and one where it is. */
function edge(figure: Along, outside: Extreme | undefined, inside: Extreme): number {
  if (outside === undefined) return inside.travel;
  // A figure that is nothing over a stretch and then below it: the edge is where that begins.
  if (outside.value === 0) return lastWithValue((travel) => (figure(travel) < 0 ? NaN : 0), outside.travel, inside.travel);
  if (!Number.isNaN(outside.value)) return bracketedRoot(figure, outside.travel, outside.value, inside.travel, inside.value, 0);
  return lastWithValue(figure, inside.travel, outside.travel);
}

/** Golden section: the figure may have a corner there. */
function refineLeast(figure: Along, low: number, middle: Extreme, high: number): Extreme {
  let a = low;
  let b = high;
  let best = middle;
  const ratio = (3 - Math.sqrt(5)) / 2;
  let left = a + ratio * (b - a);
  let right = b - ratio * (b - a);
  let atLeft = figure(left);
  let atRight = figure(right);
  while (b - a > CLOSE) {
    if (atLeft < best.value) best = { travel: left, value: atLeft };
    if (atRight < best.value) best = { travel: right, value: atRight };
    if (atLeft <= atRight) {
      b = right;
      right = left;
      atRight = atLeft;
      left = a + ratio * (b - a);
      atLeft = figure(left);
    } else {
      a = left;
      left = right;
      atLeft = atRight;
      right = b - ratio * (b - a);
      atRight = figure(right);
    }
  }
  return best;
}

/** Of the travel; a smooth figure is then within 1e-9 relative, since at its turning place it changes with the square of this. */
const CLOSE = 1e-9;
