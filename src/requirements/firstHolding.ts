/**
 * The first pedal position at which a condition holds.
 *
 * It is looked for at every station, and between two stations wherever a comparison in it changes sign and midway of such places: so
 * `==` is found where the two sides cross, and so is a window that opens and shuts again within one step, as long as each side runs
 * one way there. The place found is refined by halving; and since two sides count as equal a little before and after they cross, it
 * is then moved to where they do.
 */
import { forgiven } from '../definition/formula/compare.ts';
import { bracketedRoot } from '../numeric/roots.ts';
import { merge } from '../travel/places.ts';
import type { ComparisonNode, Condition } from './evaluate.ts';
import type { Sheet } from './sheet.ts';

export type FirstHolding =
  | { readonly kind: 'found'; readonly travel: number }
  | { readonly kind: 'never' }
  /** At `travel` it cannot be decided, and it holds nowhere before; `travel` is undefined where too much was asked for. */
  | { readonly kind: 'undecided'; readonly travel: number | undefined };

export function firstHolding(condition: Condition, sheet: Sheet): FirstHolding {
  const comparisons = comparisonsIn(condition);
  const differences = comparisons.map(differenceOf);
  let before: Station | undefined;
  let last: number | undefined;
  // What is the same everywhere need be looked at once.
  for (const travel of condition.contextual ? sheet.stations : [0]) {
    if (!sheet.spend(1 + differences.length)) return { kind: 'undecided', travel: undefined };
    const here: Station = { travel, values: differences.map((difference) => difference(travel)) };
    for (const place of [...(before === undefined ? [] : between(before, here, differences)), travel]) {
      const truth = condition.run(place);
      if (sheet.exhausted()) return { kind: 'undecided', travel: undefined };
      if (truth === undefined) return { kind: 'undecided', travel: place };
      if (truth) return refine(condition, comparisons, last, place);
      last = place;
    }
    before = here;
  }
  return { kind: 'never' };
}

function differenceOf({ left, right }: Pick<ComparisonNode, 'left' | 'right'>): (travel: number) => number {
  return (travel) => left.run(travel) - right.run(travel);
}

interface Station {
  readonly travel: number;
  /** Left side less right side of each comparison. */
  readonly values: readonly number[];
}

/** Comparisons that are made at the position itself. */
function comparisonsIn(condition: Condition): readonly ComparisonNode[] {
  switch (condition.kind) {
    case 'comparison':
      return [condition];
    case 'at':
      return [];
    default:
      return condition.parts.flatMap(comparisonsIn);
  }
}

/** Where the outcome may be another than at both ends, rising: each place where two sides cross, and midway of those. */
function between(before: Station, here: Station, differences: readonly ((travel: number) => number)[]): readonly number[] {
  const crossings: number[] = [];
  for (let k = 0; k < differences.length; k++) {
    const [from, to] = [before.values[k]!, here.values[k]!];
    if (from * to < 0) crossings.push(bracketedRoot(differences[k]!, before.travel, from, here.travel, to, 0));
  }
  if (crossings.length === 0) return crossings;
  const edges = merge([before.travel, here.travel], crossings);
  const midway = edges.slice(1).map((edge, i) => (edges[i]! + edge) / 2);
  return merge(edges, midway).filter((travel) => travel > before.travel && travel < here.travel);
}

/** @param low where it does not hold, undefined where it holds from the first; @param high where it holds */
function refine(condition: Condition, comparisons: readonly ComparisonNode[], low: number | undefined, high: number): FirstHolding {
  if (low === undefined) return { kind: 'found', travel: high };
  let outside = low;
  let inside = high;
  while (inside - outside > CLOSE) {
    const middle = (outside + inside) / 2;
    const truth = condition.run(middle);
    if (truth === undefined) return { kind: 'undecided', travel: middle };
    if (truth) inside = middle;
    else outside = middle;
  }
  return { kind: 'found', travel: crossingNear(comparisons, inside) };
}

/** Where the sides of a comparison cross that are all but equal at `travel`; the nearest such place, else `travel` itself. */
function crossingNear(comparisons: readonly ComparisonNode[], travel: number): number {
  const places = comparisons.flatMap(({ left, right, floor }) => {
    const [a, b] = [left.run(travel), right.run(travel)];
    // At the edge of what counts as equal; twice that is certainly there.
    if (!(Math.abs(a - b) <= 2 * forgiven(a, b, floor))) return [];
    const difference = differenceOf({ left, right });
    for (let reach = CLOSE; reach < WIDEST; reach *= 4) {
      const [low, high] = [Math.max(0, travel - reach), Math.min(1, travel + reach)];
      const [atLow, atHigh] = [difference(low), difference(high)];
      if (atLow * atHigh <= 0) return [bracketedRoot(difference, low, atLow, high, atHigh, 0)];
    }
    return [];
  });
  return places.sort((one, other) => Math.abs(one - travel) - Math.abs(other - travel))[0] ?? travel;
}

/** Of the travel; sides that take longer to cross run side by side. */
const WIDEST = 1e-3;

/** Of the travel. */
const CLOSE = 1e-12;
