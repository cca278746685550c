/** The nearest to a better place that is still sound, on the line to it from a place that is. */
import { answerOf, isSound, type Court, type TunedAnswer } from './answers.ts';
import { snapped } from './onSteps.ts';

/**
 * By halves; undefined where nothing between them is sound. Yields as files are solved.
 * @param from a sound place, in parts of the bounds @param to one nearer to the curve that is not sound
 */
export function* soundBetween(court: Court, from: Float64Array, to: Float64Array): Generator<undefined, TunedAnswer | undefined> {
  let [low, high] = [0, 1];
  let last: TunedAnswer | undefined;
  for (let i = 0; i < HALVES; i++) {
    const middle = (low + high) / 2;
    const x = from.map((value, j) => value + middle * (to[j]! - value));
    const answer = yield* answerOf(court, snapped(court.trial, x));
    const isKept = Number.isFinite(answer.error) && isSound(answer);
    if (isKept) last = answer;
    if (isKept) low = middle;
    else high = middle;
  }
  return last;
}

const HALVES = 7;
