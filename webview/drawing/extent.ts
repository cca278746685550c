/** How much of the paper the drawing takes over its whole travel, mm. */
import type { Picture, Triple } from '../../src/protocol/picture.ts';
import { onPaper, MM_PER_M, type Projection } from './projection.ts';
import { housingSpots } from './symbols/cable.ts';
import { outlineOf } from './symbols/keepOuts.ts';
import { traceOf } from './traces.ts';
import { isPinPlace, pointOf, turningPoint, type Point } from './turning.ts';

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Of parts without any, a square about the origin. */
export function extentOf(picture: Picture, view: Projection): Box {
  const box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
  const take = (x: number, y: number, around = 0) => {
    if (!Number.isFinite(x) || !Number.isFinite(y)) return;
    box.left = Math.min(box.left, x - around);
    box.right = Math.max(box.right, x + around);
    box.top = Math.min(box.top, y - around);
    box.bottom = Math.max(box.bottom, y + around);
  };
  const fixed = (place: Triple, around = 0) => {
    const { x, y } = onPaper(view, place);
    take(x, y, around);
  };
  const turning = (point: Point) => {
    for (const { x, y } of traceOf(point, picture.levers[point.lever]!.rotation)) take(x, y);
  };
  for (const [index, lever] of picture.levers.entries()) {
    const drums = lever.drums.map(({ mark }) => Math.hypot(mark[3]!, mark[4]!, mark[5]!));
    fixed(lever.pivot, MM_PER_M * Math.max(0, ...drums));
    for (const { at } of lever.arms) turning(turningPoint(view, index, at));
    for (const corner of lever.outline) turning(turningPoint(view, index, corner));
  }
  const sheet = { picture, view, ornament: 1 };
  for (const cable of picture.cables) for (const { x, y } of housingSpots(sheet, cable)) take(x, y);
  for (const { fork } of picture.slots) for (const at of [fork.from, fork.to]) turning(turningPoint(view, fork.lever, at));
  for (const { lever, bore } of picture.plates) fixed(picture.levers[lever]!.pivot, 0.8 * MM_PER_M * bore);
  for (const { form } of picture.springs) {
    if (form.kind === 'torsion') continue;
    if (isPinPlace(form.from)) turning(pointOf(view, picture, form.from));
    else fixed(form.from);
    turning(pointOf(view, picture, form.to));
  }
  for (const keepOut of picture.keepOuts) for (const corner of outlineOf(keepOut, keepOut.clearance)) fixed(corner);
  return box.left > box.right ? EMPTY : box;
}

const EMPTY: Box = { left: -50, top: -50, right: 50, bottom: 50 };
