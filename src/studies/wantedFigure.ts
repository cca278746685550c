/**
 * The values of one figure at which a condition is just met: all of them within bounds, as `crossings.ts` looks for them, the stretches within
 * which the condition holds, and what comes nearest where none does.
 *
 * Each look at a value is a text solved, so that the search goes in steps of one look. Where a side of a comparison has no value next to
 * where it has one, the edge between is brought close first: a value that is met just before it is found too.
 */
import { crossings, evenPlaces } from './crossings.ts';

/** How a condition stands with one value of the figure. */
export interface Look {
  /** Of each comparison in turn: the side that is asked for less the one that is demanded, SI; NaN where one of them has no value. */
  readonly misses: readonly number[];
  /** Whether the whole condition holds; undefined where that cannot be decided. */
  readonly holds: boolean | undefined;
}

export interface WantedBounds {
  /** SI, `from` less than `to`. */
  readonly from: number;
  readonly to: number;
  /** Values that are looked at first, evenly spread, 2 at least. */
  readonly places: number;
  /** Whether it has whole values only: then none but those of them that are looked at first are looked at. */
  readonly whole?: boolean;
}

export interface WantedFigure {
  /** Rising; each with the number of the comparison whose two sides are equal there. */
  readonly roots: readonly WantedRoot[];
  /** What comes nearest to meeting a comparison; undefined where none has a value anywhere. */
  readonly nearest: WantedRoot | undefined;
  /** Where the condition holds, rising. */
  readonly holding: readonly Stretch[];
  /** Of the places looked at first, those at which no comparison has a value. */
  readonly missing: number;
  /** Whether any comparison comes out otherwise with another value. */
  readonly matters: boolean;
}

export interface WantedRoot {
  /** SI. */
  readonly value: number;
  readonly comparison: number;
}

/** From one value to another; an end that is `open` is known to a step between two places only: beyond it there is no value, or a jump. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly open: { readonly from: boolean; readonly to: boolean };
}

export interface LookProgress {
  readonly done: number;
  /** Looks that are sure to be taken; refining takes more. */
  readonly of: number;
}

/** Yields after each look. @param look asked once a value */
export function* wantedFigure(
  look: (value: number) => Look,
  { from, to, places, whole = false }: WantedBounds,
): Generator<LookProgress, WantedFigure> {
  const known = new Map<number, Look>();
  const grid = evenPlaces(from, to, places).map((value) => (whole ? Math.round(value) : value));
  const progress = (): LookProgress => ({ done: known.size, of: Math.max(places, known.size) });
  for (const value of grid) {
    known.set(value, look(value));
    yield progress();
  }
  const comparisons = known.get(from)!.misses.length;
  const roots: WantedRoot[] = [];
  const near: { readonly root: WantedRoot; readonly miss: number }[] = [];
  for (let comparison = 0; comparison < comparisons; comparison++) {
    const seen = [...grid];
    for (;;) {
      let asked: number | undefined;
      const missAt = (value: number): number => {
        const before = known.get(value);
        if (before !== undefined) return before.misses[comparison] ?? NaN;
        if (whole) return NaN;
        asked = value;
        throw STOPPED;
      };
      try {
        const found = crossings(missAt, { target: 0, places: withEdges(seen, missAt) });
        roots.push(...found.roots.map(({ value }) => ({ value, comparison })));
        const { nearest } = found;
        if (nearest !== undefined) near.push({ root: { value: nearest.value, comparison }, miss: Math.abs(nearest.outcome) });
        break;
      } catch (error) {
        if (error !== STOPPED || asked === undefined) throw error;
        known.set(asked, look(asked));
        yield progress();
      }
    }
  }
  roots.sort((a, b) => a.value - b.value || a.comparison - b.comparison);
  const first = grid.map((value) => known.get(value)!);
  return {
    roots,
    nearest: near.sort((a, b) => a.miss - b.miss)[0]?.root,
    holding: stretches(known, roots, { from, to, places, whole }),
    missing: first.filter(({ misses }) => misses.every(Number.isNaN)).length,
    matters: Array.from({ length: comparisons }, (_, i) => first.map(({ misses }) => misses[i] ?? NaN)).some(varies),
  };
}

/** Leaves the search where a look is wanted; it goes no further than the search. */
const STOPPED = new Error('A look is wanted');

/** With the last value on each side of a stretch without any. */
function withEdges(places: readonly number[], missAt: (value: number) => number): readonly number[] {
  return places.flatMap((value, i) => {
    const next = places[i + 1];
    if (next === undefined) return [value];
    const [here, there] = [!Number.isNaN(missAt(value)), !Number.isNaN(missAt(next))];
    if (here === there) return [value];
    let [inside, outside] = here ? [value, next] : [next, value];
    for (let halving = 0; halving < HALVINGS; halving++) {
      const middle = (inside + outside) / 2;
      if (Number.isNaN(missAt(middle))) outside = middle;
      else inside = middle;
    }
    return inside === value || inside === next ? [value] : [value, inside];
  });
}

/** Of a step between two places: to a millionth of it. */
const HALVINGS = 20;

function varies(misses: readonly number[]): boolean {
  const values = misses.filter((miss) => !Number.isNaN(miss));
  // What has a value in some places only depends on the figure too.
  if (values.length > 0 && values.length < misses.length) return true;
  const [least, most] = [Math.min(...values), Math.max(...values)];
  return most - least > SAME * Math.max(Math.abs(least), Math.abs(most)) + ROUNDING;
}

/** Relative; less is rounding of the computation. */
const SAME = 1e-12;
/** SI. */
const ROUNDING = 1e-15;

function stretches(known: ReadonlyMap<number, Look>, roots: readonly WantedRoot[], { from, to, whole }: WantedBounds): readonly Stretch[] {
  const looks = [...known].sort(([a], [b]) => a - b);
  const found: Stretch[] = [];
  let begin: number | undefined;
  looks.forEach(([, { holds }], i) => {
    if (holds === true) begin ??= i;
    const ends = begin !== undefined && (holds !== true || i === looks.length - 1);
    if (!ends) return;
    const last = holds === true ? i : i - 1;
    const [start, end] = [endOf(looks, roots, begin!, -1, to - from), endOf(looks, roots, last, 1, to - from)];
    const [first, final] = [looks[begin!]![0], looks[last]![0]];
    found.push({
      from: start ?? first,
      to: end ?? final,
      open: { from: !whole && start === undefined && first > from, to: !whole && end === undefined && final < to },
    });
    begin = undefined;
  });
  return found;
}

/**
 * The root that ends a stretch: the one at its last look, else the first on the way to the next look, at which the condition does not hold.
 * Under `<` it does not hold at a root, nor so near to it as it is refined. Undefined where there is none.
 */
function endOf(
  looks: readonly (readonly [number, Look])[],
  roots: readonly WantedRoot[],
  at: number,
  step: 1 | -1,
  width: number,
): number | undefined {
  const last = looks[at]![0];
  const near = NEAR * width;
  // The next look may be one that refines the root, short of it.
  const reach = step * ((looks[at + step]?.[0] ?? last) - last) + near;
  const distance = (value: number): number => step * (value - last);
  const values = roots.map(({ value }) => value);
  return (
    values.find((value) => Math.abs(value - last) <= near) ??
    values.filter((value) => distance(value) > 0 && distance(value) <= reach).sort((a, b) => distance(a) - distance(b))[0]
  );
}

/** Of the bounds' width: looks that refine a root lie nearer to it. */
const NEAR = 1e-6;
