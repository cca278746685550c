/**
 * The values at which a function of one figure has a wanted value: all of them within bounds, as far as steps show them.
 *
 * The outcome is taken at some values between the bounds; wherever it passes the target between two neighbours the crossing
 * is refined, and wherever it comes near and turns away its turning place is refined and looked at. It comes near where it could reach
 * the target, were it convex there: a convex function lies above the lines through its neighbours. Where it stays on the target, as
 * an opening does on its stop, the ends of that stretch are the roots. Where the linkage cannot be solved there is no outcome and no
 * crossing; the edge of such a stretch is not one. Two crossings closer together than a step, on one side of no turning place that
 * the steps show, can be missed.
 */
import { bracketedRoot } from '../numeric/roots.ts';
import { leastOf } from '../travel/extremes.ts';

export interface Sought {
  readonly target: number;
  /** Values at which the outcome is first taken, rising, 2 at least; the first and the last are the bounds. */
  readonly places: readonly number[];
}

/** @param from less than `to` @param count 2 at least */
export function evenPlaces(from: number, to: number, count: number): readonly number[] {
  return Array.from({ length: count }, (_, i) => (i === count - 1 ? to : from + ((to - from) * i) / (count - 1)));
}

export interface Met {
  readonly value: number;
  readonly outcome: number;
}

export interface Crossings {
  /** Rising. */
  readonly roots: readonly Met[];
  /** What was met nearest to the target; undefined where there is no outcome anywhere. */
  readonly nearest: Met | undefined;
}

/** @param outcomeAt SI; NaN where there is none */
export function crossings(outcomeAt: (value: number) => number, { target, places }: Sought): Crossings {
  const width = places.at(-1)! - places[0]!;
  const met = places
    .map((value, index): Place => ({ value, outcome: outcomeAt(value), index }))
    .filter(({ outcome }) => Number.isFinite(outcome));
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
  const beside = (at: Place, other: Place | undefined): Place | undefined =>
    other !== undefined && Math.abs(other.index - at.index) === 1 ? other : undefined;
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

/** One of the first places, with its number. */
interface Place extends Met {
  readonly index: number;
}

/** Three neighbours on one side of the target, the middle one nearest to it. */
interface Turn {
  readonly before: Met;
  readonly at: Met;
  readonly after: Met;
  /** Distance from the target that it keeps at least where the outcome is convex there; negative where it may pass it. */
  readonly bound: number;
}

/** Relative to the bounds' width. */
const CLOSE = 1e-15;
/** Of a step between two starts: to a hundred-billionth of it. */
const HALVINGS = 37;
/** Relative to the bounds' width; roots nearer together than this are one. */
const SAME = 1e-12;
/** Nearer to the target than this, relative to how far the outcome ranges, is on it. */
const TOUCH = 1e-12;
