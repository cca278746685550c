/**
 * Forces in a drawn linkage by free-body statics: each lever cut free, one moment equation about its axis from forces and their arms
 * r × F, all levers that rods, slots and couplings join as one linear system, solved by mathjs's LU. No speeds and no ratios of speeds
 * enter. Positions are the rotations given and the drawn places; nothing comes from the engine's forces.
 *
 * Unknown in a group: the axial force of each rod, the force of each slot along the fork's normal, the torque of each coupling (of two
 * meshing wheels), and what holds the group: a torque on one lever, or the tension of the cable that drives it. Groups go from the
 * engine end to the pedal; a cable carries tension and no pressure.
 */
import { lusolve } from 'mathjs';
import { isPin, profileRadius, type Closure, type Rotations } from '../../support/closure.ts';
import { drivenLever, drivingLever, leverNamed, type SketchEnd, type SketchJoint } from '../../support/sketch.ts';
import { cross, dot, minus, size, square, times, turned, unit, type Vector } from '../../support/vector.ts';
import { momentOf, springMoments, type Moment, type Senses } from './springForces.ts';
import type { SprungSketch } from './sprung.ts';

/** A figure, N or N·mm, with the sum of the magnitudes of what it is made up of. */
export interface Figure {
  readonly value: number;
  readonly scale: number;
}

export interface Balance {
  /** Torque that holds each lever against closing, in its opening direction, N·mm. */
  readonly closing: Readonly<Record<string, Figure>>;
  readonly tension: Readonly<Record<string, Figure>>;
  /** At the pad, square to its arm, or at the cable's pedal end. Undefined where the file knows neither. */
  readonly effort: Figure | undefined;
}

/** How a cable stands: loose, or tight with what it is stretched past a stop, mm. */
export type CableStand = 'loose' | { readonly stretch: number };

export type CableSketch = SketchJoint & { readonly kind: 'cable' };

export interface Stand {
  readonly rotations: Rotations;
  readonly senses: Senses;
  readonly cable: (joint: CableSketch) => CableStand;
}

export function balance(closure: Closure, sketch: SprungSketch, stand: Stand): Balance {
  const body: Body = { closure, sketch, ...stand };
  const springs = sketch.springs.flatMap((spring) => springMoments(closure, stand.senses, spring, stand.rotations));
  const tensions: Record<string, Figure> = {};
  const loadsOn = (lever: string): readonly Figure[] => [
    ...springs.filter((each) => each.lever === lever).map(({ moment }) => ({ value: moment, scale: Math.abs(moment) })),
    ...sketch.joints.flatMap((joint) => {
      if (joint.kind !== 'cable' || joint.from?.lever !== lever) return [];
      const tension = tensionOf(joint);
      const arm = drivingMoment(body, joint);
      return tension.scale === 0 ? [] : [{ value: tension.value * arm, scale: tension.scale * Math.abs(arm) }];
    }),
  ];
  const tensionOf = (joint: CableSketch): Figure => (tensions[joint.name] ??= tensionIn(joint));
  const tensionIn = (joint: CableSketch): Figure => {
    const stands = stand.cable(joint);
    if (stands === 'loose') return { value: 0, scale: 0 };
    const held = solveGroup(body, joint.to.lever, { lever: joint.to.lever, moment: drivenMoment(body, joint) }, loadsOn);
    const tight = { value: Math.max(0, held.value), scale: held.scale };
    if (stands.stretch === 0) return tight;
    const more = (sketch.stiffness?.[joint.name] ?? NaN) * stands.stretch;
    return { value: tight.value + more, scale: tight.scale + more };
  };
  const closing = Object.fromEntries(
    sketch.levers.map(({ name }) => [name, solveGroup(body, name, { lever: name, moment: stand.senses[name]! }, loadsOn)]),
  );
  for (const joint of sketch.joints) if (joint.kind === 'cable') tensionOf(joint);
  return { closing, tension: tensions, effort: effortOf(sketch, closing, tensions) };
}

interface Body extends Stand {
  readonly closure: Closure;
  readonly sketch: SprungSketch;
}

/** How much of `holder` holds a lever's group still. */
function solveGroup(body: Body, lever: string, holder: Moment, loadsOn: (lever: string) => readonly Figure[]): Figure {
  const levers = groupOf(body.sketch, lever);
  const joints = body.sketch.joints.filter(
    (joint) => joint.kind !== 'cable' && levers.includes(drivenLever(joint)) && joinsGroup(joint, levers),
  );
  const columns = [...joints.map((joint) => jointMoments(body, joint)), [holder]];
  const matrix = levers.map((name) => columns.map((moments) => moments.find((each) => each.lever === name)?.moment ?? 0));
  const loads = levers.map(loadsOn);
  const sums = loads.map((each) => each.reduce((sum, { value }) => sum - value, 0));
  if (![...matrix.flat(), ...sums].every(Number.isFinite)) return { value: NaN, scale: NaN };
  const value = solution(matrix, sums).at(-1)!;
  // What each load contributes: the last row of the inverse.
  const transposed = columns.map((_, i) => matrix.map((row) => row[i]!));
  const shares = solution(transposed, [...joints.map(() => 0), 1]);
  const scale = loads.reduce((sum, each, i) => sum + each.reduce((all, load) => all + load.scale, 0) * Math.abs(shares[i]!), 0);
  return { value, scale };
}

function solution(matrix: number[][], right: number[]): number[] {
  return (lusolve(matrix, right) as number[][]).map(([value]) => value!);
}

const joinsGroup = (joint: SketchJoint, levers: readonly string[]): boolean => levers.includes(drivingLever(joint) ?? '');

/** Levers that rods, slots and couplings join with this one. */
function groupOf({ joints }: SprungSketch, lever: string): readonly string[] {
  const levers = [lever];
  for (let i = 0; i < levers.length; i++) {
    for (const joint of joints) {
      if (joint.kind === 'cable') continue;
      const [one, other] = [drivingLever(joint)!, drivenLever(joint)];
      if (levers[i] === one && !levers.includes(other)) levers.push(other);
      if (levers[i] === other && !levers.includes(one)) levers.push(one);
    }
  }
  return levers;
}

/** Moments on both levers of a joint for a force of one in it. */
function jointMoments({ closure, rotations, sketch }: Body, joint: SketchJoint): readonly Moment[] {
  switch (joint.kind) {
    case 'rod': {
      // A rod that presses its pins apart.
      const [start, end] = [closure.pinAt(joint.from, rotations), closure.pinAt(joint.to, rotations)];
      const e = unit(minus(end, start));
      return [
        { lever: joint.to.lever, moment: momentOf(closure, joint.to.lever, end, e) },
        { lever: joint.from.lever, moment: momentOf(closure, joint.from.lever, start, times(e, -1)) },
      ];
    }
    case 'slot': {
      const pin = closure.pinAt(joint.pin, rotations);
      const { n } = forkAt(sketch, joint, rotations);
      return [
        { lever: joint.pin.lever, moment: momentOf(closure, joint.pin.lever, pin, n) },
        { lever: joint.fork, moment: momentOf(closure, joint.fork, pin, times(n, -1)) },
      ];
    }
    case 'coupling': {
      // Two wheels, of radius 1 and |ratio|, press tooth on tooth with one force: wheels that turn opposite ways are both turned the
      // same way by it, a wheel inside another the opposite way.
      const radius = Math.abs(joint.ratio);
      return [
        { lever: joint.to, moment: 1 },
        { lever: joint.from, moment: joint.ratio < 0 ? radius : -radius },
      ];
    }
    case 'cable':
      return [];
  }
}

function forkAt(sketch: SprungSketch, joint: SketchJoint & { kind: 'slot' }, rotations: Rotations): { f: Vector; n: Vector } {
  const { axis, reference } = leverNamed(sketch, joint.fork);
  const u = unit(axis);
  const f = turned(unit(square(reference, u)), u, (joint.angle * Math.PI) / 180 + rotations[joint.fork]!);
  return { f, n: cross(u, f) };
}

/** Moment on the driving lever for a tension of one: the inner cable draws a pin to the housing, or unwinds a drum. */
function drivingMoment(body: Body, { from, leaves }: CableSketch): number {
  return endMoment(body, from!, leaves!, -1);
}

function drivenMoment(body: Body, { to, enters }: CableSketch): number {
  return endMoment(body, to, enters, 1);
}

function endMoment({ closure, sketch, rotations, senses }: Body, end: SketchEnd, housing: Vector, way: 1 | -1): number {
  if (isPin(sketch, end)) {
    const pin = closure.pinAt(end, rotations);
    return momentOf(closure, end.lever, pin, unit(minus(housing, pin)));
  }
  const { radius, wraps } = leverNamed(sketch, end.lever).drums[end.part]!;
  const arm = typeof radius === 'number' ? radius : profileRadius(radius, senses[end.lever]! * rotations[end.lever]!);
  return way * (wraps === 'counterclockwise' ? arm : -arm);
}

function effortOf(sketch: SprungSketch, closing: Balance['closing'], tension: Balance['tension']): Figure | undefined {
  const { pedal, pad, leverRatio } = sketch;
  const over = ({ value, scale }: Figure, by: number): Figure => ({ value: value / by, scale: scale / by });
  if (pedal.kind === 'cable') return over(tension[pedal.cable]!, leverRatio ?? 1);
  if (pad === undefined) return undefined;
  const { pivot, axis, arms } = leverNamed(sketch, pedal.lever);
  return over(closing[pedal.lever]!, size(square(minus(arms[pad]!, pivot), unit(axis))));
}

/** Least sine of an angle at which a rod, fork or inner cable works on an arm; a dead centre has none. NaN where a part does not stand. */
export function leastSine(closure: Closure, sketch: SprungSketch, rotations: Rotations): number {
  const sine = (end: SketchEnd, along: Vector): number => {
    const { pivot, axis } = leverNamed(sketch, end.lever);
    const arm = square(minus(closure.pinAt(end, rotations), pivot), unit(axis));
    return Math.abs(dot(unit(axis), cross(arm, along))) / size(arm);
  };
  const towards = (end: SketchEnd | undefined, place: Vector | undefined): readonly number[] =>
    end === undefined || place === undefined || !isPin(sketch, end) ? [] : [sine(end, unit(minus(place, closure.pinAt(end, rotations))))];
  const sines = sketch.joints.flatMap((joint): readonly number[] => {
    switch (joint.kind) {
      case 'rod':
        return [...towards(joint.from, closure.pinAt(joint.to, rotations)), ...towards(joint.to, closure.pinAt(joint.from, rotations))];
      case 'slot': {
        const { f, n } = forkAt(sketch, joint, rotations);
        const { pivot, axis } = leverNamed(sketch, joint.fork);
        const away = square(minus(closure.pinAt(joint.pin, rotations), pivot), unit(axis));
        return [sine(joint.pin, n), Math.abs(dot(f, away)) / size(away)];
      }
      case 'coupling':
        return [];
      case 'cable':
        return [...towards(joint.from, joint.leaves), ...towards(joint.to, joint.enters)];
    }
  });
  return Math.min(1, ...sines);
}
