/**
 * What a spring does, from where its ends stand and the figures of the file: forces, moments by r × F, and its energy. N, mm, N·mm.
 */
import type { Closure, Rotations } from '../../support/closure.ts';
import { leverNamed } from '../../support/sketch.ts';
import { cross, dot, minus, size, times, unit, type Vector } from '../../support/vector.ts';
import { isPlace, type LinearSketch, type SpringSketch } from './sprung.ts';

export interface Moment {
  readonly lever: string;
  /** About the lever's axis by the right-hand rule, N·mm. */
  readonly moment: number;
}

export interface SpringMoment extends Moment {
  /** What the same force would do square to its arm: by how much rounding counts. */
  readonly most: number;
}

export type Senses = Readonly<Record<string, number>>;

/** N·mm for a radian. */
export const perRadian = (perDegree: number): number => (perDegree * 180) / Math.PI;

/** On the lever on which it works first. */
export function springMoments(closure: Closure, senses: Senses, spring: SpringSketch, rotations: Rotations): readonly SpringMoment[] {
  if (spring.kind === 'torsion') {
    const { lever } = spring;
    const opening = senses[lever]! * rotations[lever]!;
    const turning = perRadian(spring.rate) * opening;
    return [{ lever, moment: -senses[lever]! * (spring.preload + turning), most: Math.abs(spring.preload) + Math.abs(turning) }];
  }
  const { from, to } = spring;
  const [start, end] = endsOf(closure, spring, rotations);
  const pull = pullOf(spring, size(minus(end, start)));
  const force = pull === 0 ? ([0, 0, 0] as const) : times(unit(minus(start, end)), pull);
  const on = (lever: string, place: Vector, at: Vector): SpringMoment => ({
    lever,
    moment: momentOf(closure, lever, place, at),
    most: size(at) * size(minus(place, leverNamed(closure.sketch, lever).pivot)),
  });
  return [on(to.lever, end, force), ...(isPlace(from) ? [] : [on(from.lever, start, times(force, -1))])];
}

/** About a lever's axis, of a force at a place: u · (r × F). */
export function momentOf(closure: Closure, lever: string, place: Vector, force: Vector): number {
  const { pivot, axis } = leverNamed(closure.sketch, lever);
  return dot(unit(axis), cross(minus(place, pivot), force));
}

/** N·mm; of an extension or compression spring nothing at its free length, of a torsion spring nothing as drawn. */
export function springEnergy(closure: Closure, senses: Senses, spring: SpringSketch, rotations: Rotations): number {
  if (spring.kind === 'torsion') {
    const opening = senses[spring.lever]! * rotations[spring.lever]!;
    return spring.preload * opening + (perRadian(spring.rate) * opening ** 2) / 2;
  }
  const [start, end] = endsOf(closure, spring, rotations);
  const stretched = size(minus(end, start)) - spring.freeLength;
  if (spring.kind === 'compression') return (spring.rate * Math.min(0, stretched) ** 2) / 2;
  const reached = Math.max(0, stretched);
  return (spring.initialTension ?? 0) * reached + (spring.rate * reached ** 2) / 2;
}

export function springLength(closure: Closure, spring: LinearSketch, rotations: Rotations): number {
  const [start, end] = endsOf(closure, spring, rotations);
  return size(minus(end, start));
}

function endsOf(closure: Closure, { from, to }: LinearSketch, rotations: Rotations): readonly [Vector, Vector] {
  return [isPlace(from) ? from : closure.pinAt(from, rotations), closure.pinAt(to, rotations)];
}

/** Force with which it draws its ends together, N. */
function pullOf(spring: LinearSketch, length: number): number {
  const stretched = length - spring.freeLength;
  if (spring.kind === 'compression') return Math.min(0, spring.rate * stretched);
  return stretched < 0 ? 0 : (spring.initialTension ?? 0) + spring.rate * stretched;
}
