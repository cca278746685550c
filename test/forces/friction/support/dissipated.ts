/**
 * Power that friction takes while a linkage moves, by the speed of each place that rubs: from the drawn places and the rotations, with the
 * forces given. Units of a throttle file: mm, N, N·mm; a speed is for the whole pedal travel at once.
 */
import type { Closure, Rotations } from '../../../support/closure.ts';
import { leverNamed, type SketchEnd, type SketchJoint } from '../../../support/sketch.ts';
import { cross, dot, minus, size, square, times, turned, unit, type Vector } from '../../../support/vector.ts';
import type { SprungSketch } from '../../support/sprung.ts';
import type { Rubbing } from './rubbing.ts';

export interface Forces {
  /** Load on a lever's bearing. */
  readonly bearing: (lever: string) => number;
  /** In a rod, or of a fork on its pin along its normal. */
  readonly joint: (name: string) => number;
  /** Tensions before and behind the bends of a cable's housing, and how fast it moves. */
  readonly cable: (name: string) => { readonly before: number; readonly behind: number; readonly speed: number };
}

/** @param rates of each lever's rotation */
export function dissipated(
  closure: Closure,
  sketch: SprungSketch,
  { drag, bearing, ends, slot }: Rubbing,
  rotations: Rotations,
  rates: Rotations,
  forces: Forces,
): number {
  const circle = (diameter: number, coefficient: number): number => (diameter / 2) * Math.sin(Math.atan(coefficient));
  const turning = (lever: string): Vector => times(unit(leverNamed(sketch, lever).axis), rates[lever]!);
  const speedOf = (lever: string, place: Vector): Vector => cross(turning(lever), minus(place, leverNamed(sketch, lever).pivot));
  const inBearings = sketch.levers.map(
    ({ name }) => (drag + circle(bearing.diameter, bearing.friction) * forces.bearing(name)) * Math.abs(rates[name]!),
  );
  const inRod = (name: string, from: SketchEnd, to: SketchEnd): number => {
    const [start, end] = [closure.pinAt(from, rotations), closure.pinAt(to, rotations)];
    const along = minus(end, start);
    const swing = times(cross(along, minus(speedOf(to.lever, end), speedOf(from.lever, start))), 1 / dot(along, along));
    const e = unit(along);
    const [one, other] = [minus(turning(from.lever), swing), minus(turning(to.lever), swing)];
    const spun = (spin: number): readonly Vector[] => [one, other].map((each) => minus(each, times(e, spin)));
    // The rod spins so that the couples about its own line are in balance: the less there is of them, the faster it goes.
    let [low, high] = [-1e3, 1e3];
    for (let i = 0; i < 200; i++) {
      const spin = (low + high) / 2;
      const couple = spun(spin).reduce((sum, each) => sum + (size(each) === 0 ? 0 : dot(each, e) / size(each)), 0);
      if (couple > 0) low = spin;
      else high = spin;
    }
    return circle(ends.pin, ends.friction) * Math.abs(forces.joint(name)) * spun(low).reduce((sum, each) => sum + size(each), 0);
  };
  const inJoint = (joint: SketchJoint): number => {
    switch (joint.kind) {
      case 'rod':
        return inRod(joint.name, joint.from, joint.to);
      case 'slot': {
        const pin = closure.pinAt(joint.pin, rotations);
        const slides = minus(speedOf(joint.pin.lever, pin), speedOf(joint.fork, pin));
        const { axis, reference } = leverNamed(sketch, joint.fork);
        const u = unit(axis);
        const f = turned(unit(square(reference, u)), u, (joint.angle * Math.PI) / 180 + rotations[joint.fork]!);
        return slot * Math.abs(forces.joint(joint.name)) * size(square(slides, cross(u, f)));
      }
      case 'cable': {
        const { before, behind, speed } = forces.cable(joint.name);
        return Math.abs((before - behind) * speed);
      }
      case 'coupling':
        return 0;
    }
  };
  return [...inBearings, ...sketch.joints.map(inJoint)].reduce((sum, each) => sum + each, 0);
}
