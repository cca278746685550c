/**
 * Least and greatest of a figure over the travel, and where it lies beyond a limit.
 *
 * A figure is taken at the travel's samples, which hold every place where a joint's angles turn and a grid besides, and wherever
 * three neighbours have the middle one outermost it is refined; so a built-in angle cannot dip unseen.
 */
import { goldenSection } from '../numeric/goldenSection.ts';
import { bracketedRoot, lastWithValue } from '../numeric/roots.ts';
import { once } from './once.ts';
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

/** A figure as it was found along the pedal: travels rising, and its value at each. */
interface Course {
  readonly travels: readonly number[];
  readonly values: readonly number[];
}

/** Undefined where the figure has no value anywhere. */
export function leastOf(figure: Along, samples: readonly number[]): Extreme | undefined {
  const { travels, values } = withDips(figure, samples);
  let best = -1;
  for (let i = 0; i < values.length; i++) if (best < 0 || values[i]! < values[best]!) best = i;
  return best < 0 ? undefined : { travel: travels[best]!, value: values[best]! };
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
  if (!isBelow(withDips(figure, samples))) return [];
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

function isBelow({ values }: Course): boolean {
  for (const value of values) if (value < 0) return true;
  return false;
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

/** A figure that follows from another at the same place; where that one has been read it is not read anew. */
export function following(figure: Along, value: (of: number) => number): Along {
  const follower: Along = (travel) => value(figure(travel));
  sources.set(follower, { figure, value });
  return follower;
}

const sources = new WeakMap<Along, { readonly figure: Along; value(of: number): number }>();

/** The same for the same figure, so that it is searched once. */
function upsideDown(figure: Along): Along {
  const before = mirrors.get(figure);
  if (before !== undefined) return before;
  const mirror = following(figure, (value) => -value);
  mirrors.set(figure, mirror);
  return mirror;
}

const mirrors = new WeakMap<Along, Along>();

/** Several rules look at the same figure: what is known of it at some samples. */
interface Looked {
  readonly samples: readonly number[];
  /** At each sample, NaN where it has no value. */
  readonly values: readonly number[];
  edged?: Course;
  dipped?: Course;
}

const looked = new WeakMap<Along, Looked>();

function lookAt(figure: Along, samples: readonly number[]): Looked {
  const before = looked.get(figure);
  if (before?.samples === samples) return before;
  const source = sources.get(figure);
  const values = source === undefined ? samples.slice() : lookAt(source.figure, samples).values.slice();
  const read = source === undefined ? figure : source.value;
  for (let i = 0; i < values.length; i++) values[i] = read(values[i]!);
  const found: Looked = { samples, values };
  looked.set(figure, found);
  return found;
}

/** Where the figure has a value; a sample beside one where it has none brings in the edge between them. */
function withEdges(figure: Along, samples: readonly number[]): Course {
  const look = lookAt(figure, samples);
  return (look.edged ??= hasGap(look.values) ? searchEdges(figure, look) : { travels: samples, values: look.values });
}

function hasGap(values: readonly number[]): boolean {
  for (const value of values) if (Number.isNaN(value)) return true;
  return false;
}

function searchEdges(figure: Along, { samples, values }: Looked): Course {
  const edges = edgesAmong(samples);
  const course = { travels: [] as number[], values: [] as number[] };
  const put = (travel: number, value: number): void => {
    course.travels.push(travel);
    course.values.push(value);
  };
  samples.forEach((travel, i) => {
    const value = values[i]!;
    if (i > 0 && Number.isNaN(values[i - 1]!) !== Number.isNaN(value)) {
      const [has, lacks] = Number.isNaN(value) ? [samples[i - 1]!, travel] : [travel, samples[i - 1]!];
      const last = edgeBetween(figure, has, lacks, edges);
      if (last !== has) put(last, figure(last));
    }
    if (!Number.isNaN(value)) put(travel, value);
  });
  return course;
}

/**
 * Where a figure last has its value, to the last bits. Many figures have theirs to the same place, as where a cable's slack ends: where
 * another one's edge was found is looked first.
 * @param edges known so far, by the sample with a value; the one found is added
 */
function edgeBetween(figure: Along, has: number, lacks: number, edges: Map<number, number>): number {
  const before = edges.get(has);
  if (before !== undefined && (before - has) * (before - lacks) <= 0) {
    const beyond = before + Math.sign(lacks - has) * Math.abs(before) * Number.EPSILON;
    const isEdge = beyond !== before && Number.isNaN(figure(beyond)) && (before === has || !Number.isNaN(figure(before)));
    if (isEdge) return before;
  }
  const last = lastWithValue(figure, has, lacks);
  edges.set(has, last);
  return last;
}

const edgesAmong = once((_: readonly number[]) => new Map<number, number>());

/** The figure at the samples, at the edges of where it has a value, and at the bottom of each dip between, along the pedal. */
function withDips(figure: Along, samples: readonly number[]): Course {
  const edged = withEdges(figure, samples);
  const look = lookAt(figure, samples);
  return (look.dipped ??= joined(edged, searchDips(figure, edged)));
}

function searchDips(figure: Along, { travels, values }: Course): readonly Extreme[] {
  const dips: Extreme[] = [];
  for (let i = 1; i < values.length - 1; i++) {
    if (!isDip(values[i - 1]!, values[i]!, values[i + 1]!)) continue;
    const sample = { travel: travels[i]!, value: values[i]! };
    if (isBottom(figure, travels[i - 1]!, sample, travels[i + 1]!)) continue;
    const dip = refineLeast(figure, travels[i - 1]!, sample, travels[i + 1]!);
    // A place known in closed form is not given up for one that only rounding makes lower.
    if (sample.value - dip.value > NOISE * Math.abs(sample.value)) dips.push(dip);
  }
  return dips;
}

/** Relative. */
const NOISE = 1e-13;

/** Whether the middle value lies below its neighbours, or level with one of them: a level stretch has nothing to refine. */
function isDip(before: number, middle: number, after: number): boolean {
  return middle <= before && middle <= after && (middle < before || middle < after);
}

/**
 * Whether a dip has its bottom at the sample itself, as it mostly has where that is known in closed form: closely beside it, on both
 * sides, the figure is no lower. What a smooth figure can hide between is the square of `BESIDE`; for one that has a corner it is looked
 * as closely as `refineLeast` would.
 */
function isBottom(figure: Along, low: number, { travel, value }: Extreme, high: number): boolean {
  const isLower = (at: number, noise: number): boolean => at > low && at < high && figure(at) < value - noise * Math.abs(value);
  return !(
    isLower(travel + BESIDE, ROUNDING) ||
    isLower(travel - BESIDE, ROUNDING) ||
    isLower(travel + CLOSE, NOISE) ||
    isLower(travel - CLOSE, NOISE)
  );
}

/** Of the travel. */
const BESIDE = 1e-6;
/** Relative; a few units in the last place. */
const ROUNDING = 1e-15;

/** As `withDips`, with the samples at which the figure has no value. */
function withGaps(figure: Along, samples: readonly number[]): Course {
  const found = withDips(figure, samples);
  const { values } = lookAt(figure, samples);
  return joined(
    found,
    samples.flatMap((travel, i): readonly Extreme[] => (Number.isNaN(values[i]!) ? [{ travel, value: NaN }] : [])),
  );
}

/** A course with further places put in along the pedal. */
function joined(course: Course, further: readonly Extreme[]): Course {
  if (further.length === 0) return course;
  const own = course.travels.map((travel, i): Extreme => ({ travel, value: course.values[i]! }));
  const all = [...own, ...further].sort((a, b) => a.travel - b.travel);
  return { travels: all.map(({ travel }) => travel), values: all.map(({ value }) => value) };
}

/** The travel at which a figure comes below zero between a place where it is not and one where it is. */
function edge(figure: Along, outside: Extreme | undefined, inside: Extreme): number {
  if (outside === undefined) return inside.travel;
  // A figure that is nothing over a stretch and then below it: the edge is where that begins.
  if (outside.value === 0) return lastWithValue((travel) => (figure(travel) < 0 ? NaN : 0), outside.travel, inside.travel);
  if (!Number.isNaN(outside.value)) return bracketedRoot(figure, outside.travel, outside.value, inside.travel, inside.value, 0);
  return lastWithValue(figure, inside.travel, outside.travel);
}

/** The figure may have a corner there. */
function refineLeast(figure: Along, low: number, { travel, value }: Extreme, high: number): Extreme {
  const least = goldenSection(figure, low, high, { at: travel, value }, CLOSE);
  return { travel: least.at, value: least.value };
}

/** Of the travel; a smooth figure is then within 1e-9 relative, since at its turning place it changes with the square of this. */
const CLOSE = 1e-9;
