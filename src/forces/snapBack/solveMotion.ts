/**
 * Snap-back by the equation of motion: of each body, with one freedom and the inertia I(q) that its levers and rods have for it,
 *     I(q) q̈ + ½ I′(q) q̇² = what springs, cables, gaps and friction bring
 * `dynamics.ts` says what is left over of that, `mode.ts` which gaps press and which bodies stand, `impact.ts` what a knock does. Between
 * two events the motion is smooth and goes by Runge–Kutta steps; events are located within the step. Planar and spatial linkages alike.
 */
import { bracketedRoot } from '../../numeric/roots.ts';
import { createStepper } from '../../numeric/dormandPrince.ts';
import type { Build } from '../../kinematics/build.ts';
import { createDynamics, type Dynamics } from './dynamics.ts';
import type { GapState } from './gaps.ts';
import { gapsOf } from './gapsOf.ts';
import { knock, type Knock } from './impact.ts';
import { createModeSolver, type ModeSolver } from './mode.ts';
import { createPlateTimes, type PlateTimes } from './plateTimes.ts';
import { prepare, type Prepared } from './prepare.ts';
import { createRecorder, type Recorder } from './recorder.ts';
import type { NotComputed, SnapBack, SnapBackOptions, WhyNever } from './snapBack.ts';
import { springEnergy } from './springEnergy.ts';
import { summed } from './summed.ts';
import { startStretched, stretchEnergy } from './stretched.ts';

/** s: longest step. It is for events that could be stepped over; accuracy is kept by the error estimate. */
const STEP = 2e-3;
/** s: below this no step gets on: the linkage cannot be assembled further. */
const LEAST_STEP = 1e-10;
/** rad, and relative to the speed at which a body alone would have the greatest kinetic energy so far. */
const TOLERANCE = 1e-8;
/** J: steps are no finer for less. */
const LEAST_ENERGY = 1e-7;
/** m or rad; a gap this small is shut. */
const SHUT = 1e-9;
/** Relative to the fastest so far: slower is standing. */
const STILL = 1e-7;
/** Relative to the fastest so far; a bounce slower than this is none: it would rise a millionth of the way. */
const LEAST_BOUNCE = 1e-3;
/** Far more than any linkage that comes to rest has. */
const MOST_EVENTS = 2000;
const MOST_STEPS = 20_000;

export function solveMotion(build: Build, options: SnapBackOptions): SnapBack | NotComputed {
  const prepared = prepare(build, options);
  if ('reason' in prepared) return prepared;
  const { bare, start, isLost, isSeized, inertias } = prepared;
  const dynamics = createDynamics(bare, isLost, inertias, () => gapsOf(bare, start, isLost, isSeized));
  const run = createRun(prepared, dynamics, options.step ?? STEP);
  if (run === undefined) return { method: undefined, reason: 'the torque of a spring is not known' };
  run.go();
  return run.answer();
}

interface Run {
  go(): void;
  answer(): SnapBack;
}

function createRun(prepared: Prepared, dynamics: Dynamics, longest: number): Run | undefined {
  const { bare: build, start, restitution, horizon } = prepared;
  const { mechanism } = build;
  const { bodies, gaps, between } = dynamics;
  const { pose } = bodies;
  const count = bodies.count;
  const q = new Float64Array(count);
  const v = new Float64Array(count);
  const masses = new Float64Array(count);
  bodies.bodies.forEach(({ root }, i) => (q[i] = mechanism.senses[root]! * start.rotation[root]!));
  if (bodies.pedal !== undefined && mechanism.drive.kind === 'cable')
    q[bodies.pedal] = build.parameters[mechanism.drive.travel]! * start.travel;
  if (!dynamics.place(q, v)) return undefined;

  const solver: ModeSolver = createModeSolver(dynamics);
  const { mode } = solver;
  const plates: PlateTimes = createPlateTimes(build, pose);
  const recorder: Recorder = createRecorder(mechanism.levers.length);
  const state: GapState = { g: 0, rate: 0, change: 0 };
  /** Gaps that overlap because a cable is stretched: they pull as springs and do not press. */
  const overlaps = gaps.map(() => false);
  const assumed = [...prepared.assumed, ...startStretched(dynamics, start, overlaps, mode.held)];
  const held = spread();
  const knocked: Knock = { stops: 0, jerks: 0 };
  let time = 0;
  let fastest = 0;
  /** Greatest kinetic energy so far, J. */
  let liveliest = LEAST_ENERGY;
  let jammed = false;
  let events = 0;
  /** Whether the mode agrees with itself; where it does not, it is decided anew after each step. */
  let agrees = true;
  /** Events that follow each other at once, and when the last was. */
  let atOnce = 0;
  let lastEvent = -1;
  const y = new Float64Array(2 * count + 1);
  const work = new Float64Array(2 * count + 1);

  const stepper = createStepper(y.length, (_t, at, into) => {
    if (!placeAt(at) || !solver.solve()) {
      into.fill(NaN);
      return;
    }
    for (let body = 0; body < count; body++) {
      into[body] = mode.stands[body] ? 0 : at[count + body]!;
      into[count + body] = mode.stands[body] ? 0 : mode.acceleration[body]!;
    }
    into[2 * count] = dynamics.rubbed.power;
  });

  return { go, answer };

  /** Energy that springs and stretched cables hold. */
  function spread(): number {
    return springEnergy(build, pose) + stretchEnergy(dynamics);
  }

  function placeAt(at: Float64Array): boolean {
    return dynamics.place(at.subarray(0, count), at.subarray(count, 2 * count));
  }

  function go(): void {
    y.set(q);
    settle();
    dynamics.fillMasses(masses);
    recorder.add(0, pose);
    let step = Math.min(longest, FIRST_STEP);
    for (let steps = 0; steps < MOST_STEPS && events < MOST_EVENTS; steps++) {
      if (isOver() || time >= horizon) return;
      const tried = Math.min(step, longest, horizon - time);
      const error = stepper.attempt(time, y, tried, allowed);
      if (!(error <= 1)) {
        step = Number.isNaN(error) ? tried / 4 : tried * Math.max(0.2, 0.9 * error ** -0.2);
        if (step >= LEAST_STEP) continue;
        placeAt(y);
        jammed = true;
        return;
      }
      const fraction = firstEvent(tried);
      const began = time;
      if (fraction < 1) stepper.within(fraction, y);
      else y.set(stepper.next);
      time = began + fraction * tried;
      placeAt(y);
      plates.step(time, pose, (plate) => began + tried * crossing((at) => distanceAt(plate, at), 0, fraction));
      placeAt(y);
      dynamics.fillMasses(masses);
      for (let body = 0; body < count; body++) fastest = Math.max(fastest, Math.abs(y[count + body]!));
      liveliest = Math.max(liveliest, kineticEnergy());
      if (fraction < 1) {
        events++;
        atOnce = time - lastEvent < AT_ONCE ? atOnce + 1 : 0;
        lastEvent = time;
        settle();
      } else if (agrees && atOnce <= MOST_AT_ONCE) tidy();
      else {
        atOnce = 0;
        tidy();
        settle();
      }
      recorder.add(time, pose);
      step = fraction < 1 ? tried : tried * Math.min(5, error === 0 ? 5 : 0.9 * error ** -0.2);
    }
  }

  /** Of masses that are filled. */
  function kineticEnergy(): number {
    let sum = 0;
    for (let body = 0; body < count; body++) sum += (masses[body]! * y[count + body]! ** 2) / 2;
    return sum;
  }

  function allowed(component: number): number {
    if (component < count) return TOLERANCE;
    return component < 2 * count ? TOLERANCE * Math.sqrt((2 * liveliest) / masses[component - count]!) : Infinity;
  }

  function distanceAt(plate: number, fraction: number): number {
    stepper.within(fraction, work);
    bodies.place(work);
    return plates.distance(plate, pose);
  }

  /** Where a function of the last step changes its sign, a fraction of it. */
  function crossing(f: (fraction: number) => number, low: number, high: number): number {
    const atLow = f(low);
    const atHigh = f(high);
    if (!(atLow > 0 !== atHigh > 0)) return high;
    return bracketedRoot(f, low, atLow, high, atHigh, 1e-13);
  }

  /** The first event of the last step, a fraction of it; 1 where there is none. */
  function firstEvent(tried: number): number {
    let first = 1;
    const gapWithin =
      (k: number) =>
      (fraction: number): number => {
        stepper.within(fraction, work);
        placeAt(work);
        dynamics.gapState(k, state);
        return state.g;
      };
    placeAt(stepper.next);
    const ends = gaps.map((_, k) => {
      dynamics.gapState(k, state);
      return state.g;
    });
    gaps.forEach((_, k) => {
      if (overlaps[k]) {
        if (ends[k]! >= 0)
          first = Math.min(
            first,
            crossing((at) => gapWithin(k)(at), 0, 1),
          );
      } else if (!mode.presses[k] && ends[k]! < -SHUT) {
        first = Math.min(
          first,
          crossing((at) => gapWithin(k)(at) + SHUT / 2, 0, 1),
        );
      }
    });
    for (let body = 0; body < count; body++) {
      const before = y[count + body]!;
      const after = stepper.next[count + body]!;
      if (mode.stands[body] || before === 0 || before > 0 === after > 0) continue;
      const turns = crossing(
        (at) => {
          stepper.within(at, work);
          return work[count + body]!;
        },
        0,
        1,
      );
      first = Math.min(first, turns);
    }
    const holdsAt = (fraction: number): boolean => {
      stepper.within(fraction, work);
      return placeAt(work) && solver.solve() && solver.holds();
    };
    if (!agrees || atOnce > MOST_AT_ONCE || holdsAt(first)) return first;
    let low = 0;
    let high = first;
    while ((high - low) * tried > EVENT_TIME) {
      const middle = (low + high) / 2;
      if (holdsAt(middle)) low = middle;
      else high = middle;
    }
    return high < 1 ? high : BEFORE_END;
  }

  /** What is no longer apart, what has come to stand, and how it goes on. */
  function settle(): void {
    for (let body = 0; body < count; body++) {
      q[body] = y[body]!;
      v[body] = Math.abs(y[count + body]!) <= STILL * fastest || mode.stands[body] ? 0 : y[count + body]!;
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
    meet();
    for (let again = 0; again <= count; again++) {
      const candidates = gaps.map((_, k) => {
        dynamics.gapState(k, state);
        return !overlaps[k] && state.g <= SHUT && state.rate <= STILL * fastest;
      });
      agrees = solver.decide(v, candidates);
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

  function meet(): void {
    const shut = gaps.map((_, k) => {
      dynamics.gapState(k, state);
      return !overlaps[k] && state.g <= SHUT;
    });
    const approach = gaps.map((_, k) => {
      dynamics.gapState(k, state);
      return -state.rate;
    });
    if (!shut.some((isShut, k) => isShut && approach[k]! > STILL * fastest)) return;
    const throwsBack = (k: number, speed: number): number => {
      const { kind } = gaps[k]!;
      const isStop = kind === 'stop' || kind === 'pedal-stop';
      return isStop && restitution * speed > LEAST_BOUNCE * fastest ? restitution : 0;
    };
    dynamics.fillMasses(masses);
    knock(dynamics, shut, throwsBack, masses, v, knocked);
    for (let body = 0; body < count; body++) if (Math.abs(v[body]!) <= STILL * fastest) v[body] = 0;
    dynamics.place(q, v);
    gaps.forEach((gap, k) => {
      if (!shut[k] || gap.kind !== 'stop' || gap.which !== 'closed' || !(approach[k]! > STILL * fastest)) return;
      dynamics.gapState(k, state);
      plates.meets(gap.lever, approach[k]!, state.rate > 0);
    });
  }

  /** Puts bodies that press on each other back where they touch, from where rounding of the steps has brought them. */
  function tidy(): void {
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
    placeAt(y);
  }

  /** Whether all that could still move plates stands. */
  function isOver(): boolean {
    return prepared.matters(dynamics).every((body) => mode.stands[body]);
  }

  function answer(): SnapBack {
    const { pose: end } = bodies;
    const isMoving = !jammed && !isOver();
    const why = (lever: number): WhyNever => {
      if (isMoving) return 'still-moving';
      return jammed || mode.held[bodies.bodyOf[lever]!] ? 'jams' : 'sticks';
    };
    const returns = plates.answer(end, why);
    dynamics.fillMasses(masses);
    const kinetic = kineticEnergy();
    const springs = held - spread();
    const friction = y[2 * count]!;
    return {
      method: 'equation-of-motion',
      ...summed(returns),
      energy: {
        springs,
        kinetic,
        friction,
        stops: knocked.stops,
        jerks: knocked.jerks,
        residual: springs - kinetic - friction - knocked.stops - knocked.jerks,
      },
      assumed,
      trace: recorder.trace(),
      followed: time,
    };
  }
}

/** s. */
const FIRST_STEP = 1e-4;
/** s: how well it is known when something ceases to press. */
const EVENT_TIME = 1e-10;
/** s: events nearer to each other than this, so many of them, are rounding that is turned to and fro. */
const AT_ONCE = 1e-8;
const MOST_AT_ONCE = 10;
/** A fraction of the step that counts as an event at its end. */
const BEFORE_END = 1 - 1e-15;
/** m; rounding of a gap. */
const EXACT = 1e-13;
/** rad; more is no rounding. */
const LARGEST_SHIFT = 1e-4;
