/** How all levers move when the foot comes off at full pedal, for playing in slow motion. */
import { NEVER_CLOSED } from '../failures/returnTimes.ts';
import { snapBack, type PlateReturn, type SnapBackOptions, type Trace } from '../forces/snapBack/snapBack.ts';
import { figureText } from '../outputs/figure.ts';
import { secondsText } from '../outputs/failureWords.ts';
import { printable } from '../outputs/paint.ts';
import { MOST_MOMENTS, type FailureKey, type ReturnTrace } from '../protocol/returns.ts';
import type { Answers } from '../solve.ts';
import { drawableOf } from './drawable.ts';

/**
 * @param failure what fails as the foot comes off; undefined where nothing does
 * @returns `why` where there is nothing to play: a sentence without a full stop. Never throws.
 */
export function traceReturn(answers: Answers, failure: FailureKey | undefined): ReturnTrace | { readonly why: string } {
  const drawable = drawableOf(answers);
  if (drawable?.travel === undefined) return { why: 'The linkage is not solved' };
  const { build } = drawable.travel;
  const motion = snapBack(build, optionsOf(failure));
  if ('reason' in motion) return { why: `It cannot be computed: ${printable(motion.reason.replaceAll('`', ''))}` };
  const { plates, time } = motion;
  const trace = rising(motion.trace);
  const outcome = time === undefined ? plates.map(staysWords).filter((words) => words !== '') : [`closed after ${secondsText(time)}`];
  if (trace.times.length < 2) return { why: `Nothing moves as the foot comes off: ${printable(outcome.join('; '))}` };
  const moments = fewer(trace, MOST_MOMENTS);
  const at = (figures: Float64Array): Float64Array => Float64Array.from(moments, (moment) => figures[moment]!);
  const shafts = plates.map(({ lever }) => drawable.placeOf(lever)).filter((place) => place !== undefined);
  return {
    times: at(trace.times),
    rotations: drawable.levers.map((lever) => at(trace.rotations[lever]!)),
    shafts: [...new Set(shafts)],
    closed: time,
    outcome: printable(outcome.join('; ')),
  };
}

function optionsOf(failure: FailureKey | undefined): SnapBackOptions {
  if (failure === undefined) return {};
  return failure.kind === 'cable-seized' ? { seized: [failure.part] } : { without: [failure.part] };
}

/** Empty where it closes. */
function staysWords({ name, why, opening }: PlateReturn): string {
  return why === undefined ? '' : `${name} ${NEVER_CLOSED[why]}, at ${figureText({ value: opening, dimension: 'angle' })}`;
}

/** Each moment once: two events may come at the same. */
function rising({ times, rotations }: Trace): Trace {
  const isLast = (_: number, i: number): boolean => i === times.length - 1 || times[i + 1]! > times[i]!;
  return { times: times.filter(isLast), rotations: rotations.map((turned) => turned.filter(isLast)) };
}

/**
 * So many moments of a motion that straight lines between them stay as near to it as they can: the first and the last, and again and again
 * the one that a line between its neighbours misses by most (Ramer 1972; Douglas and Peucker 1973).
 *
 * @returns indices, rising; all where there are no more than `most`
 */
export function fewer({ times, rotations }: Trace, most: number): readonly number[] {
  const count = times.length;
  if (count <= most) return Array.from({ length: count }, (_, i) => i);
  const kept = new Set([0, count - 1]);
  const open = [farthest(0, count - 1)];
  while (kept.size < most) {
    let worst = 0;
    for (let i = 1; i < open.length; i++) if (open[i]!.miss > open[worst]!.miss) worst = i;
    const [{ from, at, to }] = open.splice(worst, 1) as [Stretch];
    if (at < 0) break;
    kept.add(at);
    open.push(farthest(from, at), farthest(at, to));
  }
  return [...kept].sort((one, other) => one - other);

  function farthest(from: number, to: number): Stretch {
    let [at, miss] = [-1, -1];
    for (let i = from + 1; i < to; i++) {
      const share = (times[i]! - times[from]!) / (times[to]! - times[from]!);
      let most = 0;
      for (const turned of rotations) most = Math.max(most, Math.abs(turned[i]! - turned[from]! - share * (turned[to]! - turned[from]!)));
      if (most > miss) [at, miss] = [i, most];
    }
    return { from, at, to, miss };
  }
}

/** Moments from one that is kept to the next, and between them the one that a straight line misses by most, rad; -1 where there is none. */
interface Stretch {
  readonly from: number;
  readonly at: number;
  readonly to: number;
  readonly miss: number;
}
