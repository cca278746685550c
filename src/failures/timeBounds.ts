/** What the times would be with another restitution, which no file gives, and from less than full pedal: with nothing failed. */
import type { Travel } from '../travel/travel.ts';
import { fixed } from '../travel/words.ts';
import { returnTimes } from './returnTimes.ts';

/** Sentences without a full stop; none where the plates have no time. @param seconds of the plates as told */
export function* timeBounds(travel: Travel, seconds: number | undefined): Generator<void, readonly string[]> {
  if (seconds === undefined) return [];
  const [least, most] = [yield* secondsOf({ restitution: LEAST }), yield* secondsOf({ restitution: MOST })];
  const earlier: (string | undefined)[] = [];
  let slowest: number | undefined = 0;
  for (const from of RELEASES) {
    const time: number | undefined = yield* secondsOf({ from });
    slowest = time === undefined || slowest === undefined ? undefined : Math.max(slowest, time);
    earlier.push(`${fixed(100 * from, 0)} %`);
  }
  const told = (time: number | undefined): string => (time === undefined ? 'not closed' : `closed in ${fixed(time, 3)} s`);
  return [
    `With every part it is ${told(seconds)}; where stops throw back with ${LEAST} of the speed ${told(least)}, with ${MOST} ${told(most)}`,
    `Times are from full pedal; released at ${earlier.slice(0, -1).join(', ')} or ${earlier.at(-1)} of it, with every part it is ${told(slowest)}${slowest === undefined ? ' from each' : ' at most'}`,
  ];

  function* secondsOf(options: Parameters<typeof returnTimes>[1]): Generator<void, number | undefined> {
    return (yield* returnTimes(travel, options)).seconds;
  }
}

/** A stop that takes all, and one of hard steel without any oil: common practice, no source. */
const LEAST = 0;
const MOST = 0.8;
/** Of the pedal's travel. */
const RELEASES = [0.75, 0.5, 0.25] as const;
