/**
 * What to turn on the built car so that it does what was wanted: which rods that can be adjusted, cables and stops, by how much.
 *
 * Wanted is the curve of `tune` where the file gives one, else what the drawing does: the opening of each shaft with plates. As few as do
 * are turned: the one first that brings the car nearest, then whichever helps most beside it, until one more would hardly help. Where that
 * gives up anything else that the file demands, it is gone through again, and each is turned no farther than the demands allow.
 */
import type { Study } from '../../findings/study.ts';
import { createBuild } from '../../kinematics/createBuild.ts';
import type { Singular } from '../../numeric/singularValues.ts';
import { adjustersOf, type Adjuster, type Turnable } from './adjusters.ts';
import { curvesTold } from './curveTold.ts';
import { createTurnTrial, goalsOf, worstOf, type Goal, type OffCurve, type TurnTrial } from './turnTrial.ts';
import { turnErrors } from './turnError.ts';
import { createScale, type Scale, type SolveAs, type Unmet, type Weighed } from './turnWeighed.ts';
import type { Unknown } from './unknowns.ts';

export interface Turn extends Adjuster {
  /** Longer, slacker or further open is positive, SI. */
  readonly change: number;
  /** Undefined where the file gives no pitch. */
  readonly turns: number | undefined;
  /**
   * One standard error of the change, SI, from those of the dimensions; undefined where it stands at an end of what it can do, or goes as far as
   * the demands let it.
   */
  readonly error: number | undefined;
  /** Whether it stands at an end of what it can do. */
  readonly atEnd: boolean;
}

/** What may be turned, and what that does. */
export interface Plan {
  /** In the order in which they help; empty where the car is as near as it gets. */
  readonly turns: readonly Turn[];
  readonly after: readonly OffCurve[];
  /** Demands that then do not hold; empty where all do, and where `demands` is undefined. */
  readonly unmet: readonly Unmet[];
}

export interface CurveKnown {
  /** Greatest standard error along the curve, SI, turned or not. */
  readonly error: number;
  /** Whether that is as good as none. */
  readonly isClose: boolean;
}

export type Turning =
  | (Plan & {
      readonly kind: 'turn';
      /** Whether the curve is that of `tune`; else that of the drawing. */
      readonly wanted: 'tune' | 'drawing';
      readonly before: readonly OffCurve[];
      /** Whether it is as good as on all of them as found. */
      readonly isOn: boolean;
      /** How closely the readings tell each of these curves. */
      readonly known: readonly CurveKnown[];
      /** Names of what else the file demands, against which each was held; undefined where it was not. */
      readonly demands: readonly string[] | undefined;
      /** What would come nearer to the curve, but gives up a demand; undefined where nothing does. */
      readonly nearer: Plan | undefined;
    })
  /** A sentence without a full stop. */
  | { readonly kind: 'not-checked'; readonly why: string };

export interface AsFound {
  readonly unknowns: readonly Unknown[];
  /** Of the unknowns as the car has them, SI. */
  readonly values: Float64Array;
  /** Of readings and tolerances together: how closely what is told, in scales of the unknowns. */
  readonly posterior: Singular;
  /** By how much standard errors from it are too small; 1 where they are not. */
  readonly tooSmallBy: number;
}

/** Yields as it goes; whoever asks for the next step decides whether to go on. */
export function* whatToTurn(study: Study, found: AsFound, solveAs: SolveAs): Generator<undefined, Turning> {
  const { unknowns, values } = found;
  const { mechanism } = study.travel;
  const car = Float64Array.from(mechanism.nominal);
  unknowns.forEach(({ index }, j) => (car[index] = values[j]!));
  const build = createBuild(mechanism, car);
  const adjusters = adjustersOf(build);
  if (adjusters.length === 0)
    return { kind: 'not-checked', why: 'The file has no rod with `adjust`, no cable and no stop that could be turned' };
  const goals = goalsOf(study);
  if (typeof goals === 'string') return { kind: 'not-checked', why: goals };
  const trial = createTurnTrial(build, goals, adjusters);
  const still = new Float64Array(adjusters.length);
  const before = trial.off(still);
  if (before === undefined) return { kind: 'not-checked', why: 'The car as found has no value somewhere along the wanted curve' };
  const known = yield* curvesTold(build, goals, found);
  if (typeof known === 'string') return { kind: 'not-checked', why: known };

  const bench: Bench = { trial, goals, count: adjusters.length };
  const turned = ({ chosen, change }: Step, errors: readonly number[] = [], weighed?: Weighed): Plan => ({
    turns: chosen.map((k, i) => turnOf(adjusters[k]!, change[k]!, errors[i])),
    after: trial.off(change) ?? before,
    unmet: weighed?.unmet ?? [],
  });
  const first: Step = { chosen: [], change: still, cost: trial.costAt(still) };
  const common = {
    kind: 'turn',
    wanted: goals[0]!.of,
    before,
    isOn: worstOf(before, goals) <= 1,
    known: known.map((error, i) => ({ error, isClose: error <= goals[i]!.enough })),
  } as const;
  const byCurve = yield* nearest(bench, first);
  const errors = yield* errorsOf(trial, adjusters, byCurve, found);
  const indices = unknowns.map(({ index }) => index);
  const scale = yield* createScale(study, build, indices, adjusters, solveAs);
  yield undefined;
  const weighed = scale && (yield* scale.weigh(byCurve.change));
  yield undefined;
  if (scale === undefined || weighed === undefined) return { ...common, ...turned(byCurve, errors), demands: undefined, nearer: undefined };
  const { demands } = scale;
  const isAllRight = byCurve.chosen.length === 0 || (weighed.keepsAll && weighed.givesNothingUp);
  const held = isAllRight ? undefined : yield* nearestHeld(bench, first, scale);
  // What gives nothing up comes first; of that what keeps all that the drawing keeps; of that the nearer one.
  const isHeldBetter = held !== undefined && (!weighed.givesNothingUp || held.weighed.keepsAll);
  if (!isHeldBetter) return { ...common, ...turned(byCurve, errors, weighed), demands, nearer: undefined };
  const isNearer = byCurve.cost < HELPS * held.cost;
  return { ...common, ...turned(held, [], held.weighed), demands, nearer: isNearer ? turned(byCurve, errors, weighed) : undefined };
}

/** One more has to bring the sum of squares below this part of what it was. Common practice, no source. */
const HELPS = 0.8;
/** Of what an adjuster can do. */
const AT_END = 1e-4;

interface Bench {
  readonly trial: TurnTrial;
  readonly goals: readonly Goal[];
  /** Of the adjusters. */
  readonly count: number;
}

interface Step {
  /** Numbers of the adjusters that are turned, in the order in which they help. */
  readonly chosen: readonly number[];
  /** Of each adjuster, SI. */
  readonly change: Float64Array;
  readonly cost: number;
}

interface HeldStep extends Step {
  readonly weighed: Weighed;
}

/** Of each that is turned, in their order; of what stands at its end nothing moves. */
function* errorsOf(
  trial: TurnTrial,
  adjusters: readonly Turnable[],
  { chosen, change }: Step,
  found: AsFound,
): Generator<undefined, readonly number[]> {
  const free = chosen.filter((k) => !isAtEnd(adjusters[k]!, change[k]!));
  if (free.length === 0) return [];
  const byTurn = yield* trial.byAdjuster(change, free);
  const byUnknown = yield* trial.byDimension(change, found.unknowns);
  const errors = turnErrors(byTurn, byUnknown, free.length, found);
  return chosen.map((k) => errors[free.indexOf(k)] ?? NaN);
}

function isAtEnd({ adjuster }: Turnable, change: number): boolean {
  const near = AT_END * (adjuster.to - adjuster.from);
  const end = adjuster.now + change;
  return end <= adjuster.from + near || end >= adjuster.to - near;
}

function turnOf(turnable: Turnable, change: number, error = NaN): Turn {
  const { adjuster } = turnable;
  return {
    ...adjuster,
    change,
    error: Number.isFinite(error) ? error : undefined,
    turns: adjuster.pitch === undefined ? undefined : change / adjuster.pitch,
    atEnd: isAtEnd(turnable, change),
  };
}

/** One more adjuster turned, each that helps; the one first that brings the car nearest. */
function* onward({ trial, count }: Bench, { chosen, change, cost }: Step): Generator<undefined, readonly Step[]> {
  const helping: Step[] = [];
  for (let k = 0; k < count; k++) {
    if (chosen.includes(k)) continue;
    const turned = [...chosen, k];
    const step: Step = { chosen: turned, ...(yield* trial.best(turned, change)) };
    if (step.cost < HELPS * cost) helping.push(step);
  }
  return helping.sort((a, b) => a.cost - b.cost);
}

function isOn({ trial, goals }: Bench, { change }: Step): boolean {
  return worstOf(trial.off(change) ?? [], goals) <= 1;
}

function* nearest(bench: Bench, first: Step): Generator<undefined, Step> {
  let at = first;
  while (!isOn(bench, at)) {
    const [next]: readonly Step[] = yield* onward(bench, at);
    if (next === undefined) break;
    at = next;
  }
  return at;
}

/** The same, each step no farther than gives nothing up; what keeps all demands before what does not. */
function* nearestHeld(bench: Bench, first: Step, scale: Scale): Generator<undefined, HeldStep | undefined> {
  const asFound = yield* scale.weigh(first.change);
  if (asFound === undefined) return undefined;
  let at: HeldStep = { ...first, weighed: asFound };
  while (!isOn(bench, at)) {
    const from = at;
    const reached: HeldStep[] = [];
    for (const step of (yield* onward(bench, from)).slice(0, MOST_TRIED)) {
      const next = yield* asFarAsHeld(bench, from, step, scale);
      if (next !== undefined && next.cost < HELPS * from.cost) reached.push(next);
    }
    const [next] = reached.sort((a, b) => Number(b.weighed.keepsAll) - Number(a.weighed.keepsAll) || a.cost - b.cost);
    if (next === undefined) break;
    at = next;
  }
  return at;
}

/** Of those that help, how many are looked at: each takes some files to be solved. */
const MOST_TRIED = 3;

/** Undefined where nothing of the way can be gone. */
function* asFarAsHeld({ trial }: Bench, from: Step, to: Step, scale: Scale): Generator<undefined, HeldStep | undefined> {
  const at = (share: number): Float64Array => from.change.map((value, k) => value + share * (to.change[k]! - value));
  let held: HeldStep | undefined;
  let [low, high] = [0, 1];
  for (let i = 0, share = 1; i <= HALVINGS; i++, share = (low + high) / 2) {
    const change = at(share);
    const weighed = yield* scale.weigh(change);
    yield undefined;
    if (weighed?.givesNothingUp === true) {
      held = { chosen: to.chosen, change, cost: trial.costAt(change), weighed };
      low = share;
      if (share === 1) break;
    } else high = share;
  }
  return held;
}

/** To a sixty-fourth of the way. */
const HALVINGS = 6;
