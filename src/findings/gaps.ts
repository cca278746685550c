/** Gaps between parts and to keep-outs, as findings and facts speak of them. */
import type { Body } from '../clearance/bodies.ts';
import type { Gap } from '../clearance/clearance.ts';
import type { LeastGap } from '../clearance/leastGap.ts';
import type { Piece } from '../clearance/piece.ts';
import type { Value } from '../definition/definition.ts';
import { following, rangesBelow } from '../travel/extremes.ts';
import { merge } from '../travel/places.ts';
import type { Mend, TravelRange } from './finding.ts';
import { LENGTH_MARGIN } from './margin.ts';
import { writeBy, type Study } from './study.ts';
import { millimetres, percent } from './words.ts';

/** m; what comes nearer touches. Rounding takes less. */
export const TOUCHES = 1e-9;

/** E.g. `the arm crank.out`. */
export function pieceWords(piece: Piece): string {
  switch (piece.kind) {
    case 'arm':
    case 'drum':
      return `the ${piece.kind} ${piece.name}`;
    case 'outline':
    case 'inner':
      return `the ${piece.kind} of ${piece.name}`;
    case 'rod':
    case 'spring':
    case 'keep-out':
      return piece.name;
  }
}

/** E.g. `The arm crank.out reaches 3.2 mm into bonnet at 100 % of pedal travel`. */
export function touchWords({ gap, travel, pieces: [one, other] }: LeastGap): string {
  const words = pieceWords(one);
  const what = words.startsWith('the ') ? `T${words.slice(1)}` : words;
  const reaches = gap < -SHOWN ? `reaches ${millimetres(-gap)} into` : 'touches';
  return `${what} ${reaches} ${pieceWords(other)} at ${percent(travel)} of pedal travel`;
}

/** m; half of the last figure that is written. */
const SHOWN = 5e-6;

/**
 * Where along the pedal two bodies are nearer than `limit`, m. The stretch of the least gap is there always; of a further one that lies between
 * two samples nothing is told.
 */
export function rangesNearer({ travel }: Study, { along }: Gap, { travel: worst }: LeastGap, limit: number): readonly TravelRange[] {
  return rangesBelow(
    following(along, (gap) => gap - limit),
    merge(travel.samples, [worst]),
  );
}

/**
 * A narrower part, where it is its breadth alone that comes too near: half of it at least is to be left (common practice, no source), for
 * beyond that it is another part.
 * @param asked gap that there should be, m
 */
export function narrower(gap: Gap, { pieces: [piece], gap: least }: LeastGap, asked: number): { readonly mend?: Mend } {
  const { one } = gap;
  const width: Value | undefined = one.kind === 'lever' || one.kind === 'rod' ? one.source.width : undefined;
  if (width === undefined || (piece.kind !== 'arm' && piece.kind !== 'rod')) return {};
  const target = width.nominal - 2 * (asked - least) - LENGTH_MARGIN;
  if (target < LEFT * width.nominal) return {};
  const others = gap.searchOnly(asked, ({ kind }) => kind !== 'arm' && kind !== 'rod');
  return others.least === undefined ? writeBy(width, target) : {};
}

/** Of the width. */
const LEFT = 0.5;

/** The name in the text of what a body is. */
export const spanOf = ({ source }: Body) => source.nameSpan;
