/** What the parts of the dynamics share: how all moves, and the forces that gather on the levers as a trial motion is put to them. */
import type { Build } from '../../kinematics/build.ts';
import type { Lines } from '../friction/lines.ts';
import { addForce, type Loads } from '../friction/loads.ts';
import type { Bodies } from './bodies.ts';
import type { Moving } from './gaps.ts';

export interface Acting {
  readonly build: Build;
  readonly bodies: Bodies;
  readonly moving: Moving;
  /** As the linkage stands. */
  readonly lines: Lines;
  /** On each lever. */
  readonly loads: Loads;
  /** By body: +1 opening, −1 closing, 0 where it stands. */
  readonly ways: Int8Array;
  /** What all the forces so far bring, W: what of it is left at the end, friction takes. */
  readonly rubbed: { power: number };
}

/** A force on a lever, N, and its moment about the lever's axis, N·m. */
export function putForce({ loads }: Acting, lever: number, x: number, y: number, z: number, moment: number): void {
  loads.moment[lever] = loads.moment[lever]! + moment;
  addForce(loads, lever, x, y, z);
}
