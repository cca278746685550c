/** How long plates take to close where the foot comes off at less than full pedal, with nothing failed and after each single failure. */
import type { Travel } from '../travel/travel.ts';
import type { Failure, FailureRow } from './failure.ts';
import { returnTimes } from './returnTimes.ts';

/** Of the pedal's travel. */
export const RELEASES = [0.75, 0.5, 0.25] as const;

/** As `SnapBackOptions.tolerance`: these times are told to a thousandth of a second, and there are many of them. */
export const ROUGH = 1e-6;

export interface PartPedal {
  /** Undefined where nothing has failed. */
  readonly failure: Failure | undefined;
  /** The slowest of all releases and plates, s; undefined where plates that close from full pedal were not seen to close from one of them. */
  readonly seconds: number | undefined;
}

/** What is lost or seized after a failure, as snap-back has it. */
export function failedBy(failure: Failure | undefined): Pick<Parameters<typeof returnTimes>[1], 'without' | 'seized'> {
  if (failure === undefined) return {};
  return failure.kind === 'cable-seized' ? { seized: [failure.part] } : { without: [failure.part] };
}

/** Of the plates of a row that do not stay open; undefined where none has a time from full pedal. A part of a motion from one step to the next. */
export function* fromPartPedal(travel: Travel, { failure, plates }: FailureRow): Generator<void, PartPedal | undefined> {
  const asked = plates.filter(({ time }) => time?.seconds !== undefined);
  if (asked.length === 0) return undefined;
  let seconds: number | undefined = 0;
  for (const from of RELEASES) {
    const times = yield* returnTimes(travel, { ...failedBy(failure), from, tolerance: ROUGH });
    for (const { levers } of asked) {
      const each: number | undefined = times.timeOf(levers).seconds;
      seconds = each === undefined || seconds === undefined ? undefined : Math.max(seconds, each);
    }
  }
  return { failure, seconds };
}
