/** How long the plates take to close once the foot is off and a part has failed: by snap-back, from full pedal. */
import type { Assumption } from '../forces/snapBack/assumed.ts';
import { snapBackInPieces, type PlateReturn, type SnapBack, type SnapBackOptions, type WhyNever } from '../forces/snapBack/snapBack.ts';
import { leversOf } from '../forces/springsReaching.ts';
import type { Mechanism } from '../kinematics/model.ts';
import type { Travel } from '../travel/travel.ts';
import { fixed } from '../travel/words.ts';
import type { ReturnTime, StopMet } from './failure.ts';
import { listed } from './words.ts';

export interface ReturnTimes {
  /** Of the plates on some levers, that of the last of them. */
  timeOf(levers: readonly string[]): ReturnTime;
  /** Of all plates, s; undefined where some do not close, and where that cannot be computed. */
  readonly seconds: number | undefined;
  /** What the times rest on that is not in the file, in words. What holds of every file is not told again. */
  readonly assumed: readonly string[];
}

/** A part of the motion from one step to the next. */
export function* returnTimes(
  { build, mechanism }: Travel,
  failed: Pick<SnapBackOptions, 'without' | 'seized' | 'restitution' | 'from' | 'tolerance'>,
): Generator<void, ReturnTimes> {
  const answer = yield* snapBackInPieces(build, failed);
  if (answer.method === undefined) {
    const { reason } = answer;
    return { timeOf: () => ({ seconds: undefined, why: reason }), seconds: undefined, assumed: [] };
  }
  const parted = new Set([...(failed.without ?? []), ...(failed.seized ?? [])]);
  return {
    timeOf: (levers) => {
      const own = new Set(levers.map((name) => mechanism.leverIndex.get(name) ?? -1));
      const concerned = concernedBy(mechanism, own, parted);
      const assumed = answer.assumed.filter(({ part }) => part === undefined || concerned.names.has(part));
      return timeOn({ ...answer, assumed: concerned.pedal ? assumed : assumed.filter(({ kind }) => kind !== 'pedal-mass') }, own);
    },
    seconds: answer.time,
    assumed: answer.assumed.filter(({ kind, part }) => kind !== 'left-out' || part !== undefined).map(({ text }) => text),
  };
}

/**
 * What moves with some levers or holds them: all that joints which stand, and springs, join to them, by name; and whether the pedal does.
 * @param parted names of parts that join nothing
 */
function concernedBy(
  { levers, joints, attached, drive }: Mechanism,
  own: ReadonlySet<number>,
  parted: ReadonlySet<string>,
): { readonly names: ReadonlySet<string>; readonly pedal: boolean } {
  const reached = new Set(own);
  const links = [
    ...joints.map(({ name, driver, driven }) => ({ name, ends: driver === undefined ? [driven] : [driver, driven] })),
    ...attached.springs.map((spring) => ({ name: spring.name, ends: leversOf(spring) })),
  ].filter(({ name }) => !parted.has(name));
  for (let before = 0; before < reached.size;) {
    before = reached.size;
    for (const { ends } of links) if (ends.some((lever) => reached.has(lever))) for (const lever of ends) reached.add(lever);
  }
  const touching = links.filter(({ ends }) => ends.some((lever) => reached.has(lever)));
  const names = new Set([...touching.map(({ name }) => name), ...[...reached].flatMap((lever) => levers[lever]?.name ?? [])]);
  return { names, pedal: drive.kind === 'cable' && names.has(joints[drive.joint]!.name) };
}

function timeOn({ plates, followed, assumed }: SnapBack, levers: ReadonlySet<number>): ReturnTime {
  const own = plates.filter(({ lever }) => levers.has(lever));
  const met = stopMet(own);
  const stop = met !== undefined && { stop: met };
  const late = own.find(({ time }) => time === undefined);
  if (late !== undefined) {
    const why = late.why ?? 'still-moving';
    const until = why === 'still-moving' ? ` after ${fixed(followed, 3)} s` : '';
    return { seconds: undefined, why: `${late.name} ${NEVER_CLOSED[why]}${until}`, ...stop };
  }
  const times = own.flatMap(({ time }) => time ?? []);
  if (times.length === 0) return { seconds: undefined, why: 'it carries no plates' };
  const left = leftOutOf(assumed);
  // The mass of a rod follows from its width and length, on every file alike.
  const estimated = assumed.some(({ kind }) => kind === 'lever-inertia' || kind === 'pedal-mass');
  return {
    seconds: Math.max(...times),
    why: undefined,
    ...(left !== undefined && { leftOut: left }),
    ...(estimated && { estimated }),
    ...stop,
  };
}

/** Each lever once, however many sets of plates it carries; undefined where none met its stop. */
function stopMet(plates: readonly PlateReturn[]): StopMet | undefined {
  const byLever = new Map(plates.map((plate) => [plate.lever, plate]));
  const met = [...byLever.values()].flatMap(({ stopSpeed, bounces }) => (stopSpeed === undefined ? [] : { speed: stopSpeed, bounces }));
  if (met.length === 0) return undefined;
  return { speed: Math.max(...met.map(({ speed }) => speed)), bounces: met.reduce((sum, { bounces }) => sum + bounces, 0) };
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
