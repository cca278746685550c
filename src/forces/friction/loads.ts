/** What acts on each lever whatever its joints carry: springs, drag, and plates that the vacuum presses on their shaft. */
import type { SpringModel } from '../../kinematics/attached.ts';
import type { Build } from '../../kinematics/build.ts';
import type { Pose } from '../../kinematics/pose.ts';
import { createSpringState, fillSpring, type SpringState } from '../springs.ts';
import { frictionRadius } from './circle.ts';
import { plateLoad } from './plateLoad.ts';

/** By lever: moments about its axis, N·m, forces, N, and what rubs. */
export interface Loads {
  readonly moment: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  /** Drag with what the plates add, N·m. */
  readonly drag: Float64Array;
  /** Of the plates on the bearing, N. */
  readonly plates: Float64Array;
  /** Friction circle of its bearing, m; 0 without. */
  readonly radius: Float64Array;
}

export function createLoads({ mechanism }: Build): Loads {
  const figures = (): Float64Array => new Float64Array(mechanism.levers.length);
  return { moment: figures(), x: figures(), y: figures(), z: figures(), drag: figures(), plates: figures(), radius: figures() };
}

/**
 * @param springs closing torque of the springs on each lever @param without name of a spring that is taken off
 * @param each what each spring does, where that is known
 */
export function fillLoads(
  build: Build,
  pose: Pose,
  springs: Float64Array,
  without: string | undefined,
  loads: Loads,
  each?: readonly SpringState[],
): void {
  const { mechanism, parameters: p } = build;
  for (let i = 0; i < springs.length; i++) {
    loads.x[i] = loads.y[i] = loads.z[i] = loads.plates[i] = 0;
    const { bearing, drag } = mechanism.friction.levers[i]!;
    loads.moment[i] = -mechanism.senses[i]! * springs[i]!;
    loads.drag[i] = drag === undefined ? 0 : p[drag]!;
    loads.radius[i] = bearing === undefined ? 0 : frictionRadius(p[bearing.diameter]!, p[bearing.friction]!);
  }
  const { plates, springs: all } = mechanism.attached;
  for (let i = 0; i < plates.length; i++) {
    const { lever } = plates[i]!;
    const radius = loads.radius[lever]!;
    if (radius === 0) continue;
    const load = plateLoad(build, pose, plates[i]!, mechanism.friction.vacuum[i]);
    loads.plates[lever] = loads.plates[lever]! + load;
    loads.drag[lever] = loads.drag[lever]! + radius * load;
  }
  for (let i = 0; i < all.length; i++) {
    const spring = all[i]!;
    if (spring.name === without) continue;
    if (each === undefined) fillSpring(build, pose, spring, state);
    addSpring(spring, each?.[i] ?? state, loads);
  }
}

const state = createSpringState();

/**
 * A torsion spring is taken to turn and not to press: where its legs bear is not in the file. Without a bearing a force rubs nothing.
 * @param only the lever to which it is added, all where absent
 */
export function addSpring(spring: SpringModel, { x, y, z }: SpringState, loads: Loads, only?: number): void {
  if (spring.kind === 'torsion') return;
  const { lever, from } = spring;
  if (loads.radius[lever] !== 0 && (only ?? lever) === lever) addForce(loads, lever, -x, -y, -z);
  if (from.kind === 'pin' && loads.radius[from.lever] !== 0 && (only ?? from.lever) === from.lever) addForce(loads, from.lever, x, y, z);
}

/** A force on a lever, N, without its moment. */
export function addForce(loads: Loads, lever: number, x: number, y: number, z: number): void {
  loads.x[lever] = loads.x[lever]! + x;
  loads.y[lever] = loads.y[lever]! + y;
  loads.z[lever] = loads.z[lever]! + z;
}

/** A force at the pad of one: its way, square to its arm and opening, and its moment about the lever's axis, m. */
export interface PadForce {
  x: number;
  y: number;
  z: number;
  arm: number;
}

export function fillPad(build: Build, pose: Pose, lever: number, pin: number, into: PadForce): void {
  const p = build.parameters;
  const sense = build.mechanism.senses[lever]!;
  const c = pose.cosine[lever]!;
  const s = pose.sine[lever]!;
  const arm = Math.sqrt(p[pin + 3]! ** 2 + p[pin + 4]! ** 2 + p[pin + 5]! ** 2);
  into.x = (sense * (c * p[pin + 6]! - s * p[pin + 3]!)) / arm;
  into.y = (sense * (c * p[pin + 7]! - s * p[pin + 4]!)) / arm;
  into.z = (sense * (c * p[pin + 8]! - s * p[pin + 5]!)) / arm;
  into.arm = sense * arm;
}
