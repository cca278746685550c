/**
 * What a travel takes over from the one solved before it.
 *
 * From one version of a text to the next most of a linkage stays as it was. Whatever follows from the same figures, bit for bit, is the
 * same: so what was worked out hangs on its causes, and nothing but the time that solving takes tells of it.
 */
import type { Build } from '../kinematics/build.ts';
import type { Pose } from '../kinematics/pose.ts';
import { remembered, type Along, type FigureStore, type Seen } from './along.ts';
import { isSame, leverCauses, type Cause } from './causes.ts';
import type { Places } from './places.ts';

/** What can be known of one travel, and of the one before it as far as it still holds. */
export interface Memory {
  /** What a lever's way follows from; undefined for one that nothing moves. */
  readonly levers: readonly (Cause | undefined)[];
  /** @param key of its own @returns the one that there was before where it is the same */
  cause(key: string, cause: Cause): Cause;
  /** @param key unlike that of any other figure @param cause all that it follows from */
  remember(figure: Along, key: string, cause: Cause | undefined): Along;
  /**
   * Anything that follows from a cause.
   * @param key unlike that of anything else
   * @param samples at which it was worked out; absent where it does not hang on them
   */
  kept<Answer extends object>(key: string, cause: Cause, make: () => Answer, samples?: readonly number[]): Answer;
}

/** One travel as the next one sees it. */
export interface Known {
  /** The travel before; given up once there is a next one, so that what is known never reaches far back. */
  before: Known | undefined;
  readonly causes: Map<string, Cause>;
  readonly seen: Map<string, { readonly cause: Cause; readonly seen: Seen }>;
  readonly answers: Map<string, KeptAnswer>;
  /** By name. */
  readonly leverIndex: ReadonlyMap<string, number>;
  readonly cableIndex: ReadonlyMap<string, number>;
  readonly levers: readonly (Cause | undefined)[];
  /** Causes of all levers in load-path order: what places follow from. */
  readonly path: readonly (Cause | undefined)[];
  /** Indices of the levers that they belong to. */
  readonly driven: readonly number[];
  places: Places | undefined;
  samples: readonly number[] | undefined;
  /** By sample; undefined where it was never asked for. */
  poses: readonly (Pose | undefined)[];
}

interface KeptAnswer {
  readonly cause: Cause;
  readonly samples: readonly number[] | undefined;
  readonly answer: object;
}

/** @param build whose stops are settled */
export function createKnown(build: Build, before: Known | undefined): Known {
  const { mechanism } = build;
  if (before !== undefined) before.before = undefined;
  const causes = new Map<string, Cause>();
  const levers = leverCauses(build, (key, cause) => sameAs(key, cause, causes, before));
  return {
    before,
    causes,
    seen: new Map(),
    answers: new Map(),
    leverIndex: mechanism.leverIndex,
    cableIndex: new Map(mechanism.cables.map(({ name, cable }) => [name, cable])),
    levers,
    path: mechanism.joints.map(({ driven }) => levers[driven]),
    driven: mechanism.joints.map(({ driven }) => driven),
    places: undefined,
    samples: undefined,
    poses: [],
  };
}

export function createMemory(now: Known): Memory {
  const storeOf = (cause: Cause): FigureStore => ({
    before(key) {
      const known = now.seen.get(key) ?? now.before?.seen.get(key);
      return known?.cause === cause ? known.seen : undefined;
    },
    keep: (key, seen) => now.seen.set(key, { cause, seen }),
  });
  return {
    levers: now.levers,
    cause: (key, cause) => sameAs(key, cause, now.causes, now.before),
    remember: (figure, key, cause) => (cause === undefined ? figure : remembered(figure, storeOf(cause), key)),
    kept<Answer extends object>(key: string, cause: Cause, make: () => Answer, samples?: readonly number[]) {
      const known = now.answers.get(key) ?? now.before?.answers.get(key);
      // The key says which kind of answer it is.
      const answer = known?.cause === cause && known.samples === samples ? (known.answer as Answer) : make();
      now.answers.set(key, { cause, samples, answer });
      return answer;
    },
  };
}

function sameAs(key: string, cause: Cause, causes: Map<string, Cause>, before: Known | undefined): Cause {
  const known = causes.get(key) ?? before?.causes.get(key);
  const own = known !== undefined && isSame(known, cause) ? known : cause;
  causes.set(key, own);
  return own;
}

/** Whether the places of one travel are those of another: both follow the same way, and count their levers alike. */
export function hasSamePath(one: Known, other: Known): boolean {
  const isSamePedal = one.causes.get('pedal') === other.causes.get('pedal') && one.levers.length === other.levers.length;
  const isSameRoot = one.levers.every((cause, i) => cause === other.levers[i]);
  return (
    isSamePedal &&
    isSameRoot &&
    one.path.length === other.path.length &&
    one.path.every((cause, i) => cause !== undefined && cause === other.path[i] && one.driven[i] === other.driven[i])
  );
}
