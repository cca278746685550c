/**
 * Snap-back by the equation of motion: of each body, with one freedom and the inertia I(q) that its levers and rods have for it,
 *     I(q) q̈ + ½ I′(q) q̇² = what springs, cables, gaps and friction bring
 * `dynamics.ts` says what is left over of that, `mode.ts` which gaps press and which bodies stand, `impact.ts` what a knock does. Between
 * two events the motion is smooth and goes by Runge–Kutta steps; `nextEvent.ts` finds events within the step, `settle.ts` says how it
 * goes on from them. Planar and spatial linkages alike.
 */
import { createStepper } from '../../numeric/dormandPrince.ts';
import type { Build } from '../../kinematics/build.ts';
import { createDynamics, type Dynamics } from './dynamics.ts';
import { gapsOf } from './gapsOf.ts';
import { createModeSolver } from './mode.ts';
import { placeAt, type Motion } from './motionState.ts';
import { crossing, firstEvent } from './nextEvent.ts';
import { createPlateTimes } from './plateTimes.ts';
import { prepare, type Prepared } from './prepare.ts';
import { createRecorder, type Recorder } from './recorder.ts';
import { settle, tidy } from './settle.ts';
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
/** Far more than any linkage that comes to rest has. */
const MOST_EVENTS = 2000;
const MOST_STEPS = 20_000;

/** A step of the motion, or one that was tried, from one step of the generator to the next. */
export function* solveMotion(build: Build, options: SnapBackOptions): Generator<void, SnapBack | NotComputed> {
  const prepared = prepare(build, options);
  if ('reason' in prepared) return prepared;
  const { bare, start, isLost, isSeized, inertias } = prepared;
  const dynamics = createDynamics(bare, isLost, inertias, () => gapsOf(bare, start, isLost, isSeized));
  const run = createRun(prepared, dynamics, options.step ?? STEP, options.tolerance ?? TOLERANCE);
  if (run === undefined) return { method: undefined, reason: 'the torque of a spring is not known' };
  yield* run.go();
  return run.answer();
}

interface Run {
  go(): Generator<void, void>;
  answer(): SnapBack;
}

function createRun(prepared: Prepared, dynamics: Dynamics, longest: number, tolerance: number): Run | undefined {
  const { bare: build, start, restitution, horizon } = prepared;
  const { mechanism } = build;
  const { bodies, gaps } = dynamics;
  const { pose, count } = bodies;
  const q = new Float64Array(count);
  const v = new Float64Array(count);
  bodies.bodies.forEach(({ root }, i) => (q[i] = mechanism.senses[root]! * start.rotation[root]!));
  if (bodies.pedal !== undefined && mechanism.drive.kind === 'cable')
    q[bodies.pedal] = build.parameters[mechanism.drive.travel]! * start.travel;
  if (!dynamics.place(q, v)) return undefined;

  const solver = createModeSolver(dynamics);
  const { mode } = solver;
  const plates = createPlateTimes(build, pose);
  const recorder: Recorder = createRecorder(mechanism.levers.length);
  const overlaps = gaps.map(() => false);
  const assumed = [...prepared.assumed, ...startStretched(dynamics, start, overlaps, mode.held)];
  const held = spread();
  const y = new Float64Array(2 * count + 1);
  const masses = new Float64Array(count);
  const knocked = { stops: 0, jerks: 0 };
  const motion: Motion = { dynamics, solver, plates, restitution, q, v, masses, y, overlaps, knocked, fastest: 0, agrees: true };
  let time = 0;
  /** Greatest kinetic energy so far, J. */
  let liveliest = LEAST_ENERGY;
  let jammed = false;
  let events = 0;
  /** Events that follow each other at once, and when the last was. */
  let atOnce = 0;
  let lastEvent = -1;
  const work = new Float64Array(2 * count + 1);

  const stepper = createStepper(y.length, (_t, at, into) => {
    if (!placeAt(motion, at) || !solver.solve()) {
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

  function* go(): Generator<void, void> {
    y.set(q);
    settle(motion);
    dynamics.fillMasses(masses);
    recorder.add(0, pose);
    let step = Math.min(longest, FIRST_STEP);
    for (let steps = 0; steps < MOST_STEPS && events < MOST_EVENTS; steps++) {
      if (isOver() || time >= horizon) return;
      yield;
      const tried = Math.min(step, longest, horizon - time);
      const error = stepper.attempt(time, y, tried, allowed);
      if (!(error <= 1)) {
        step = Number.isNaN(error) ? tried / 4 : tried * Math.max(0.2, 0.9 * error ** -0.2);
        if (step >= LEAST_STEP) continue;
        placeAt(motion, y);
        jammed = true;
        return;
      }
      const fraction = firstEvent(motion, stepper, tried, atOnce > MOST_AT_ONCE);
      const began = time;
      if (fraction < 1) stepper.within(fraction, y);
      else y.set(stepper.next);
      time = began + fraction * tried;
      placeAt(motion, y);
      plates.step(time, pose, (plate) => began + tried * crossing((at) => distanceAt(plate, at), 0, fraction));
      placeAt(motion, y);
      dynamics.fillMasses(masses);
      for (let body = 0; body < count; body++) motion.fastest = Math.max(motion.fastest, Math.abs(y[count + body]!));
      liveliest = Math.max(liveliest, kineticEnergy());
      if (fraction < 1) {
        events++;
        atOnce = time - lastEvent < AT_ONCE ? atOnce + 1 : 0;
        lastEvent = time;
        settle(motion);
      } else if (motion.agrees && atOnce <= MOST_AT_ONCE) tidy(motion);
      else {
        atOnce = 0;
        tidy(motion);
        settle(motion);
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
    if (component < count) return tolerance;
    return component < 2 * count ? tolerance * Math.sqrt((2 * liveliest) / masses[component - count]!) : Infinity;
  }

  function distanceAt(plate: number, fraction: number): number {
    stepper.within(fraction, work);
    bodies.place(work);
    return plates.distance(plate, pose);
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
/** s: events nearer to each other than this, so many of them, are rounding that is turned to and fro. */
const AT_ONCE = 1e-8;
const MOST_AT_ONCE = 10;
