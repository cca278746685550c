/**
 * A figure as it is found along the pedal: at the samples, at the edges of where it has a value, and at the bottom of each dip.
 *
 * A figure is taken at the travel's samples, which hold every place where a joint's angles turn and a grid besides, and wherever
 * three neighbours have the middle one outermost it is refined; so a built-in angle cannot dip unseen.
 */
import { goldenSection } from '../numeric/goldenSection.ts';
import { keptOn, type KeptOn } from '../numeric/keptOn.ts';
import { lastWithValue } from '../numeric/roots.ts';
import { memoryOf, ownSamples, readerOf, sourceOf, type Along, type Course, type Extreme, type Seen, type Tried } from './along.ts';
import { once } from './once.ts';

/** A way of looking at figures, and what was seen last: several rules look at the same figure. */
interface Look {
  /** Behind the key of a figure in what is remembered. */
  readonly suffix: string;
  readonly last: KeptOn<Along, Seen>;
}

/** Where a figure itself can turn. */
const looking: Look = { suffix: '', last: keptOn() };
/** At all samples, for what stands beside other figures. */
const besideOthers: Look = { suffix: ' at all samples', last: keptOn() };

/** The figure at each of the samples; NaN where it has no value. */
export function valuesOver(figure: Along, samples: readonly number[]): readonly number[] {
  return see(figure, samples, ownSamples(figure, samples) === samples ? looking : besideOthers).values;
}

/** At the samples; those of its own of a figure that has such. */
function lookAt(figure: Along, samples: readonly number[]): Seen {
  return see(figure, ownSamples(figure, samples), looking);
}

function see(figure: Along, samples: readonly number[], look: Look): Seen {
  const last = look.last.get(figure);
  if (last?.samples === samples) return last;
  const memory = memoryOf(figure);
  const key = memory && memory.key + look.suffix;
  const before = key === undefined ? undefined : memory?.store.before(key);
  // The same figure at the same samples: whatever was found of it holds still.
  const found = before?.samples === samples ? before : lookAnew(figure, samples, before, look);
  look.last.set(figure, found);
  if (key !== undefined) memory?.store.keep(key, found);
  return found;
}

/** @param before what is known of it, at other samples */
function lookAnew(figure: Along, samples: readonly number[], before: Seen | undefined, look: Look): Seen {
  return { samples, values: valuesAt(figure, samples, before, look), triedBefore: before?.tried };
}

function valuesAt(figure: Along, samples: readonly number[], before: Seen | undefined, look: Look): readonly number[] {
  const source = sourceOf(figure);
  const values = source === undefined ? samples.slice() : see(source.figure, samples, look).values.slice();
  if (source !== undefined) {
    for (let i = 0; i < values.length; i++) values[i] = source.value(values[i]!);
    return values;
  }
  const reader = readerOf(figure);
  const byNumber = reader?.travel.samples === samples ? reader : undefined;
  const known = before?.samples ?? [];
  for (let i = 0, k = 0; i < values.length; i++) {
    const travel = values[i]!;
    while (k < known.length && known[k]! < travel) k++;
    if (known[k] === travel) values[i] = before!.values[k]!;
    else values[i] = byNumber === undefined ? figure(travel) : byNumber.read(i);
  }
  return values;
}

/** Where the figure has a value; a sample beside one where it has none brings in the edge between them. */
export function withEdges(figure: Along, samples: readonly number[]): Course {
  const look = lookAt(figure, samples);
  return (look.edged ??= hasGap(look.values) ? searchEdges(figure, look) : { travels: look.samples, values: look.values });
}

function hasGap(values: readonly number[]): boolean {
  for (let i = 0; i < values.length; i++) if (Number.isNaN(values[i])) return true;
  return false;
}

function searchEdges(figure: Along, { samples, values }: Seen): Course {
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
export function withDips(figure: Along, samples: readonly number[]): Course {
  const edged = withEdges(figure, samples);
  const look = lookAt(figure, samples);
  return (look.dipped ??= joined(edged, searchDips(figure, edged, look)));
}

/** The first of its least values at these places; undefined where the figure has no value anywhere. */
export function leastOf(figure: Along, samples: readonly number[]): Extreme | undefined {
  const { travels, values } = withDips(figure, samples);
  const look = lookAt(figure, samples);
  if (look.least !== undefined) return look.least;
  let best = -1;
  for (let i = 0; i < values.length; i++) if (best < 0 || values[i]! < values[best]!) best = i;
  return best < 0 ? undefined : (look.least = { travel: travels[best]!, value: values[best]! });
}

function searchDips(figure: Along, { travels, values }: Course, look: Seen): readonly Extreme[] {
  const dips: Extreme[] = [];
  // Between other places than the samples a search may hang on what was found of other figures.
  const known = travels === look.samples ? look.triedBefore : undefined;
  for (let i = 1; i < values.length - 1; i++) {
    if (!isDip(values[i - 1]!, values[i]!, values[i + 1]!)) continue;
    const [low, travel, high] = [travels[i - 1]!, travels[i]!, travels[i + 1]!];
    const before = known?.get(travel);
    const tried = before?.low === low && before.high === high ? before : tryDip(figure, low, { travel, value: values[i]! }, high);
    if (travels === look.samples) (look.tried ??= new Map()).set(travel, tried);
    if (tried.dip !== undefined) dips.push(tried.dip);
  }
  return dips;
}

function tryDip(figure: Along, low: number, sample: Extreme, high: number): Tried {
  if (isBottom(figure, low, sample, high)) return { low, high, dip: undefined };
  const dip = refineLeast(figure, low, sample, high);
  // A place known in closed form is not given up for one that only rounding makes lower.
  return { low, high, dip: sample.value - dip.value > NOISE * Math.abs(sample.value) ? dip : undefined };
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
export function withGaps(figure: Along, samples: readonly number[]): Course {
  const found = withDips(figure, samples);
  const { samples: own, values } = lookAt(figure, samples);
  return joined(
    found,
    own.flatMap((travel, i): readonly Extreme[] => (Number.isNaN(values[i]!) ? [{ travel, value: NaN }] : [])),
  );
}

/** A course with further places put in along the pedal. */
function joined(course: Course, further: readonly Extreme[]): Course {
  if (further.length === 0) return course;
  const own = course.travels.map((travel, i): Extreme => ({ travel, value: course.values[i]! }));
  const all = [...own, ...further].sort((a, b) => a.travel - b.travel);
  return { travels: all.map(({ travel }) => travel), values: all.map(({ value }) => value) };
}

/** The figure may have a corner there. */
function refineLeast(figure: Along, low: number, { travel, value }: Extreme, high: number): Extreme {
  const least = goldenSection(figure, low, high, { at: travel, value }, CLOSE);
  return { travel: least.at, value: least.value };
}

/** Of the travel; a smooth figure is then within 1e-9 relative, since at its turning place it changes with the square of this. */
const CLOSE = 1e-9;
