/** Whether the front view says it all. */
import type { DrawnKeepOut, Picture, Triple } from '../protocol/picture.ts';

/** Every axis is square to the page, and all that is drawn has one height. */
export function liesInPlane({ levers, cables, slots, springs, keepOuts }: Omit<Picture, 'isPlanar'>): boolean {
  const isUpright = levers.every(({ axis }) => Math.hypot(axis[0], axis[1]) < ALONG);
  const ends = cables.flatMap(({ leaves, enters }) => (leaves === undefined ? [enters] : [leaves, enters]));
  if (!isUpright || ends.some(({ along }) => along !== undefined && Math.abs(along[2]) > ALONG)) return false;
  const anchors = springs.flatMap(({ form }) => (form.kind === 'torsion' || 'lever' in form.from ? [] : [form.from]));
  const heights = [
    ...levers.flatMap(({ pivot, arms, outline }) => [pivot[2], ...arms.map(({ at }) => at[2]!), ...outline.map((at) => at[2]!)]),
    ...ends.map(({ housing }) => housing[2]),
    ...slots.map(({ fork }) => fork.from[2]!),
    ...anchors.map((at) => at[2]),
    ...keepOuts.flatMap(({ shape }) => cornersOf(shape).map((at) => at[2])),
  ];
  return heights.every((height) => Math.abs(height - heights[0]!) < LEVEL);
}

function cornersOf(shape: DrawnKeepOut['shape']): readonly Triple[] {
  return shape.kind === 'circle' ? [shape.centre] : shape.corners;
}

/** Sine of the angle within which a direction counts as along or square. */
const ALONG = 1e-9;
/** m; a micron cannot be seen. */
const LEVEL = 1e-6;
