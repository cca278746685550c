/** How long the plates take to close once the foot is off and a part has failed: by snap-back, from full pedal. */
import type { Assumption } from '../forces/snapBack/assumed.ts';
import { snapBack, type SnapBack, type SnapBackOptions, type WhyNever } from '../forces/snapBack/snapBack.ts';
import type { Travel } from '../travel/travel.ts';
import { fixed } from '../travel/words.ts';
import type { ReturnTime } from './failure.ts';
import { listed } from './words.ts';

export interface ReturnTimes {
  /** Of the plates on some levers, that of the last of them. */
  timeOf(levers: readonly string[]): ReturnTime;
  /** What the times rest on that is not in the file, in words. */
  readonly assumed: readonly string[];
}

export function returnTimes({ build, mechanism }: Travel, failed: Pick<SnapBackOptions, 'without' | 'seized'>): ReturnTimes {
  const answer = snapBack(build, failed);
  if (answer.method === undefined) return { timeOf: () => ({ seconds: undefined, why: answer.reason }), assumed: [] };
  return {
    timeOf: (levers) => timeOn(answer, new Set(levers.map((name) => mechanism.leverIndex.get(name) ?? -1))),
    assumed: answer.assumed.map(({ text }) => text),
  };
}

function timeOn({ plates, followed, assumed }: SnapBack, levers: ReadonlySet<number>): ReturnTime {
  const own = plates.filter(({ lever }) => levers.has(lever));
  const late = own.find(({ time }) => time === undefined);
  if (late !== undefined) {
    const why = late.why ?? 'still-moving';
    const until = why === 'still-moving' ? ` after ${fixed(followed, 3)} s` : '';
    return { seconds: undefined, why: `${late.name} ${NEVER_CLOSED[why]}${until}` };
  }
  const times = own.flatMap(({ time }) => time ?? []);
  if (times.length === 0) return { seconds: undefined, why: 'it carries no plates' };
  const left = leftOutOf(assumed);
  const estimated = assumed.some(({ kind }) => kind.endsWith('-inertia') || kind.endsWith('-mass'));
  return { seconds: Math.max(...times), why: undefined, ...(left !== undefined && { leftOut: left }), ...(estimated && { estimated }) };
}

/** What would make it slower and is left out, by the parts that it is of; undefined where nothing is. */
function leftOutOf(assumed: readonly Assumption[]): string | undefined {
  // What no linkage is asked for, such as the mass of a cable, is told among the assumptions alone.
  const left = assumed.filter(({ kind, part }) => kind === 'friction' || (kind === 'left-out' && part !== undefined));
  const of = (kind: Assumption['kind'], what: string): readonly string[] => {
    const parts = left.flatMap((each) => (each.kind === kind ? (each.part ?? 'the linkage') : []));
    return parts.length === 0 ? [] : [`${what} of ${listed([...new Set(parts)])}`];
  };
  const pedal = assumed.some(({ kind }) => kind === 'pedal-mass')
    ? ['friction and springs of the pedal, which the file does not describe']
    : [];
  const all = [...of('friction', 'friction'), ...of('left-out', 'mass'), ...pedal];
  return all.length === 0 ? undefined : all.join(', ');
}

/** What plates do that do not close, a clause after their name. */
export const NEVER_CLOSED: Readonly<Record<WhyNever, string>> = {
  sticks: 'stands still before it is closed',
  jams: 'jams before it is closed',
  'still-moving': 'is not yet closed for good',
};
