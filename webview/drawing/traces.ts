/** The ways of pins over the whole travel: arcs about the axis of their lever, from its least to its greatest rotation. */
import { extentOf } from '../charts/scale.ts';
import type { Mark } from './mark.ts';
import { polyline } from './path.ts';
import type { Spot } from './projection.ts';
import { leverAt, type Sheet } from './sheet.ts';
import { armsOf } from './symbols/lever.ts';
import type { Point } from './turning.ts';

export function traceMarks(sheet: Sheet): readonly Mark[] {
  return sheet.picture.levers.flatMap((lever, index) => {
    if (!lever.isDriven) return [];
    const text = armsOf(sheet, index)
      .map(({ pin }) => polyline(traceOf(pin, lever.rotation)))
      .join('');
    const key = `lever:${leverAt(sheet, index).name}/trace`;
    return [{ key, layer: 'traces', tag: 'path', look: 'trace', moves: false, place: (_pose, pen) => pen.path(text) } satisfies Mark];
  });
}

/** Spots on the way of a point, mm; the point as drawn where its lever has no rotation anywhere. */
export function traceOf(point: Point, rotation: Float64Array): readonly Spot[] {
  const [least, greatest] = extentOf(rotation) ?? [0, 0];
  const steps = Math.min(Math.ceil((greatest - least) / STEP), MOST_STEPS);
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = steps === 0 ? least : least + ((greatest - least) * i) / steps;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    return { x: point.x + cos * point.px + sin * point.cx, y: point.y + cos * point.py + sin * point.cy };
  });
}

/** 3°: the chords lie at most 0.04 % of the radius within the arc. */
const STEP = Math.PI / 60;
/** Of six turns; one that goes round oftener has been everywhere. */
const MOST_STEPS = 720;
