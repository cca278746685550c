/** What every symbol needs to know of the drawing that it is part of. */
import type { DrawnLever, Picture, Triple } from '../../src/protocol/picture.ts';
import type { PartKey } from '../../src/protocol/report.ts';
import type { Pose } from './pose.ts';
import { isEndOn, onPaper, type Projection, type Spot } from './projection.ts';
import { cross, squareTo, unit } from './vector.ts';

export interface Sheet {
  readonly picture: Picture;
  readonly view: Projection;
  /** Radius of what is drawn about a shaft without a size of its own (sensor's arc, torsion spring), mm. */
  readonly ornament: number;
}

/** The lever of an index that the picture gave. */
export const leverAt = (sheet: Sheet, index: number): DrawnLever => sheet.picture.levers[index]!;

/** What a lever is called in the load path: the pedal's lever is the pedal. */
export const partOfLever = (picture: Picture, index: number): PartKey =>
  picture.pedal.lever === index ? { kind: 'pedal', name: 'pedal' } : { kind: 'lever', name: picture.levers[index]!.name };

/** One text for one part, however it is called: the pedal, its lever and the cable that is pulled in its place are one. */
export function keyOfPart(picture: Picture, part: PartKey): string {
  const { lever } = picture.pedal;
  if (part.kind === 'pedal') {
    const pulled = lever === undefined ? picture.cables.find(({ leaves }) => leaves === undefined) : undefined;
    return pulled === undefined ? 'pedal' : `cable:${pulled.name}`;
  }
  if (part.kind === 'lever' && lever !== undefined && picture.levers[lever]?.name === part.name) return 'pedal';
  return `${part.kind}:${part.name}`;
}

/** Two directions square to a lever's axis and to each other, of length 1: `up` as upright as can be; a quarter turn about the axis on. */
export function acrossAxis(axis: Triple): { readonly up: Triple; readonly side: Triple } {
  const up = unit(squareTo([0, 1, 0], axis)) ?? unit(squareTo([0, 0, 1], axis))!;
  return { up, side: cross(axis, up) };
}

/** A circle about a lever's axis as the paper sees it, and points on it by their angle from `up`, by the right-hand rule. */
export interface Dial {
  readonly centre: Spot;
  /** What one mm of `up` and of `side` is on the paper. */
  readonly up: Spot;
  readonly side: Spot;
  readonly isTrue: boolean;
}

export function dialAbout(sheet: Sheet, pivot: Triple, axis: Triple): Dial {
  const { up, side } = acrossAxis(axis);
  const mm = (way: Triple): Spot => {
    const { x, y } = onPaper(sheet.view, way);
    return { x: x / 1000, y: y / 1000 };
  };
  return { centre: onPaper(sheet.view, pivot), up: mm(up), side: mm(side), isTrue: isEndOn(sheet.view, axis) };
}

/** @param angle from `up`, rad; @param radius mm */
export function onDial(dial: Dial, angle: number, radius: number): Spot {
  const c = Math.cos(angle) * radius;
  const s = Math.sin(angle) * radius;
  return { x: dial.centre.x + c * dial.up.x + s * dial.side.x, y: dial.centre.y + c * dial.up.y + s * dial.side.y };
}

/** Spots along a circle about the axis; rad, mm. */
export function alongDial(dial: Dial, from: number, to: number, radius: number): readonly Spot[] {
  const steps = Math.max(2, Math.ceil(Math.abs(to - from) / STEP));
  return Array.from({ length: steps + 1 }, (_, i) => onDial(dial, from + ((to - from) * i) / steps, radius));
}

/** 6°: a circle drawn by its chords is short by 0.14 % at their middle. */
const STEP = Math.PI / 30;

/** Anchor of what stands still. */
export const anchoredAt =
  ({ x, y }: Spot) =>
  (_pose: Pose, out: { x: number; y: number }): void => {
    out.x = x;
    out.y = y;
  };
