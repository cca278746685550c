/** What the times would be with another restitution, which no file gives, with nothing failed; and from less than full pedal. */
import type { Travel } from '../travel/travel.ts';
import { fixed } from '../travel/words.ts';
import { RELEASES, ROUGH, type PartPedal } from './partPedal.ts';
import { returnTimes } from './returnTimes.ts';
import { listed } from './words.ts';

/**
 * Sentences without a full stop; none where the plates have no time.
 * @param seconds of the plates as told, with nothing failed @param earlier of the rows that have times
 */
export function* timeBounds(
  travel: Travel,
  seconds: number | undefined,
  earlier: readonly PartPedal[],
): Generator<void, readonly string[]> {
  const told = (time: number | undefined): string => (time === undefined ? 'not closed' : `closed in ${fixed(time, 3)} s`);
  const bounds: string[] = [];
  if (seconds !== undefined) {
    const [least, most] = [yield* secondsOf(LEAST), yield* secondsOf(MOST)];
    bounds.push(
      `With every part it is ${told(seconds)}; where stops throw back with ${LEAST} of the speed ${told(least)}, with ${MOST} ${told(most)}`,
    );
  }
  const whole = earlier.find(({ failure }) => failure === undefined);
  const after = earlier.flatMap(({ failure, seconds: time }) =>
    failure === undefined || failure.kind === 'cable-seized' ? [] : [{ part: failure.part, time }],
  );
  const never = after.filter(({ time }) => time === undefined).map(({ part }) => part);
  const slowest = after.reduce<(typeof after)[number] | undefined>(
    (worst, each) => (each.time !== undefined && each.time > (worst?.time ?? 0) ? each : worst),
    undefined,
  );
  const clauses = [
    ...(whole === undefined
      ? []
      : [`with every part it is ${told(whole.seconds)}${whole.seconds === undefined ? ' from each' : ' at most'}`]),
    ...(slowest === undefined ? [] : [`with one part lost ${told(slowest.time)} at most, without ${slowest.part}`]),
    ...(never.length === 0 ? [] : [`not closed from each without ${listed(never)}`]),
  ];
  if (clauses.length > 0) bounds.push(`Times are from full pedal; released at ${PLACES} of it, ${clauses.join('; ')}`);
  return bounds;

  function* secondsOf(restitution: number): Generator<void, number | undefined> {
    return (yield* returnTimes(travel, { restitution, tolerance: ROUGH })).seconds;
  }
}

const percents = RELEASES.map((from) => `${fixed(100 * from, 0)} %`);
const PLACES = `${percents.slice(0, -1).join(', ')} or ${percents.at(-1)}`;

/** A stop that takes all, and one of hard steel without any oil: common practice, no source. */
const LEAST = 0;
const MOST = 0.8;
