/**
 * From the frame of the file onto the paper and back. Views are square to the axes: front, seen against z; top, seen against y; side,
 * seen against x, from the right. The paper is in millimetres, x to the right and y down.
 */
import type { Triple } from '../../src/protocol/picture.ts';
import type { ViewDirection } from '../state.ts';
import { dot, plus, scaled } from './vector.ts';

/** Which way each direction of the paper points in the frame of the file; three directions of length 1, right × up = towards. */
export interface Projection {
  readonly right: Triple;
  readonly up: Triple;
  /** To the person who looks. */
  readonly towards: Triple;
}

/** A place on the paper, mm. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

export const PROJECTIONS: Readonly<Record<ViewDirection, Projection>> = {
  front: { right: [1, 0, 0], up: [0, 1, 0], towards: [0, 0, 1] },
  top: { right: [1, 0, 0], up: [0, 0, -1], towards: [0, 1, 0] },
  side: { right: [0, 0, -1], up: [0, 1, 0], towards: [1, 0, 0] },
};

export const MM_PER_M = 1000;

/** @param place m */
export const onPaper = (view: Projection, place: Triple): Spot => ({
  x: MM_PER_M * dot(view.right, place),
  y: -MM_PER_M * dot(view.up, place),
});

/** How far it stands towards the person who looks, m. */
export const depthOf = (view: Projection, place: Triple): number => dot(view.towards, place);

/** The place in space that is seen at a spot of the paper, at a depth in m; m. */
export function inSpace(view: Projection, spot: Spot, depth: number): Triple {
  const across = scaled(view.right, spot.x / MM_PER_M);
  return plus(plus(across, view.up, -spot.y / MM_PER_M), view.towards, depth);
}

/** Whether an axis is seen end on, so that what turns about it is seen in true shape. */
export const isEndOn = (view: Projection, axis: Triple): boolean => Math.abs(dot(view.towards, axis)) > END_ON;

/** Cosine of 0.8°: a circle of 100 mm is then seen 0.01 mm short. */
const END_ON = 0.9999;
