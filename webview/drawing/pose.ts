/**
 * How everything stands at one pedal travel: what each lever's rotation makes of a point fixed to it. Filled anew at each frame, without
 * allocating.
 */
import type { Picture } from '../../src/protocol/picture.ts';
import { between, figureAt, lastKnown, type Between } from './interpolate.ts';

export interface Pose {
  /** Cosine and sine of each lever's rotation; one more than there are levers, for what does not turn: 1 and 0. */
  readonly cos: Float64Array;
  readonly sin: Float64Array;
  /** rad; where a lever has none here, that of the station `known`. */
  readonly rotation: Float64Array;
  /** 1 where the lever has no rotation here and stands as it was assembled last. */
  readonly stands: Uint8Array;
  /** The last station at or before this travel where the lever has a rotation; -1 where it never has. */
  readonly known: Int32Array;
  /** Of the pedal, a fraction. */
  travel: number;
  /** Where among the stations. */
  at: Between;
  /** Size on the paper, mm, of what is a pixel in a large window: what symbols that do not grow with the drawing are measured by. */
  pixel: number;
  /** What stands about a shaft has little room: secondary things are drawn with fewer lines. */
  isSmall: boolean;
  readonly lastKnown: readonly Int32Array[];
}

/** Index that stands for what no lever carries. */
export const frameOf = (picture: Picture): number => picture.levers.length;

/** As drawn, until `poseAt` fills it. */
export function createPose(picture: Picture): Pose {
  const count = picture.levers.length + 1;
  return {
    cos: new Float64Array(count).fill(1),
    sin: new Float64Array(count),
    rotation: new Float64Array(count),
    stands: new Uint8Array(count),
    known: new Int32Array(count).fill(-1),
    travel: 0,
    at: { from: 0, share: 0 },
    pixel: 1,
    isSmall: false,
    lastKnown: picture.levers.map(({ rotation }) => lastKnown(rotation)),
  };
}

/** @param travel of the pedal, a fraction */
export function poseAt(pose: Pose, picture: Picture, travel: number): void {
  pose.travel = travel;
  pose.at = between(picture.stations, travel);
  for (let i = 0; i < picture.levers.length; i++) {
    const series = picture.levers[i]!.rotation;
    const known = pose.lastKnown[i]![pose.at.from] ?? -1;
    const here = figureAt(series, pose.at);
    const rotation = Number.isNaN(here) ? (series[known] ?? 0) : here;
    pose.known[i] = known;
    pose.stands[i] = Number.isNaN(here) ? 1 : 0;
    pose.rotation[i] = rotation;
    pose.cos[i] = Math.cos(rotation);
    pose.sin[i] = Math.sin(rotation);
  }
}
