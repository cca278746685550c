/**
 * Every single failure of a linkage, and what is left after each: whether every plate still closes from everywhere, by how much over
 * friction at the weakest place, and which lever is let go.
 */
import { lostJoint, lostSpring } from '../definition/lost.ts';
import { leversOf } from '../forces/springsReaching.ts';
import { isBehind } from '../kinematics/isBehind.ts';
import type { Joint } from '../kinematics/model.ts';
import { once, oncePer } from '../travel/once.ts';
import type { Travel } from '../travel/travel.ts';
import { assumptionsOf } from './assumptions.ts';
import { freedLever } from './freed.ts';
import { singleFailures, worse, type Failure, type FailureRow, type FreedLever, type Outcome, type PlatesLeft } from './failure.ts';
import { drivenWithout, freedBy } from './leftOver.ts';
import { returnTimes } from './returnTimes.ts';
import { platesReturning } from './returning.ts';
import { heldBySeized } from './seized.ts';

export interface FailureTable {
  /** With nothing failed. */
  readonly whole: FailureRow;
  /** Every single failure. */
  readonly rows: readonly FailureRow[];
  /** What the figures rest on that is not in the file, sentences without a full stop. */
  readonly assumptions: readonly string[];
  /** Why nothing was looked at, a clause; undefined where it was. The rows are empty then. */
  readonly notChecked: string | undefined;
}

/** Worked out once for a solved travel, when first asked for. */
export const failureTable = once((travel: Travel): FailureTable => {
  const { definition } = travel.mechanism;
  const why = whyNothing(travel);
  if (why !== undefined) return { whole: rowOf(undefined, []), rows: [], assumptions: [], notChecked: why };
  const { timeOf, assumed } = returnTimes(travel, {});
  const all = platesReturning(travel).map((left) => (left.outcome === 'stays-open' ? left : { ...left, time: timeOf(left.levers) }));
  const whole = rowOf(undefined, all);
  const rows = singleFailures(definition, movingParts(travel)).map((failure) => rowAfter(travel, failure, whole));
  return { whole, rows, assumptions: [...assumptionsOf(travel, rows), ...assumed], notChecked: undefined };
});

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

function rowAfter(travel: Travel, failure: Failure, whole: FailureRow): FailureRow {
  const { kind, part } = failure;
  if (kind === 'spring-lost') return rowOf(failure, withTimes(travel, platesReturning(travel, part), { without: [part] }));
  const joint = travel.mechanism.joints.find(({ name }) => name === part);
  if (joint === undefined) return rowOf(failure, []);
  return kind === 'cable-seized' ? seizedRow(travel, failure, joint, whole) : lostRow(travel, failure, joint);
}

function lostRow(travel: Travel, failure: Failure, joint: Joint): FailureRow {
  const freed = freedBy(travel, joint, reachedBy(travel, joint));
  const spared = sparedBy(travel, joint);
  const blind = whyFreedBlind(travel, joint);
  const loose = freed === undefined ? [] : platesReturning(freed).map((left) => (blind === undefined ? left : notChecked(left, blind)));
  const lever = travel.mechanism.levers[joint.driven]!;
  const plates = inFileOrder(travel, [...spared, ...loose]);
  return rowOf(failure, withTimes(travel, plates, { without: [failure.part] }), freed && freedLever(freed, lever));
}

function seizedRow(travel: Travel, failure: Failure, joint: Joint, whole: FailureRow): FailureRow {
  if (joint.kind !== 'cable') return rowOf(failure, []);
  const spared = sparedBy(travel, joint);
  const behind = whole.plates.filter(({ levers: [first] }) => {
    const lever = travel.mechanism.leverIndex.get(first ?? '');
    return lever !== undefined && isBehind(travel.mechanism, joint, travel.mechanism.levers[lever]!);
  });
  const plates = [...spared, ...behind.map((left) => heldBySeized(travel, joint, left) ?? left)];
  return rowOf(failure, withTimes(travel, inFileOrder(travel, plates), { seized: [failure.part] }));
}

/** Plates that the pedal still moves without a joint. */
const sparedBy = oncePer((travel: Travel, joint: Joint): readonly PlatesLeft[] => {
  const driven = drivenWithout(travel, joint);
  return driven === undefined ? [] : platesReturning(driven);
});

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

function notChecked({ levers }: PlatesLeft, why: string): PlatesLeft {
  return { levers, outcome: 'not-checked', why, weakest: undefined, heldAt: undefined, time: undefined };
}

/** Times of what comes back; what stays open has none. */
function withTimes(travel: Travel, plates: readonly PlatesLeft[], failed: Parameters<typeof returnTimes>[1]): readonly PlatesLeft[] {
  if (plates.every(({ outcome }) => outcome === 'stays-open')) return plates;
  const { timeOf } = returnTimes(travel, failed);
  return plates.map((left) => (left.outcome === 'stays-open' ? left : { ...left, time: timeOf(left.levers) }));
}

function inFileOrder({ mechanism: { leverIndex } }: Travel, plates: readonly PlatesLeft[]): readonly PlatesLeft[] {
  const orderOf = ({ levers: [first] }: PlatesLeft): number => leverIndex.get(first ?? '') ?? 0;
  return [...plates].sort((one, other) => orderOf(one) - orderOf(other));
}

function rowOf(failure: Failure | undefined, plates: readonly PlatesLeft[], freed?: FreedLever): FailureRow {
  const outcome = plates.length === 0 ? 'not-checked' : plates.map((left) => left.outcome).reduce<Outcome>(worse, 'closes');
  return { failure, outcome, plates, freed };
}
