/**
 * What is drawn, as data: each mark is one element of the drawing, with a function that says its geometry at a pose. Whoever holds a pen can
 * draw it: the page into its SVG, a test into nothing.
 */
import type { PartKey } from '../../src/protocol/report.ts';
import type { Pose } from './pose.ts';

/** Writes the geometry of one mark, mm of the paper. */
export interface Pen {
  /** Nothing is drawn by an empty text. */
  path(d: string): void;
  circle(x: number, y: number, radius: number): void;
  /** Whether it stands as it was assembled last, and is dashed. */
  stands(yes: boolean): void;
}

/** From the back to the front. */
export const LAYERS = ['keepOuts', 'other', 'outlines', 'traces', 'plates', 'ground', 'cables', 'bodies', 'links', 'pins', 'gaps'] as const;
export type Layer = (typeof LAYERS)[number];

export interface Mark {
  /** Of its own in the drawing, and the same in the next picture of the same file. */
  readonly key: string;
  readonly layer: Layer;
  readonly tag: 'path' | 'circle';
  /** Words of its style in `drawing.css`. */
  readonly look: string;
  /** `data-name`: the place of the file that it shows, e.g. `crank.out`; undefined where it shows none. */
  readonly name?: string;
  /** What it is, where a viewer of the saved drawing asks; undefined where the next mark says so. */
  readonly title?: string;
  /** Keys of parts, as `keyOfPart` says, with which it lights up though it belongs to none of them. */
  readonly lights?: readonly string[];
  /** Whether its geometry follows the pedal. What does not is placed when the picture or the zoom changes. */
  readonly moves: boolean;
  /** All that its geometry follows from besides `pose.pixel`: while these are the same it stands where it did. Undefined where that is not told. */
  readonly from?: readonly number[];
  readonly place: (pose: Pose, pen: Pen) => void;
}

/** One thing of the file, as it is drawn. */
export interface Symbol {
  /** Of its own in the drawing. */
  readonly key: string;
  /** What it is in the report; undefined for what is not part of it. */
  readonly part: PartKey | undefined;
  /** What is schematic about it, for its title; undefined where all is to scale. */
  readonly note: string | undefined;
  readonly marks: readonly Mark[];
  /** Where the pointer meets it; the same geometry that its marks have. Undefined where it cannot be chosen. */
  readonly grip: ((pose: Pose, pen: Pen) => void) | undefined;
  /** Where its name stands: x, y in mm into `out`. NaN where it has no place. */
  readonly anchor: (pose: Pose, out: { x: number; y: number }) => void;
}
