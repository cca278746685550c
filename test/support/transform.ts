/** A sketch turned, moved, scaled or mirrored as a whole, or written in another order. */
import type { Sketch, SketchDrum, Turn } from './sketch.ts';
import { plus, times, turned, unit, type Vector } from './vector.ts';

interface Change {
  readonly place: (at: Vector) => Vector;
  readonly direction: (along: Vector) => Vector;
  readonly scale: number;
  readonly mirrored: boolean;
}

/** Turned by `angle`, rad, about `axis` through the origin, then moved. */
export function turnedAndMoved(sketch: Sketch, axis: Vector, angle: number, by: Vector): Sketch {
  const direction = (along: Vector): Vector => turned(along, unit(axis), angle);
  return changed(sketch, { place: (at) => plus(direction(at), by), direction, scale: 1, mirrored: false });
}

export function scaled(sketch: Sketch, scale: number): Sketch {
  return changed(sketch, { place: (at) => times(at, scale), direction: (along) => along, scale, mirrored: false });
}

/** Mirrored in the plane x = 0: every rotation becomes its opposite. */
export function mirrored(sketch: Sketch): Sketch {
  const direction = ([x, y, z]: Vector): Vector => [-x, y, z];
  return changed(sketch, { place: direction, direction, scale: 1, mirrored: true });
}

/** The same parts in the opposite order. */
export function reordered({ levers, joints, pedal }: Sketch): Sketch {
  return { levers: [...levers].reverse(), joints: [...joints].reverse(), pedal };
}

function changed({ levers, joints, pedal }: Sketch, { place, direction, scale, mirrored: flipped }: Change): Sketch {
  const way = (turn: Turn): Turn => (!flipped ? turn : turn === 'clockwise' ? 'counterclockwise' : 'clockwise');
  const sign = flipped ? -1 : 1;
  const drum = ({ radius, wraps }: SketchDrum): SketchDrum => ({
    radius: typeof radius === 'number' ? radius * scale : radius.map(([opening, each]) => [opening, each * scale] as const),
    wraps: way(wraps),
  });
  const each = <From, To>(parts: Readonly<Record<string, From>>, change: (part: From) => To): Record<string, To> =>
    Object.fromEntries(Object.entries(parts).map(([name, part]) => [name, change(part)]));
  return {
    levers: levers.map((lever) => ({
      ...lever,
      pivot: place(lever.pivot),
      axis: direction(lever.axis),
      reference: direction(lever.reference),
      ...(lever.opens && { opens: way(lever.opens) }),
      arms: each(lever.arms, place),
      drums: each(lever.drums, drum),
    })),
    joints: joints.map((joint) => {
      if (joint.kind === 'rod') return joint.length === undefined ? joint : { ...joint, length: joint.length * scale };
      if (joint.kind === 'slot') return { ...joint, angle: sign * joint.angle, offset: sign * scale * joint.offset };
      if (joint.kind === 'coupling') return joint;
      return { ...joint, ...(joint.leaves && { leaves: place(joint.leaves) }), enters: place(joint.enters), slack: joint.slack * scale };
    }),
    pedal: pedal.kind === 'cable' ? { ...pedal, pull: pedal.pull * scale } : { ...pedal, opens: way(pedal.opens) },
  };
}
