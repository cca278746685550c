/** What an event leaves: what is no longer apart meets, what has come to stand stands, and it is decided how all goes on. */
import { knock } from './impact.ts';
import { createGapState, placeAt, SHUT, STILL, type Motion } from './motionState.ts';

/** Of bodies that stand as `y` has them. */
export function settle(motion: Motion): void {
  const { dynamics, solver, masses, overlaps, q, v, y } = motion;
  const { gaps, between, bodies } = dynamics;
  const { count } = bodies;
  const { mode } = solver;
  for (let body = 0; body < count; body++) {
    q[body] = y[body]!;
    v[body] = Math.abs(y[count + body]!) <= STILL * motion.fastest || mode.stands[body] ? 0 : y[count + body]!;
  }
  dynamics.place(q, v);
  gaps.forEach((_, k) => {
    if (!overlaps[k]) return;
    dynamics.gapState(k, state);
    if (state.g < -EXACT) return;
    overlaps[k] = false;
    mode.held[between[k]![0]] = false;
    const index = dynamics.stretched.findIndex(({ gap }) => gap === k);
    if (index >= 0) dynamics.stretched.splice(index, 1);
  });
  meet(motion);
  for (let again = 0; again <= count; again++) {
    const candidates = gaps.map((_, k) => {
      dynamics.gapState(k, state);
      return !overlaps[k] && state.g <= SHUT && state.rate <= STILL * motion.fastest;
    });
    motion.agrees = solver.decide(v, candidates);
    let stopped = false;
    for (let body = 0; body < count; body++) {
      if (!mode.held[body] || v[body] === 0) continue;
      dynamics.fillMasses(masses);
      y[2 * count] = y[2 * count]! + (masses[body]! * v[body]! ** 2) / 2;
      v[body] = 0;
      stopped = true;
    }
    if (!stopped) break;
    dynamics.place(q, v);
  }
  for (let body = 0; body < count; body++) {
    y[body] = q[body]!;
    y[count + body] = v[body]!;
  }
  dynamics.place(q, v);
}

function meet(motion: Motion): void {
  const { dynamics, masses, overlaps, plates, restitution, knocked, q, v } = motion;
  const { gaps } = dynamics;
  const { count } = dynamics.bodies;
  const shut = gaps.map((_, k) => {
    dynamics.gapState(k, state);
    return !overlaps[k] && state.g <= SHUT;
  });
  const approach = gaps.map((_, k) => {
    dynamics.gapState(k, state);
    return -state.rate;
  });
  if (!shut.some((isShut, k) => isShut && approach[k]! > STILL * motion.fastest)) return;
  const throwsBack = (k: number, speed: number): number => {
    const { kind } = gaps[k]!;
    const isStop = kind === 'stop' || kind === 'pedal-stop';
    return isStop && restitution * speed > LEAST_BOUNCE * motion.fastest ? restitution : 0;
  };
  dynamics.fillMasses(masses);
  knock(dynamics, shut, throwsBack, masses, v, knocked);
  for (let body = 0; body < count; body++) if (Math.abs(v[body]!) <= STILL * motion.fastest) v[body] = 0;
  dynamics.place(q, v);
  gaps.forEach((gap, k) => {
    if (!shut[k] || gap.kind !== 'stop' || gap.which !== 'closed' || !(approach[k]! > STILL * motion.fastest)) return;
    dynamics.gapState(k, state);
    plates.meets(gap.lever, approach[k]!, state.rate > 0);
  });
}

/** Puts bodies that press on each other back where they touch, from where rounding of the steps has brought them. */
export function tidy(motion: Motion): void {
  const { dynamics, solver, y } = motion;
  const { gaps, between } = dynamics;
  const { count } = dynamics.bodies;
  const { mode } = solver;
  gaps.forEach((_, k) => {
    const [driven] = between[k]!;
    if (!mode.presses[k] || mode.stands[driven]) return;
    dynamics.gapState(k, state);
    const slope = dynamics.slope(k, driven);
    const shift = state.g / slope;
    if (!(Math.abs(shift) < LARGEST_SHIFT)) return;
    y[driven] = y[driven]! - shift;
    y[count + driven] = y[count + driven]! - state.rate / slope;
  });
  placeAt(motion, y);
}

/** Relative to the fastest so far; a bounce slower than this is none: it would rise a millionth of the way. */
const LEAST_BOUNCE = 1e-3;
/** m; rounding of a gap. */
const EXACT = 1e-13;
/** rad; more is no rounding. */
const LARGEST_SHIFT = 1e-4;
const state = createGapState();
