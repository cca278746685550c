/**
 * Which gaps press and which bodies stand, and how all accelerate then.
 *
 * Of a gap that is shut: it presses with λ ≥ 0 and stays shut, or opens, g̈ ≥ 0, and presses nothing. Of a body that stands still: it
 * starts to close or to open, or friction holds it. One that is found wrong is turned over, the first of them each time (K. G. Murty, "Note
 * on a Bard-type scheme for solving the complementarity problem", Opsearch 11 (1974) 123, from memory), until none is.
 */
import { solveLinear } from '../../numeric/linearSystem.ts';
import type { Dynamics } from './dynamics.ts';
import type { GapState } from './gaps.ts';

export interface Mode {
  /** By gap: whether it is shut and presses. */
  readonly presses: boolean[];
  /** By body: whether it stands, held by friction or by what it presses on. */
  readonly stands: boolean[];
  /** By body: that it is held from outside: by a stretched cable, or as jammed. */
  readonly held: boolean[];
  /** By body and by gap, as last solved. */
  readonly acceleration: Float64Array;
  readonly pressing: Float64Array;
}

export function createMode({ bodies, gaps }: Dynamics): Mode {
  return {
    presses: gaps.map(() => false),
    stands: new Array<boolean>(bodies.count).fill(false),
    held: new Array<boolean>(bodies.count).fill(false),
    acceleration: new Float64Array(bodies.count),
    pressing: new Float64Array(gaps.length),
  };
}

export interface ModeSolver {
  readonly mode: Mode;
  /**
   * Accelerations and pressing forces of the mode as it is, for bodies that were placed and ways that are set. @returns false where a joint
   * jams
   */
  solve(): boolean;
  /**
   * Sets mode and ways anew for bodies that were placed with these speeds. @param shut which gaps are shut and not opening
   * @returns false where none was found that agrees with itself, as with friction there may be none: the last one tried is kept
   */
  decide(v: Float64Array, shut: readonly boolean[]): boolean;
  /** Whether what stands still stands, and what presses presses, as placed and solved. */
  holds(): boolean;
}

export function createModeSolver(dynamics: Dynamics): ModeSolver {
  const { bodies, gaps, between, ways } = dynamics;
  const count = bodies.count;
  const mode = createMode(dynamics);
  const { presses, stands, held, acceleration, pressing } = mode;
  const masses = new Float64Array(count);
  const net = new Float64Array(count);
  const other = new Float64Array(count);
  const columns = Array.from({ length: count + gaps.length }, () => new Float64Array(count));
  const slopes = gaps.map(() => [0, 0] as [number, number]);
  const matrix = new Float64Array((count + gaps.length) ** 2);
  const right = new Float64Array(count + gaps.length);
  const state: GapState = { g: 0, rate: 0, change: 0 };
  const still = new Float64Array(count);

  const isFixed = (body: number): boolean => body < 0 || held[body]! || ways[body] === 0;

  function solve(): boolean {
    dynamics.fillMasses(masses);
    const moving: number[] = [];
    const shut: number[] = [];
    for (let body = 0; body < count; body++) {
      if (isFixed(body)) acceleration[body] = 0;
      else moving.push(body);
    }
    for (let k = 0; k < gaps.length; k++) {
      const [driven, driver] = between[k]!;
      if (!presses[k] || (isFixed(driven) && isFixed(driver))) pressing[k] = 0;
      else {
        shut.push(k);
        slopes[k] = [dynamics.slope(k, driven), driver < 0 ? 0 : dynamics.slope(k, driver)];
      }
    }
    const size = moving.length + shut.length;
    if (size === 0) {
      dynamics.leftOver(acceleration, pressing, net);
      return true;
    }
    for (let round = 0; round < ROUNDS; round++) {
      dynamics.leftOver(acceleration, pressing, net);
      if (moving.some((body) => Number.isNaN(net[body]!))) return false;
      dynamics.accelerate(acceleration);
      moving.forEach((body, i) => (right[i] = -net[body]!));
      shut.forEach((k, i) => {
        dynamics.gapState(k, state);
        right[moving.length + i] = -state.change;
      });
      if (round % RENEWED === 0) fillColumns(moving, shut);
      fillMatrix(moving, shut, size);
      solveLinear(matrix, right, size);
      let moved = 0;
      let scale = TINY;
      moving.forEach((body, i) => {
        acceleration[body] = acceleration[body]! + right[i]!;
        moved = Math.max(moved, Math.abs(masses[body]! * right[i]!));
        scale = Math.max(scale, Math.abs(masses[body]! * acceleration[body]));
      });
      shut.forEach((k, i) => {
        const slope = Math.max(Math.abs(slopes[k]![0]), Math.abs(slopes[k]![1]));
        const change = right[moving.length + i]!;
        const force = pressing[k]! + change;
        pressing[k] = force;
        moved = Math.max(moved, Math.abs(slope * change));
        scale = Math.max(scale, Math.abs(slope * force));
      });
      if (dynamics.isLinear || moved <= CLOSE * scale) break;
    }
    dynamics.leftOver(acceleration, pressing, net);
    return !moving.some((body) => Number.isNaN(net[body]!));
  }

  /** What is left over changes by this with each acceleration and each pressing force. */
  function fillColumns(moving: readonly number[], shut: readonly number[]): void {
    const trial = Float64Array.from(acceleration);
    const probe = dynamics.isLinear ? 1 : PROBE;
    const steps = moving.map((body) => probe * Math.max(1, Math.abs(acceleration[body]!)));
    moving.forEach((body, i) => (trial[body] = trial[body]! + steps[i]!));
    dynamics.leftOver(trial, pressing, other);
    moving.forEach((body, i) => (columns[0]![body] = (other[body]! - net[body]!) / steps[i]!));
    shut.forEach((k, i) => {
      const kept = pressing[k]!;
      const step = probe * Math.max(1, Math.abs(kept));
      pressing[k] = kept + step;
      dynamics.leftOver(acceleration, pressing, other);
      pressing[k] = kept;
      for (const body of between[k]!) if (body >= 0) columns[1 + i]![body] = (other[body]! - net[body]!) / step;
    });
  }

  function fillMatrix(moving: readonly number[], shut: readonly number[], size: number): void {
    matrix.fill(0, 0, size * size);
    moving.forEach((body, i) => (matrix[i * size + i] = columns[0]![body]!));
    shut.forEach((k, j) => {
      between[k]!.forEach((body, end) => {
        const i = moving.indexOf(body);
        if (i < 0) return;
        matrix[i * size + moving.length + j] = columns[1 + j]![body]!;
        matrix[(moving.length + j) * size + i] = slopes[k]![end]!;
      });
    });
  }

  /** Of bodies that stand: what would be left over of each, about to go one way. */
  function leftStanding(way: 1 | -1): Float64Array {
    const kept = Int8Array.from(ways);
    for (let body = 0; body < count; body++) if (ways[body] === 0 && !held[body]) ways[body] = way;
    const into = new Float64Array(count);
    dynamics.leftOver(acceleration, pressing, into);
    ways.set(kept);
    return into;
  }

  /** @returns the first body or gap that is not as it must be, gaps counted after bodies, and what it should be */
  function firstWrong(free: readonly boolean[], shut: readonly boolean[]): { readonly index: number; readonly way: number } | undefined {
    const greatest = strength();
    const anyStands = free.some((each, body) => each && ways[body] === 0 && !held[body]);
    const closing = anyStands ? leftStanding(-1) : still;
    const opening = anyStands ? leftStanding(1) : still;
    for (let body = 0; body < count; body++) {
      if (!free[body] || held[body]) continue;
      if (ways[body] !== 0) {
        if (acceleration[body]! * ways[body]! * masses[body]! < -WRONG * greatest) return { index: body, way: 0 };
      } else if (closing[body]! > WRONG * Math.max(greatest, closing[body]!)) return { index: body, way: -1 };
      else if (opening[body]! < -WRONG * Math.max(greatest, -opening[body]!)) return { index: body, way: 1 };
    }
    for (let k = 0; k < gaps.length; k++) {
      if (!shut[k]) continue;
      const [driven, driver] = between[k]!;
      if (presses[k]) {
        const pulls = Math.abs(pressing[k]!) * Math.max(Math.abs(slopes[k]![0]), Math.abs(slopes[k]![1]));
        if (pressing[k]! < 0 && pulls > WRONG * greatest) return { index: count + k, way: 0 };
      } else {
        dynamics.gapState(k, state);
        const inertia = Math.max(
          masses[driven]! / Math.max(TINY, Math.abs(dynamics.slope(k, driven))),
          driver < 0 ? 0 : masses[driver]! / Math.max(TINY, Math.abs(dynamics.slope(k, driver))),
        );
        if (state.change < 0 && -state.change * inertia > WRONG * greatest) return { index: count + k, way: 1 };
      }
    }
    return undefined;
  }

  function decide(v: Float64Array, shut: readonly boolean[]): boolean {
    let agrees = false;
    const free = Array.from(v, (speed) => speed === 0);
    for (let body = 0; body < count; body++) ways[body] = held[body] ? 0 : free[body] ? -1 : Math.sign(v[body]!);
    shut.forEach((isShut, k) => (presses[k] = isShut));
    pressing.fill(0);
    for (let turn = 0; turn < TURNS; turn++) {
      if (!solve()) {
        // What would have to start against a joint that jams stays where it is.
        const jammed = ways.findIndex((way, body) => way !== 0 && Number.isNaN(net[body]!));
        if (jammed < 0) break;
        acceleration.fill(0);
        pressing.fill(0);
        if (free[jammed]) ways[jammed] = 0;
        else held[jammed] = true;
        continue;
      }
      dynamics.accelerate(acceleration);
      const wrong = firstWrong(free, shut);
      agrees = wrong === undefined;
      if (wrong === undefined) break;
      if (wrong.index < count) ways[wrong.index] = wrong.way;
      else presses[wrong.index - count] = wrong.way === 1;
    }
    const greatest = strength();
    for (let body = 0; body < count; body++) {
      stands[body] =
        held[body]! || (free[body]! && (ways[body] === 0 || Math.abs(acceleration[body]! * masses[body]!) <= STANDING * greatest));
    }
    return agrees;
  }

  /** The greatest of all that accelerates a body, N·m or N: what is far smaller is rounding. */
  function strength(): number {
    let most = TINY;
    for (let body = 0; body < count; body++) most = Math.max(most, Math.abs(acceleration[body]! * masses[body]!));
    for (let k = 0; k < gaps.length; k++)
      most = Math.max(most, Math.abs(pressing[k]! * slopes[k]![0]), Math.abs(pressing[k]! * slopes[k]![1]));
    return most;
  }

  function holds(): boolean {
    const greatest = strength();
    for (let k = 0; k < gaps.length; k++) {
      const slope = Math.max(Math.abs(slopes[k]![0]), Math.abs(slopes[k]![1]));
      if (presses[k] && pressing[k]! * slope < -STANDING * greatest) return false;
    }
    const closing = leftStanding(-1);
    const opening = leftStanding(1);
    for (let body = 0; body < count; body++) {
      if (ways[body] !== 0 || held[body]) continue;
      if (closing[body]! > STANDING * Math.abs(opening[body]!) || opening[body]! < -STANDING * Math.abs(closing[body]!)) return false;
    }
    return true;
  }

  return { mode, solve, decide, holds };
}

/** Newton's steps; the first is exact where no friction depends on what a joint carries. */
const ROUNDS = 24;
/** Steps with the same slopes. */
const RENEWED = 8;
/** Relative; a step smaller than this is rounding. */
const CLOSE = 1e-11;
/** Relative step of a difference. */
const PROBE = 1e-4;
/** Relative; less is neither wrong nor right. Looser for what was decided before, so that nothing is turned to and fro. */
const WRONG = 1e-9;
const STANDING = 1e-7;
const TINY = 1e-300;
/** Turned over at most, far more than there are states of what can stand or press in one file. */
const TURNS = 60;
