/**
 * The least gap of two bodies over the travel: found, not sampled.
 *
 * The travel is cut where a lever can turn back, so that on each stretch every lever goes from one known rotation to another and never
 * beyond. At the middle of a stretch the gap and its direction u are measured. On the whole stretch the gap is then no less than
 *
 *     − (farthest of a along u) − (farthest of b against u) − radii
 *
 * each farthest taken over all the rotations of the stretch, exactly. Stretches on which that is no less than the least gap measured so far
 * hold none that is less; the others are halved, until none is left. This is conservative advancement, with the turning of each corner in
 * the place of a greatest speed: nothing is assumed of speeds, which have no bound near a dead centre. Near a least gap the bound is off by
 * the square of a stretch where one of the two stands still, and the search ends after a few dozen measurements.
 *
 * Where both move, or the ends of a rod go opposite ways, or a lever lies on what is held against its pivot, it is off by a stretch's length, and a gap that hardly changes along the way would
 * be measured without end: after `MOST_LOOKS` the search gives up and says below which gap it has proved that there is none.
 */
import { goldenSection } from '../numeric/goldenSection.ts';
import type { Body } from './bodies.ts';
import type { Pair } from './pairs.ts';
import { farthest, spread, UNITS, type Piece } from './piece.ts';
import { leastApart } from './reach.ts';
import type { Separator } from './separation.ts';
import type { Span, Station } from './spans.ts';

export interface LeastGap {
  /** m; below zero the depth, of the deepest two pieces. */
  readonly gap: number;
  /** Pedal travel, a fraction. */
  readonly travel: number;
  /** The two pieces. */
  readonly pieces: readonly [Piece, Piece];
  /** Nearest points of the two, m in the plane of the front view. */
  readonly points: readonly [readonly [number, number], readonly [number, number]];
  /** How high along z these lie, m; undefined of what was seen along z. */
  readonly heights: readonly [number, number] | undefined;
}

export interface Searched {
  /** Undefined where no gap was found that is less than was asked for, or the pair cannot be assembled anywhere. */
  readonly least: LeastGap | undefined;
  /** m; it is proved that the gap is nowhere less than this. Not more than `FOUND` below what was found or asked for, but where the search gave up. NaN where the pair cannot be assembled. */
  readonly proved: number;
}

/** m (half a micron): the least gap is found to this; it is then looked closer at beside the place where it was found. */
export const FOUND = 5e-7;

/** Measurements for one pair. */
const MOST_LOOKS = 2000;
/** Of the travel; a stretch that short is a place. */
const SHORTEST = 1e-12;

export interface Search {
  readonly pair: Pair;
  readonly spans: readonly Span[];
  readonly stationAt: (travel: number) => Station;
  readonly separate: Separator;
}

/** @param below m; a gap that is no less than this is of no interest */
export function leastGap(search: Search, below: number): Searched {
  const { pair, spans, separate } = search;
  if (spans.length === 0) return { least: undefined, proved: NaN };
  const cutoff = UNITS * below;
  let best = cutoff;
  let found: { readonly station: Station; readonly pieces: Pair['pieces'][number]; readonly reach: number } | undefined;
  let looks = 0;
  const look = (pieces: Pair['pieces'][number], station: Station, reach: number) => {
    looks++;
    const separation = separate(pieces[0], pieces[1], station);
    if (separation.gap < best) {
      best = separation.gap;
      found = { station, pieces, reach };
    }
    return separation;
  };
  let left: Stretch[] = [];
  const nearest = pair.pieces.map((pieces) => ({ pieces, bound: leastApart(...pieces) })).sort((a, b) => a.bound - b.bound);
  for (const { pieces, bound } of nearest) {
    for (const [i, { from, to }] of spans.entries()) {
      if (bound >= best) continue;
      left.push({ pieces, from, to, bound });
      // The ends are places of their own: a stretch is measured at its middle.
      if (spans[i - 1]?.to !== from) look(pieces, from, 0);
      look(pieces, to, 0);
    }
  }
  let proved = Infinity;
  while (left.length > 0) {
    if (looks >= MOST_LOOKS) {
      proved = left.reduce((least, { bound }) => Math.min(least, bound), proved);
      break;
    }
    const next: Stretch[] = [];
    for (const { pieces, from, to, bound } of left) {
      if (bound >= best - UNITS * FOUND) {
        proved = Math.min(proved, bound);
        continue;
      }
      const middle = search.stationAt((from.travel + to.travel) / 2);
      const { ux, uy, uz } = look(pieces, middle, (to.travel - from.travel) / 2);
      const reaches = farthest(pieces[0], ux, uy, uz, from, to) + farthest(pieces[1], -ux, -uy, -uz, from, to);
      const least = -reaches - spread(pieces[0], ux, uy) - spread(pieces[1], ux, uy);
      const known = Math.max(bound, least);
      if (known >= best - UNITS * FOUND || to.travel - from.travel < SHORTEST) proved = Math.min(proved, known);
      else next.push({ pieces, from, to: middle, bound: known }, { pieces, from: middle, to, bound: known });
    }
    left = next;
  }
  proved = Math.min(proved, best) / UNITS;
  if (found === undefined) return { least: undefined, proved };
  const least = measured(search, found);
  return { least, proved: Math.min(proved, least.gap) };
}

/** A part of the travel, on which two pieces have been shown to stay at least so far apart, mm. */
interface Stretch {
  readonly pieces: readonly [Piece, Piece];
  readonly from: Station;
  readonly to: Station;
  readonly bound: number;
}

/** Looked closer at beside the place where it was found. */
function measured(
  { spans, stationAt, separate }: Search,
  { station, pieces, reach }: { readonly station: Station; readonly pieces: Pair['pieces'][number]; readonly reach: number },
): LeastGap {
  const gapAt = (travel: number): number => separate(pieces[0], pieces[1], stationAt(travel)).gap;
  const span = spans.find(({ from, to }) => from.travel <= station.travel && station.travel <= to.travel)!;
  const travel = reach === 0 ? station.travel : lowestBeside(gapAt, station.travel, reach, span);
  const { gap, onA, onB } = separate(pieces[0], pieces[1], stationAt(travel));
  return {
    gap: gap / UNITS,
    travel,
    pieces,
    points: [
      [onA.x / UNITS, onA.y / UNITS],
      [onB.x / UNITS, onB.y / UNITS],
    ],
    heights: pieces[1].between === undefined ? undefined : [onA.z / UNITS, onB.z / UNITS],
  };
}

/** The gap may have a corner there. */
function lowestBeside(gapAt: (travel: number) => number, middle: number, reach: number, { from, to }: Span): number {
  const [low, high] = [Math.max(from.travel, middle - reach), Math.min(to.travel, middle + reach)];
  return goldenSection(gapAt, low, high, { at: middle, value: gapAt(middle) }, CLOSE).at;
}

/** Of the travel. */
const CLOSE = 1e-9;

/** The gap of two bodies at a pedal travel, m; NaN where they cannot be assembled. */
export function gapAlong({ pair, stationAt, separate }: Search): (travel: number) => number {
  return (travel) => {
    const station = stationAt(travel);
    const isMissing = [pair.one, pair.other].some(({ levers }: Body) => levers.some((lever) => Number.isNaN(station.rotation[lever]!)));
    if (isMissing) return NaN;
    return pair.pieces.reduce((least, [a, b]) => Math.min(least, separate(a, b, station).gap), Infinity) / UNITS;
  };
}
