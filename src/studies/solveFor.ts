/**
 * The value of one dimension at which an outcome of the solved linkage has a wanted value: all of them within bounds.
 *
 * The outcome is taken at some values between the bounds; wherever it passes the target between two neighbours the crossing
 * is refined, and wherever it comes near and turns away its turning place is refined and looked at. It comes near where it could reach
 * the target, were it convex there: a convex function lies above the lines through its neighbours. Where it stays on the target, as
 * an opening does on its stop, the ends of that stretch are the roots. Where the linkage cannot be solved there is no outcome and no
 * crossing; the edge of such a stretch is not one. Two crossings closer together than a step, on one side of no turning place that
 * the steps show, can be missed.
 */
import type { ColumnOutcome, Outcome } from '../findings/finding.ts';
import { createFriction } from '../forces/friction/statics.ts';
import { createBuild, putDimensions } from '../kinematics/createBuild.ts';
import type { Mechanism } from '../kinematics/model.ts';
import { bracketedRoot } from '../numeric/roots.ts';
import type { Column } from '../table/column.ts';
import { columnsOf } from '../table/columns.ts';
import { greatestOf, leastOf } from '../travel/extremes.ts';
import { travelOf, type Travel } from '../travel/travel.ts';

export interface Question {
  /** Path of a dimension, e.g. `rods.link_a.length`; with the outcome `itself`, of any plain figure of the file. */
  readonly unknown: string;
  readonly outcome: Outcome;
  /** SI; `number` columns in percent are fractions. */
  readonly target: number;
  /** Least and greatest value of the unknown, SI: a length as a whole length, also where the file leaves it as drawn. */
  readonly from: number;
  readonly to: number;
  /** Values between the bounds at which the outcome is first taken, 2 at least; 129 where absent. */
  readonly starts?: number;
}

export type Solutions =
  | {
      readonly kind: 'solved';
      /** Values of the unknown, SI, rising; each with the outcome that it gives. Empty where there is none within the bounds. */
      readonly roots: readonly { readonly value: number; readonly outcome: number }[];
      /** Outcome nearest to the target that was met on the way, for saying how near it comes; undefined where none was solved. */
      readonly nearest: { readonly value: number; readonly outcome: number } | undefined;
    }
  | { readonly kind: 'unknown-dimension' | 'unknown-column' | 'empty-bounds' }
  /** Only where {@link Pieces} say so. */
  | { readonly kind: 'stopped' };

/** A search that is done piece by piece. Each piece is begun anew, with what is known answered from memory. */
export interface Pieces {
  /** Outcomes by the value of the unknown, SI; the search adds to them. */
  readonly known: Map<number, number>;
  /** Asked before each outcome that is not known yet: whether the piece ends there. */
  shouldStop(): boolean;
}

/** @param pieces where absent, it is searched to the end */
export function solveFor(mechanism: Mechanism, question: Question, pieces?: Pieces): Solutions {
  const { outcome } = question;
  if (outcome.kind === 'itself') return question.from < question.to ? writtenAs(question) : { kind: 'empty-bounds' };
  const dimension = mechanism.dimensions.find(({ path }) => path === question.unknown);
  if (dimension === undefined) return { kind: 'unknown-dimension' };
  if (!(question.from < question.to)) return { kind: 'empty-bounds' };
  const build = createBuild(mechanism);
  const columns = columnsOf(travelOf(build));
  if (!columns.some(({ name }) => name === outcome.column)) return { kind: 'unknown-column' };
  const offset = dimension.kind === 'as-drawn' ? drawnLength(mechanism, dimension.index) : 0;
  const values = Float64Array.from(mechanism.nominal);

  const outcomeAt = (value: number): number => {
    const known = pieces?.known.get(value);
    if (known !== undefined) return known;
    if (pieces?.shouldStop() === true) throw STOPPED;
    values[dimension.index] = value - offset;
    putDimensions(build, values);
    const travel = travelOf(build);
    const found = outcomeOf(travel, columnsOf(travel), outcome);
    pieces?.known.set(value, found);
    return found;
  };
  try {
    return { kind: 'solved', ...crossings(outcomeAt, question) };
  } catch (error) {
    if (error === STOPPED) return { kind: 'stopped' };
    throw error;
  }
}

/** Leaves a search from within; it goes no further than `solveFor`. */
const STOPPED = new Error('The piece ends');

/** An outcome of a solved travel, SI; NaN where it has none. */
export function outcomeOf(travel: Travel, columns: readonly Column[], outcome: ColumnOutcome): number {
  const column = columns.find(({ name }) => name === outcome.column);
  if (column === undefined) return NaN;
  const read = outcome.kind !== 'at' && outcome.without !== undefined ? marginWithout(travel, column, outcome.without) : column.read;
  const figure = (at: number): number => read(travel.build, travel.poseAt(at));
  switch (outcome.kind) {
    case 'at':
      return figure(outcome.travel);
    case 'least':
      return leastOf(figure, travel.samples)?.value ?? NaN;
    case 'greatest':
      return greatestOf(figure, travel.samples)?.value ?? NaN;
  }
}

/** A lever's closing torque over friction with a spring off; what nothing rubs has a margin without bound. */
function marginWithout({ build, mechanism }: Travel, { owner }: Column, without: string): Column['read'] {
  const lever = mechanism.leverIndex.get(owner) ?? -1;
  const spring = mechanism.attached.springs.findIndex(({ name }) => name === without);
  if (spring < 0) return () => NaN;
  const solver = createFriction(build);
  const at = solver.changedBy(spring).indexOf(lever);
  return (_, pose) => {
    const { margin } = solver.comingBack(pose);
    return Math.min((at < 0 ? margin[lever] : solver.springOff(pose, spring).margin[at]) ?? NaN, NOTHING_RUBS);
  };
}

/** A figure that is its own outcome: the target, as far as the bounds let it. */
function writtenAs({ target, from, to }: Question): Solutions {
  const value = Math.min(to, Math.max(from, target));
  const nearest = { value, outcome: value };
  return { kind: 'solved', roots: value === target ? [nearest] : [], nearest };
}

/** More than any margin over friction. */
const NOTHING_RUBS = 1e6;
/** Enough for what a person gives as bounds. */
const STARTS = 129;
/** Relative to the bounds' width. */
const CLOSE = 1e-15;
/** Of a step between two starts: to a hundred-billionth of it. */
const HALVINGS = 37;
/** Relative to the bounds' width; roots nearer together than this are one. */
const SAME = 1e-12;
/** Nearer to the target than this, relative to how far the outcome ranges, is on it. */
const TOUCH = 1e-12;

interface Met {
  readonly value: number;
  readonly outcome: number;
}

/** Three neighbours on one side of the target, the middle one nearest to it. */
interface Turn {
  readonly before: Met;
  readonly at: Met;
  readonly after: Met;
  /** Distance from the target that it keeps at least where the outcome is convex there; negative where it may pass it. */
  readonly bound: number;
}

function crossings(
  outcomeAt: (value: number) => number,
  { from, to, target, starts = STARTS }: Question,
): { readonly roots: readonly Met[]; readonly nearest: Met | undefined } {
  const width = to - from;
  const met = Array.from({ length: starts }, (_, i): Met => {
    const value = i === starts - 1 ? to : from + (width * i) / (starts - 1);
    return { value, outcome: outcomeAt(value) };
  }).filter(({ outcome }) => Number.isFinite(outcome));
  const miss = (value: number): number => outcomeAt(value) - target;
  const scale = Math.max(Math.abs(target), ...met.map((each) => Math.abs(each.outcome)));
  const isOn = ({ outcome }: Met): boolean => Math.abs(outcome - target) <= TOUCH * scale;
  const roots: Met[] = [];
  let nearest: Met | undefined;
  const look = (at: Met): void => {
    if (nearest === undefined || Math.abs(at.outcome - target) < Math.abs(nearest.outcome - target)) nearest = at;
  };
  const add = (value: number): void => {
    const outcome = outcomeAt(value);
    // A jump passes the target without meeting it.
    if (!(Math.abs(outcome - target) <= JUMP * scale)) return;
    look({ value, outcome });
    if (!roots.some((root) => Math.abs(root.value - value) <= SAME * width)) roots.push({ value, outcome });
  };
  /** Where a level stretch on the target ends, towards a place that is off it. */
  const addEdge = (off: Met | undefined, on: Met): void => {
    if (off === undefined) return add(on.value);
    let [outside, inside] = [off.value, on.value];
    for (let i = 0; i < HALVINGS; i++) {
      const value = (outside + inside) / 2;
      if (isOn({ value, outcome: outcomeAt(value) })) inside = value;
      else outside = value;
    }
    add(inside);
  };
  const passed: Turn[] = [];
  /** Refines a turning place, and the two crossings beside it where it reaches beyond the target. */
  const lookAt = ({ before, at, after }: Turn): void => {
    const low = before.outcome - target;
    const beyond = after.outcome - target;
    const side = Math.sign(at.outcome - target);
    const turn = leastOf((share) => side * miss(before.value + share * (after.value - before.value)), FINE);
    if (turn === undefined) return;
    const value = before.value + turn.travel * (after.value - before.value);
    const depth = turn.value;
    look({ value, outcome: target + side * depth });
    if (depth < 0) {
      add(bracketedRoot(miss, before.value, low, value, side * depth, CLOSE * width));
      add(bracketedRoot(miss, value, side * depth, after.value, beyond, CLOSE * width));
    } else if (depth <= TOUCH * Math.max(Math.abs(target), Math.abs(low), Math.abs(beyond))) add(value);
  };
  const spacing = (1.5 * width) / (starts - 1);
  const beside = (at: Met, other: Met | undefined): Met | undefined =>
    other !== undefined && Math.abs(other.value - at.value) <= spacing ? other : undefined;
  met.forEach((at, i) => {
    look(at);
    const before = beside(at, met[i - 1]);
    const after = beside(at, met[i + 1]);
    const [wasOn, staysOn] = [before !== undefined && isOn(before), after !== undefined && isOn(after)];
    if (isOn(at)) {
      if (wasOn && !staysOn) addEdge(after, at);
      else if (!wasOn && staysOn) addEdge(before, at);
      else if (!wasOn) add(at.value);
      return;
    }
    if (before === undefined || wasOn) return;
    const low = before.outcome - target;
    const high = at.outcome - target;
    if (low * high < 0) add(bracketedRoot(miss, before.value, low, at.value, high, CLOSE * width));
    if (after === undefined || staysOn) return;
    const beyond = after.outcome - target;
    const turns = low * high > 0 && high * beyond > 0 && Math.abs(high) <= Math.abs(low) && Math.abs(high) <= Math.abs(beyond);
    if (!turns) return;
    // How near it can come at best, on its own side of the target; negative beyond it.
    const bound = Math.abs(high) - Math.max(Math.abs(low), Math.abs(beyond)) + Math.abs(high);
    const turn: Turn = { before, at, after, bound };
    if (bound <= TOUCH * scale) lookAt(turn);
    else passed.push(turn);
  });
  // For saying how near it comes, those that could come nearer than what was met.
  if (roots.length === 0) {
    for (const turn of passed.sort((a, b) => a.bound - b.bound)) {
      if (nearest !== undefined && turn.bound >= Math.abs(nearest.outcome - target) - NEARER * scale) break;
      lookAt(turn);
    }
  }
  return { roots: roots.sort((a, b) => a.value - b.value), nearest };
}

/** Relative; what comes nearer by less is not looked for. */
const NEARER = 1e-6;
/** Relative; a refined crossing that misses by more is a jump. */
const JUMP = 1e-6;
const FINE: readonly number[] = Array.from({ length: 9 }, (_, i) => i / 8);

/** Drawn length of the rod whose length the file leaves out. */
function drawnLength(mechanism: Mechanism, dimension: number): number {
  const joint = mechanism.joints.find((each) => each.kind === 'rod' && each.lengthDimension === dimension);
  return joint?.kind === 'rod' ? createBuild(mechanism).parameters[joint.length]! : 0;
}
