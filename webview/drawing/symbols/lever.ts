/** A lever: a bar from its pivot to each of its pins, with its outline where the file gives one, and the pad that the foot presses. */
import type { DrawnLever } from '../../../src/protocol/picture.ts';
import type { Mark, Pen, Symbol } from '../mark.ts';
import { bar, line, move, ring, segment } from '../path.ts';
import type { Pose } from '../pose.ts';
import { isEndOn, MM_PER_M } from '../projection.ts';
import { acrossAxis, leverAt, partOfLever, type Sheet } from '../sheet.ts';
import { fixedPoint, turningPoint, xAt, yAt, type Point } from '../turning.ts';
import { cross, scaled } from '../vector.ts';
import { drumMarks } from './drum.ts';
import { groundMarks } from './ground.ts';
import { stopMarks } from './stops.ts';

/** @param hasBore whether plates stand on its shaft: their bore's walls are its ground then */
export function leverSymbol(sheet: Sheet, index: number, hasBore: boolean): Symbol {
  const lever = leverAt(sheet, index);
  const key = `lever:${lever.name}`;
  const arms = armsOf(sheet, index);
  const pivot = fixedPoint(sheet.view, sheet.picture, lever.pivot);
  const bars = (pose: Pose, pen: Pen) => {
    let text = '';
    for (const { root, pin } of arms) text += move(pivot.x, pivot.y) + line(root.x, root.y) + line(xAt(pin, pose), yAt(pin, pose));
    pen.path(text);
    pen.stands(pose.stands[index] === 1);
  };
  const marks: Mark[] = [
    ...outlineMarks(sheet, key, index, arms),
    ...lever.drums.flatMap((drum) => drumMarks(sheet, key, index, drum)),
    ...stopMarks(sheet, key, lever, arms),
    { key: `${key}/bars`, layer: 'bodies', tag: 'path', look: lever.isDriven ? 'bar' : 'bar idle', moves: true, place: bars },
    ...(hasBore ? [] : groundMarks(sheet, key, lever.pivot, lever.axis)),
    ...arms.map(({ name, pin }) => pinMark(key, lever.name, name, pin)),
  ];
  const { pad } = sheet.picture.pedal;
  if (pad !== undefined && sheet.picture.pedal.lever === index)
    marks.push(padMark(key, lever, index, turningPoint(sheet.view, index, pad)));
  if (arms.length === 0 && lever.drums.length === 0 && !hasBore) marks.push(hubMark(sheet, key, lever, index));
  const rims = lever.drums.map((drum) => ({ centre: turningPoint(sheet.view, index, drum.mark), drum }));
  return {
    key,
    part: partOfLever(sheet.picture, index),
    note: undefined,
    marks,
    grip: (pose, pen) => {
      bars(pose, { ...pen, path: (text) => pen.path(`${text}${ring(pivot.x, pivot.y, 5 * pose.pixel)}${rims.map(rimOf).join('')}`) });
    },
    anchor: (_pose, out) => {
      out.x = pivot.x;
      out.y = pivot.y;
    },
  };
}

const rimOf = ({ centre }: { readonly centre: Point }): string => ring(centre.x, centre.y, Math.hypot(centre.px, centre.py, 1e-3));

export interface Arm {
  readonly name: string;
  /** Where the arm leaves the axis. */
  readonly root: Point;
  readonly pin: Point;
}

export const armsOf = (sheet: Sheet, index: number): readonly Arm[] =>
  leverAt(sheet, index).arms.map(({ name, at }) => ({
    name,
    root: fixedPoint(sheet.view, sheet.picture, [at[0]!, at[1]!, at[2]!]),
    pin: turningPoint(sheet.view, index, at),
  }));

/** A pin keeps its size on the screen. */
export function pinMark(key: string, lever: string, name: string, pin: Point): Mark {
  return {
    key: `${key}/pin/${name}`,
    layer: 'pins',
    tag: 'circle',
    look: 'pin',
    name: `${lever}.${name}`,
    moves: true,
    place: (pose, pen) => {
      pen.circle(xAt(pin, pose), yAt(pin, pose), PIN_PX * pose.pixel);
      pen.stands(pose.stands[pin.lever] === 1);
    },
  };
}

const PIN_PX = 3.5;

/** The shape given in the file, or bars of the breadth given, to scale; a breadth says nothing in a view in which the bar is foreshortened. */
function outlineMarks(sheet: Sheet, key: string, index: number, arms: readonly Arm[]): readonly Mark[] {
  const lever = leverAt(sheet, index);
  const corners = lever.outline.map((corner) => turningPoint(sheet.view, index, corner));
  const half = (MM_PER_M * (lever.width ?? 0)) / 2;
  if (corners.length === 0 && !(half > 0 && isEndOn(sheet.view, lever.axis))) return [];
  const place = (pose: Pose, pen: Pen) => {
    let text = '';
    if (corners.length > 0) {
      for (const [i, corner] of corners.entries()) text += (i === 0 ? move : line)(xAt(corner, pose), yAt(corner, pose));
      text += 'Z';
    } else {
      for (const { root, pin } of arms) text += bar(root.x, root.y, xAt(pin, pose), yAt(pin, pose), half);
    }
    pen.path(text);
    pen.stands(pose.stands[index] === 1);
  };
  // The fill lies over the edge's inner half, so that bars that cross are one body.
  return ['edge', 'fill'].map((look) => ({ key: `${key}/${look}`, layer: 'bodies', tag: 'path', look, moves: true, place }));
}

/** A short bar along the arm, on the side from which the foot presses: square to the arm. */
function padMark(key: string, lever: DrawnLever, index: number, pad: Point): Mark {
  return {
    key: `${key}/pad`,
    layer: 'pins',
    tag: 'path',
    look: 'pad',
    moves: true,
    place: (pose, pen) => {
      const c = pose.cos[index]!;
      const s = pose.sin[index]!;
      const x = xAt(pad, pose);
      const y = yAt(pad, pose);
      const along = { x: x - pad.x, y: y - pad.y };
      const ahead = { x: lever.sense * (c * pad.cx - s * pad.px), y: lever.sense * (c * pad.cy - s * pad.py) };
      const half = (PAD_PX * pose.pixel) / (Math.hypot(along.x, along.y) || 1);
      const back = (PAD_OFF_PX * pose.pixel) / (Math.hypot(ahead.x, ahead.y) || 1);
      const [mx, my] = [x - ahead.x * back, y - ahead.y * back];
      pen.path(segment(mx - along.x * half, my - along.y * half, mx + along.x * half, my + along.y * half));
      pen.stands(pose.stands[index] === 1);
    },
  };
}

const PAD_PX = 13;
const PAD_OFF_PX = 6;

/** What has neither arm nor drum shows its turning by a radius. */
function hubMark(sheet: Sheet, key: string, lever: DrawnLever, index: number): Mark {
  const radius = sheet.ornament / MM_PER_M;
  const { view } = sheet;
  const { up } = acrossAxis(lever.axis);
  const rim = turningPoint(view, index, [...lever.pivot, ...scaled(up, radius), ...scaled(cross(lever.axis, up), radius)]);
  return {
    key: `${key}/hub`,
    layer: 'bodies',
    tag: 'path',
    look: 'bar',
    moves: true,
    place: (pose, pen) => pen.path(segment(rim.x, rim.y, xAt(rim, pose), yAt(rim, pose))),
  };
}
