/** Where the best sound place is off the curve: what lies nearer to it and is still sound. */
import { saying } from '../saying.ts';
import { byMerit, isSound, shortOf, type Court, type TunedAnswer } from './answers.ts';
import { soundBetween } from './between.ts';
import { confined, type Confined } from './confined.ts';
import { heldOn, snapped } from './onSteps.ts';
import type { Progress } from './search.ts';

export interface Looked {
  /** In parts of the bounds. */
  readonly x: Float64Array;
  readonly answer: TunedAnswer;
}

/**
 * From the best sound place, and from what is nearer and not sound, along what stands in the way; and, where that is not come to, from the
 * one towards the other, as far as it stays sound. Adds what it finds.
 * @param enough as in `Effort`
 */
export function* towardsNearer(court: Court, looked: Looked[], enough: number, said: () => Progress): Generator<Progress, void> {
  const best = (): Looked | undefined => [...looked].sort((a, b) => byMerit(a.answer, b.answer))[0];
  const first = best();
  if (first === undefined) return;
  const nearer = isSound(first.answer)
    ? looked.filter(({ answer }) => !isSound(answer) && answer.weighted < first.answer.weighted)
    : looked;
  const starts = [...(isSound(first.answer) ? [first.x] : []), ...leastShort(nearer)];
  for (const x of starts) {
    const found = yield* saying(onSteps(court, x, enough), said);
    if (found !== undefined) looked.push(found);
  }
  const last = best()!;
  if (!isSound(last.answer)) return;
  for (const x of leastShort(nearer)) {
    const answer = yield* saying(soundBetween(court, last.x, x), said);
    if (answer !== undefined) looked.push({ x: last.x, answer });
  }
}

/** Values that have steps first without them, then the others with these on the nearest. */
function* onSteps(court: Court, x: Float64Array, enough: number): Generator<undefined, Confined | undefined> {
  const { free } = court.trial.case;
  const whole = { from: new Float64Array(x.length), to: new Float64Array(x.length).fill(1) };
  const found = yield* confined(court, x, enough, whole);
  if (free.every(({ step }) => step === undefined)) return found;
  const on = snapped(court.trial, found?.x ?? x);
  return yield* confined(court, on, enough, heldOn(free, on));
}

/** Little short of a demand is little beyond where it is kept. */
export function leastShort(looked: readonly Looked[]): readonly Float64Array[] {
  const by = ({ answer }: Looked): number => shortOf(answer) + answer.news.excess;
  return [...looked]
    .sort((a, b) => by(a) - by(b) || a.answer.weighted - b.answer.weighted)
    .slice(0, LEAST_SHORT)
    .map(({ x }) => x);
}

const LEAST_SHORT = 2;
