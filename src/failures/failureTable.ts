/**
 * Every single failure of a linkage, and what is left after each: whether every plate still closes from everywhere, by how much over
 * friction at the weakest place, and which lever is let go.
 */
import { lostJoint, lostSpring } from '../definition/lost.ts';
import { leversOf } from '../forces/springsReaching.ts';
import { isBehind } from '../kinematics/isBehind.ts';
import type { Joint } from '../kinematics/model.ts';
import { later, once, oncePer } from '../travel/once.ts';
import type { Travel } from '../travel/travel.ts';
import { assumptionsOf } from './assumptions.ts';
import { freedLever } from './freed.ts';
import {
  singleFailures,
  worse,
  type Failure,
  type FailureRow,
  type FreedLever,
  type Outcome,
  type PlatesClosing,
  type PlatesLeft,
} from './failure.ts';
import { inPieces, type InPieces } from './inPieces.ts';
import { drivenWithout, freedBy } from './leftOver.ts';
import { failedBy, fromPartPedal, type PartPedal } from './partPedal.ts';
import { returnTimes, type ReturnTimes } from './returnTimes.ts';
import { platesReturning } from './returning.ts';
import { heldBySeized } from './seized.ts';
import { timeBounds } from './timeBounds.ts';

/** Each row is worked out when it is first asked for, and each time apart from its row: faces go by `work` where that must not hold them up. */
export interface FailureTable {
  /** Every single failure, known at once; empty where nothing is looked at. */
  readonly failures: readonly Failure[];
  /** With nothing failed. */
  readonly whole: FailureRow;
  /** Of each failure, in their order. */
  readonly rows: readonly FailureRow[];
  /** What the figures rest on that is not in the file, sentences without a full stop. Asks for all times. */
  readonly assumptions: readonly string[];
  /** From less than full pedal, of all rows whose plates have times from there; with nothing failed first. Asks for all times. */
  readonly fromPart: readonly PartPedal[];
  /** Why nothing was looked at, a clause; undefined where it was. The rows are empty then. */
  readonly notChecked: string | undefined;
  /**
   * Works out what is not known yet, a small piece from one step to the next: whether plates close, row by row, and with `times` how fast,
   * row by row again. Each step says how many of these are done. Whoever leaves off loses nothing: what was worked out is kept.
   */
  work(wanted: 'closing' | 'times'): Generator<Progress, void>;
}

/** Rows and times: those done, and all. */
export interface Progress {
  readonly done: number;
  readonly all: number;
}

/** Made once for a solved travel, and filled as it is asked. */
export const failureTable = once((travel: Travel): FailureTable => {
  const why = whyNothing(travel);
  const failures = why === undefined ? singleFailures(travel.mechanism.definition, movingParts(travel)) : [];
  const closing = inPieces(function* () {
    return why === undefined ? yield* platesReturning(travel) : [];
  });
  const whole = rowInPieces(
    undefined,
    function* () {
      return { plates: yield* closing.go() };
    },
    timesOf(travel, undefined),
  );
  const rows = failures.map((failure) => rowInPieces(failure, () => leftAfter(travel, failure, closing), timesOf(travel, failure)));
  const all = later(() => rows.map(({ row }) => row.get()));
  const fromPart = inPieces(function* (): Generator<void, readonly PartPedal[]> {
    const found: PartPedal[] = [];
    for (const { row, times } of why === undefined ? [whole, ...rows] : []) {
      const known = yield* row.go();
      if (!hasTimes(known)) continue;
      yield* times.go();
      const part = yield* fromPartPedal(travel, known);
      if (part !== undefined) found.push(part);
    }
    return found;
  });
  const assumptions = inPieces(function* (): Generator<void, readonly string[]> {
    if (why !== undefined) return [];
    const { seconds, assumed } = yield* whole.times.go();
    return [...assumptionsOf(travel, failures), ...(yield* timeBounds(travel, seconds, yield* fromPart.go())), ...assumed];
  });
  return {
    failures,
    get whole() {
      return whole.row.get();
    },
    get rows() {
      return all();
    },
    get assumptions() {
      return assumptions.get();
    },
    get fromPart() {
      return fromPart.get();
    },
    notChecked: why,
    *work(wanted) {
      const count = rows.length + 1;
      const pieces = wanted === 'times' ? 2 * count : count;
      for (const [number, { row, times }] of [whole, ...rows, ...rows, whole].slice(0, pieces).entries()) {
        // What all rest on asks for the times from less than full pedal, of all rows: last.
        const more = (): Iterable<void> => (times === whole.times ? assumptions.go() : hasTimes(row.get()) ? times.go() : []);
        const steps = number < count ? row.go() : more();
        for (const _ of steps) yield { done: number, all: pieces };
        yield { done: number + 1, all: pieces };
      }
    },
  };
});

interface RowInPieces {
  readonly row: InPieces<FailureRow>;
  /** Of its plates; those that stay open have none, and are not asked for any. */
  readonly times: InPieces<ReturnTimes>;
}

interface Left {
  readonly plates: readonly PlatesClosing[];
  readonly freed?: FreedLever | undefined;
}

function rowInPieces(failure: Failure | undefined, left: () => Generator<void, Left>, times: InPieces<ReturnTimes>): RowInPieces {
  const row = inPieces(function* (): Generator<void, FailureRow> {
    const { plates, freed } = yield* left();
    const outcome = plates.length === 0 ? 'not-checked' : plates.map((each) => each.outcome).reduce<Outcome>(worse, 'closes');
    return { failure, outcome, plates: plates.map((each) => withTime(each, times)), freed };
  });
  return { row, times };
}

function withTime(left: PlatesClosing, times: InPieces<ReturnTimes>): PlatesLeft {
  const time = later(() => (left.outcome === 'stays-open' ? undefined : times.get().timeOf(left.levers)));
  return {
    ...left,
    get time() {
      return time();
    },
  };
}

function hasTimes({ plates }: FailureRow): boolean {
  return plates.some(({ outcome }) => outcome !== 'stays-open');
}

function timesOf(travel: Travel, failure: Failure | undefined): InPieces<ReturnTimes> {
  return inPieces(() => returnTimes(travel, failedBy(failure)));
}

/** What could not be read may be what closes, or what joins. */
function whyNothing({ mechanism }: Travel): string | undefined {
  const { definition } = mechanism;
  const lost = lostSpring(definition) ?? lostJoint(definition);
  if (lost !== undefined) return `\`${lost.path}\` is not understood`;
  const driven = mechanism.levers.filter(({ group, plates }) => group >= 0 && plates.length > 0);
  if (driven.length > 0) return undefined;
  return definition.plates.length === 0 ? 'the file describes no plates' : 'the pedal moves no plates';
}

/** Joints of the load path, and springs of which the pedal moves an end. */
function movingParts({ mechanism: { joints, attached, levers } }: Travel): ReadonlySet<string> {
  const springs = attached.springs.filter((spring) => leversOf(spring).some((lever) => levers[lever]!.group >= 0));
  return new Set([...joints, ...springs].map(({ name }) => name));
}

/** @param whole what closes the plates with nothing failed */
function* leftAfter(travel: Travel, { kind, part }: Failure, whole: InPieces<readonly PlatesClosing[]>): Generator<void, Left> {
  if (kind === 'spring-lost') return { plates: yield* platesReturning(travel, part) };
  const joint = travel.mechanism.joints.find(({ name }) => name === part);
  if (joint === undefined) return { plates: [] };
  return kind === 'cable-seized' ? yield* leftBySeized(travel, joint, whole) : yield* leftWithout(travel, joint);
}

function* leftWithout(travel: Travel, joint: Joint): Generator<void, Left> {
  const freed = freedBy(travel, joint, reachedBy(travel, joint));
  yield;
  const spared = yield* sparedBy(travel, joint).go();
  const blind = whyFreedBlind(travel, joint);
  const loose = freed === undefined ? [] : yield* platesReturning(freed);
  const left = blind === undefined ? loose : loose.map((each) => notChecked(each, blind));
  const lever = travel.mechanism.levers[joint.driven]!;
  return { plates: inFileOrder(travel, [...spared, ...left]), freed: freed && freedLever(freed, lever) };
}

function* leftBySeized(travel: Travel, joint: Joint, whole: InPieces<readonly PlatesClosing[]>): Generator<void, Left> {
  if (joint.kind !== 'cable') return { plates: [] };
  const spared = yield* sparedBy(travel, joint).go();
  const all = yield* whole.go();
  const behind = all.filter(({ levers: [first] }) => {
    const lever = travel.mechanism.leverIndex.get(first ?? '');
    return lever !== undefined && isBehind(travel.mechanism, joint, travel.mechanism.levers[lever]!);
  });
  return { plates: inFileOrder(travel, [...spared, ...behind.map((left) => heldBySeized(travel, joint, left) ?? left)]) };
}

/** Plates that the pedal still moves without a joint. */
const sparedBy = oncePer((travel: Travel, joint: Joint): InPieces<readonly PlatesClosing[]> =>
  inPieces(function* () {
    const driven = drivenWithout(travel, joint);
    yield;
    return driven === undefined ? [] : yield* platesReturning(driven);
  }),
);

/** Greatest opening of a joint's driven lever over the travel, rad. */
function reachedBy({ mechanism, samples, poseAt }: Travel, { driven }: Joint): number {
  const openings = samples
    .map((at) => mechanism.senses[driven]! * poseAt(at).rotation[driven]!)
    .filter((opening) => !Number.isNaN(opening));
  return Math.max(0, ...openings);
}

/** Why what a joint lets go is not looked at; undefined where it is. */
function whyFreedBlind({ mechanism, samples, poseAt }: Travel, joint: Joint): string | undefined {
  const { levers, senses, attached } = mechanism;
  const { driven } = joint;
  const openings = samples.map((at) => senses[driven]! * poseAt(at).rotation[driven]!);
  if (openings.some((opening) => opening < -TURNS_BACK)) return `${levers[driven]!.name} turns beyond where it is drawn`;
  if (openings.every((opening) => Number.isNaN(opening))) return `${levers[driven]!.name} cannot be assembled`;
  const across = attached.springs.find((spring) => {
    const sides = leversOf(spring).map((lever) => isBehind(mechanism, joint, levers[lever]!));
    return sides.includes(true) && sides.includes(false);
  });
  return across && `the spring ${across.name} joins what is let go to what is not`;
}

/** rad; less is rounding. */
const TURNS_BACK = 1e-9;

function notChecked({ levers }: PlatesClosing, why: string): PlatesClosing {
  return { levers, outcome: 'not-checked', why, weakest: undefined, heldAt: undefined };
}

function inFileOrder({ mechanism: { leverIndex } }: Travel, plates: readonly PlatesClosing[]): readonly PlatesClosing[] {
  const orderOf = ({ levers: [first] }: PlatesClosing): number => leverIndex.get(first ?? '') ?? 0;
  return [...plates].sort((one, other) => orderOf(one) - orderOf(other));
}
