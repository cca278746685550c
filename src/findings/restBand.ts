/**
 * Where a lever may stand with the foot off. Springs that overcome friction everywhere bring it to its stop. Where friction holds it, it stays
 * where the foot leaves it: anywhere from its stop to the far end of the last stretch that holds it. Which of these it is depends on how the
 * pedal is let go, and no calculation of forces at rest tells it.
 */
import { isGiven } from '../forces/friction/missing.ts';
import { springsReaching } from '../forces/springsReaching.ts';
import type { LeverModel } from '../kinematics/model.ts';
import { leastOf, rangesBelow } from '../travel/extremes.ts';
import { oncePer } from '../travel/once.ts';
import { marginAlong } from './forcesAlong.ts';
import { LOCKS_AT } from './frictionUnits.ts';
import { whyClosingUnknown } from './platesClosing.ts';
import type { Study } from './study.ts';

export type RestBand =
  /** What of friction or springs is not known or not in the file; follows `friction`. */
  | { readonly kind: 'unknown'; readonly why: string }
  /** The springs overcome friction everywhere, at the weakest place by so many times. */
  | { readonly kind: 'closes'; readonly margin: number }
  /** Friction holds it somewhere: openings between which it may stand, rad. */
  | { readonly kind: 'held'; readonly least: number; readonly most: number };

export const restBand = oncePer((study: Study, lever: LeverModel): RestBand => {
  const { mechanism, samples, poseAt } = study.travel;
  if (!isGiven(mechanism.friction)) return { kind: 'unknown', why: 'friction left out' };
  const springs = springsReaching(mechanism, lever.index);
  const why = springs.length === 0 ? 'no spring reaches it' : whyClosingUnknown(study, springs);
  if (why !== undefined) return { kind: 'unknown', why: `friction left out, since ${why}` };
  const figure = marginAlong(study, lever.index);
  const margin = (at: number): number => Math.min(figure(at), PLENTY);
  const least = leastOf(margin, samples);
  if (least === undefined || Number.isNaN(least.value)) return { kind: 'unknown', why: 'friction left out, since its margin is not known' };
  if (least.value > LOCKS_AT) return { kind: 'closes', margin: least.value };
  const opening = (at: number): number => mechanism.senses[lever.index]! * poseAt(at).rotation[lever.index]! + 0;
  // A stretch that is a single place holds it there.
  const ends = [least.travel, ...rangesBelow((at) => margin(at) - LOCKS_AT, samples).flatMap(({ from, to }) => [from, to])];
  return { kind: 'held', least: opening(0), most: Math.max(opening(0), ...ends.map(opening)) };
});

/** Where nothing rubs the margin has no bound. */
const PLENTY = 1e6;
