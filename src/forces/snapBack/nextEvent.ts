/** Where within a step something begins or ends: a gap shuts, a body comes to stand, what pressed or stood does so no longer. */
import type { Stepper } from '../../numeric/dormandPrince.ts';
import { bracketedRoot } from '../../numeric/roots.ts';
import { createGapState, placeAt, SHUT, type Motion } from './motionState.ts';

/**
 * The first event of the last step, a fraction of it; 1 where there is none.
 * @param tried how long the step was, s @param isTurning whether events follow each other at once: what still holds is not asked then
 */
export function firstEvent(motion: Motion, stepper: Stepper, tried: number, isTurning: boolean): number {
  const { dynamics, solver, y, overlaps } = motion;
  const { gaps, bodies } = dynamics;
  const { count } = bodies;
  const { mode } = solver;
  const work = new Float64Array(y.length);
  let first = 1;
  const gapWithin =
    (k: number) =>
    (fraction: number): number => {
      stepper.within(fraction, work);
      placeAt(motion, work);
      dynamics.gapState(k, state);
      return state.g;
    };
  placeAt(motion, stepper.next);
  const ends = gaps.map((_, k) => {
    dynamics.gapState(k, state);
    return state.g;
  });
  gaps.forEach((_, k) => {
    if (overlaps[k]) {
      if (ends[k]! >= 0) first = Math.min(first, crossing(gapWithin(k), 0, 1));
    } else if (!mode.presses[k] && ends[k]! < -SHUT) {
      first = Math.min(
        first,
        crossing((at) => gapWithin(k)(at) + SHUT / 2, 0, 1),
      );
    }
  });
  for (let body = 0; body < count; body++) {
    const before = y[count + body]!;
    const after = stepper.next[count + body]!;
    if (mode.stands[body] || before === 0 || before > 0 === after > 0) continue;
    const turns = crossing(
      (at) => {
        stepper.within(at, work);
        return work[count + body]!;
      },
      0,
      1,
    );
    first = Math.min(first, turns);
  }
  const holdsAt = (fraction: number): boolean => {
    stepper.within(fraction, work);
    return placeAt(motion, work) && solver.solve() && solver.holds();
  };
  if (!motion.agrees || isTurning || holdsAt(first)) return first;
  let low = 0;
  let high = first;
  while ((high - low) * tried > EVENT_TIME) {
    const middle = (low + high) / 2;
    if (holdsAt(middle)) low = middle;
    else high = middle;
  }
  return high < 1 ? high : BEFORE_END;
}

/** Where a function of the last step changes its sign, a fraction of it; `high` where it does not. */
export function crossing(f: (fraction: number) => number, low: number, high: number): number {
  const atLow = f(low);
  const atHigh = f(high);
  if (!(atLow > 0 !== atHigh > 0)) return high;
  return bracketedRoot(f, low, atLow, high, atHigh, 1e-13);
}

/** s: how well it is known when something ceases to press. */
const EVENT_TIME = 1e-10;
/** A fraction of the step that counts as an event at its end. */
const BEFORE_END = 1 - 1e-15;
const state = createGapState();
