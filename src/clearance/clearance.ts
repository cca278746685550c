/**
 * Gaps between what moves and what must stay free, and between the moving parts themselves, over the travel of a linkage. Each pair is
 * searched when it is first asked for, and as far as is asked.
 */
import type { Along } from '../travel/extremes.ts';
import { later, once } from '../travel/once.ts';
import type { Travel } from '../travel/travel.ts';
import { bodiesOf, type Bodies, type KeepOutBody, type LeverBody, type Mover, type RodBody } from './bodies.ts';
import { gapAlong, leastGap, type LeastGap, type Search, type Searched } from './leastGap.ts';
import type { Piece } from './piece.ts';
import { pairsOf, type Apart, type Pair } from './pairs.ts';
import { isFar } from './reach.ts';
import { createSeparator } from './separation.ts';
import { spansOf, stationsOf } from './spans.ts';

/** Two bodies with what is known of the gap between them. */
export interface Gap<Other extends LeverBody | RodBody | KeepOutBody = LeverBody | RodBody | KeepOutBody> {
  readonly one: Mover;
  readonly other: Other;
  /**
   * The least gap over the whole travel, if it is less than `below`, m. What is `proved` less than `below` without a gap being found is not
   * decided.
   */
  search(below: number): Searched;
  /** The same of some pieces of `one` alone, searched anew each time. */
  searchOnly(below: number, counts: (piece: Piece) => boolean): Searched;
  /** m, below zero the depth; NaN where the pair cannot be assembled. */
  readonly along: Along;
}

export interface Clearance {
  readonly bodies: Bodies;
  readonly keepOuts: readonly Gap<KeepOutBody>[];
  readonly parts: readonly Gap<LeverBody | RodBody>[];
  readonly apart: readonly Apart[];
}

/** Nothing is searched yet, and planck not loaded. */
export const clearanceOf = once((travel: Travel): Clearance => {
  const bodies = bodiesOf(travel.build);
  const { keepOuts, parts, apart } = pairsOf(travel.build, bodies);
  const separator = later(createSeparator);
  const gaps = <Other extends LeverBody | RodBody | KeepOutBody>(pairs: readonly (Pair & { readonly other: Other })[]) =>
    pairs.map((pair) => gapOf(travel, pair, separator));
  return { bodies, keepOuts: gaps(keepOuts), parts: gaps(parts), apart };
});

/** What comes nearest to a keep-out; undefined where nothing is held against it. */
export function nearestTo(
  { keepOuts }: Clearance,
  body: KeepOutBody,
): { readonly gap: Gap<KeepOutBody>; readonly least: LeastGap } | undefined {
  let best: { readonly gap: Gap<KeepOutBody>; readonly least: LeastGap } | undefined;
  for (const gap of keepOuts) {
    if (gap.other !== body) continue;
    // What is farther than the nearest so far need not be searched.
    const { least } = gap.search(best?.least.gap ?? Infinity);
    if (least !== undefined) best = { gap, least };
  }
  return best;
}

function gapOf<Other extends LeverBody | RodBody | KeepOutBody>(
  travel: Travel,
  pair: Pair & { readonly other: Other },
  separator: () => ReturnType<typeof createSeparator>,
): Gap<Other> {
  const { one, other } = pair;
  const searching = later((): Search => {
    const levers = [...new Set([...one.levers, ...other.levers])];
    const stationAt = stationsOf(travel, levers);
    return { pair, stationAt, spans: spansOf(travel, levers, stationAt), separate: separator() };
  });
  /** What has been searched, and up to which gap. */
  let known: { readonly below: number; readonly searched: Searched } | undefined;
  const search = (below: number): Searched => {
    if (known === undefined || (known.searched.least === undefined && known.below < below)) {
      const searched = isFar(pair, below) ? { least: undefined, proved: below } : leastGap(searching(), below);
      known = { below, searched };
    }
    const { least, proved } = known.searched;
    return least !== undefined && least.gap >= below ? { least: undefined, proved } : known.searched;
  };
  return {
    one,
    other,
    search,
    searchOnly: (below, counts) =>
      leastGap({ ...searching(), pair: { ...pair, pieces: pair.pieces.filter(([piece]) => counts(piece)) } }, below),
    along: (at) => gapAlong(searching())(at),
  };
}
