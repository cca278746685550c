/**
 * What comes back with one spring off, from what is known with all on: only the levers on which it works, those that they hang on, and
 * what closes together with them stand under other forces. In a file of many shafts that is a small part.
 */
import type { SpringModel } from '../../kinematics/attached.ts';
import type { Joint, Mechanism } from '../../kinematics/model.ts';
import type { Pose } from '../../kinematics/pose.ts';
import { addTorque, finite, type Statics, type StaticsSolver } from '../closing.ts';
import type { Motion } from '../motion.ts';
import { leversOf } from '../springsReaching.ts';
import { addSpring, type Loads } from './loads.ts';
import { marginOf } from './margin.ts';
import { createPass, goThroughChanged, type Changed, type Pass, type PassContext } from './pass.ts';

/** With one spring off; filled again by the next call for the same spring. */
export interface SpringOff {
  /** Those that can stand otherwise than with it on. */
  readonly levers: readonly number[];
  /** By their place in `levers`, as `Statics.closing` and `FrictionStatics.margin`. */
  readonly closing: Float64Array;
  readonly margin: Float64Array;
}

/** Known with all springs on. */
interface Whole {
  readonly frictionless: Pick<Statics, 'closing' | 'springs'>;
  readonly margin: Float64Array;
  readonly pressing: Pass;
  readonly releasing: Pass;
}

interface Context extends PassContext {
  readonly statics: StaticsSolver;
  /** Scratch. */
  readonly carried: Loads;
}

export interface SpringsOff {
  /** @param number of the spring among the mechanism's @param whole what was found in the same pose with all on, last of all */
  at(pose: Pose, number: number, whole: Whole): SpringOff;
  changedBy(number: number): readonly number[];
}

export function createSpringsOff(context: Context): SpringsOff {
  const { build, motion, statics, carried, ways } = context;
  const { mechanism } = build;
  const bodies = motion.bodies.length;
  const plans: (Plan | undefined)[] = [];
  const closes = new Float64Array(bodies);
  const pressing = createPass(build, bodies);
  const releasing = createPass(build, bodies);
  const planFor = (number: number): Plan => (plans[number] ??= planOf(mechanism, motion, mechanism.attached.springs[number]!));
  const at = (pose: Pose, number: number, whole: Whole): SpringOff => {
    const plan = planFor(number);
    const { springs } = whole.frictionless;
    for (const works of plan.works) takeOff(context, works, springs);
    statics.closesAnew(pose, plan.isChanged, springs, closes);
    goThroughChanged(context, pose, carried, plan, whole.releasing, releasing);
    // What closes as the pedal is pressed comes back as it is pressed.
    if (ways.includes(-1)) goThroughChanged(context, pose, carried, plan, whole.pressing, pressing);
    fillOff(context, plan, closes, { pressing, releasing }, whole);
    for (const works of plan.works) putBack(context, works, springs);
    return plan.off;
  };
  return { at, changedBy: (number) => planFor(number).off.levers };
}

/** What the absence of a spring changes. */
interface Plan extends Changed {
  /** By body, whether it holds one of these levers. */
  readonly isChanged: readonly boolean[];
  readonly works: readonly Works[];
  readonly off: SpringOff;
}

/** A lever on which it works. */
interface Works {
  readonly lever: number;
  /** The other springs on it. */
  readonly others: readonly SpringModel[];
  readonly numbers: readonly number[];
  /** What acts on it with the spring on. */
  readonly on: { springs: number; moment: number; x: number; y: number; z: number };
}

function planOf({ attached, levers, joints }: Mechanism, { bodies, bodyOf }: Motion, spring: SpringModel): Plan {
  const worked = leversOf(spring);
  const changed = new Set(worked);
  const holding = new Set<Joint>();
  for (const lever of changed) {
    const joint = joints[levers[lever]!.driver ?? -1];
    if (joint === undefined) continue;
    holding.add(joint);
    if (joint.driver !== undefined) changed.add(joint.driver);
  }
  const isChanged = bodies.map(({ levers: together }) => together.some((lever) => changed.has(lever)));
  const closing = [...isChanged];
  bodies.forEach(({ driver }, i) => {
    if (driver !== undefined && driver.kind !== 'cable' && closing[bodyOf[driver.driver]!] === true) closing[i] = true;
  });
  const reached = levers.map(({ index }) => index).filter((lever) => worked.includes(lever) || closing[bodyOf[lever]!] === true);
  const working = joints.filter((joint) => holding.has(joint) || (joint.driver !== undefined && changed.has(joint.driver))).reverse();
  return {
    levers: [...changed],
    joints: working,
    isHolding: working.map((joint) => holding.has(joint)),
    isChanged,
    works: worked.map((lever) => {
      const numbers = attached.springs.flatMap((each, i) => (each !== spring && leversOf(each).includes(lever) ? [i] : []));
      return { lever, numbers, others: numbers.map((i) => attached.springs[i]!), on: { springs: 0, moment: 0, x: 0, y: 0, z: 0 } };
    }),
    off: { levers: reached, closing: new Float64Array(reached.length), margin: new Float64Array(reached.length) },
  };
}

function takeOff({ build, loads, statics }: Context, { lever, others, numbers, on }: Works, springs: Float64Array): void {
  const { moment, x, y, z } = loads;
  on.springs = springs[lever]!;
  on.moment = moment[lever]!;
  on.x = x[lever]!;
  on.y = y[lever]!;
  on.z = z[lever]!;
  springs[lever] = x[lever] = y[lever] = z[lever] = 0;
  for (let i = 0; i < others.length; i++) {
    const state = statics.each[numbers[i]!]!;
    addTorque(others[i]!, state, springs, lever);
    addSpring(others[i]!, state, loads, lever);
  }
  moment[lever] = -build.mechanism.senses[lever]! * springs[lever];
}

function putBack({ loads: { moment, x, y, z } }: Context, { lever, on }: Works, springs: Float64Array): void {
  springs[lever] = on.springs;
  moment[lever] = on.moment;
  x[lever] = on.x;
  y[lever] = on.y;
  z[lever] = on.z;
}

function fillOff(
  { motion, ways, joinedTo }: Context,
  { off, isChanged }: Plan,
  closes: Float64Array,
  { pressing, releasing }: Pick<Whole, 'pressing' | 'releasing'>,
  { frictionless, margin }: Whole,
): void {
  const { bodyOf, unit } = motion;
  for (let i = 0; i < off.levers.length; i++) {
    const lever = off.levers[i]!;
    const body = bodyOf[lever]!;
    if (body < 0) {
      off.closing[i] = frictionless.springs[lever]!;
      off.margin[i] = NaN;
      continue;
    }
    const first = joinedTo[body]!;
    if (!isChanged[first]) {
      off.closing[i] = frictionless.closing[lever]!;
      off.margin[i] = margin[lever]!;
      continue;
    }
    const back = ways[first]! < 0 ? pressing : releasing;
    off.closing[i] = finite(closesOf(motion, closes, body, first) / unit[lever]!);
    off.margin[i] = back.jammed[first]! > 0 ? 0 : marginOf(finite(closes[first]!), back.net[first]!);
  }
}

/** Q of a body that closes with the one before it, as that one has it. */
function closesOf(motion: Motion, closes: Float64Array, body: number, first: number): number {
  const driver = motion.bodies[body]!.driver;
  if (body === first || driver === undefined || driver.kind === 'cable') return closes[body]!;
  return closesOf(motion, closes, motion.bodyOf[driver.driver]!, first) / motion.links[body]!.gain;
}
