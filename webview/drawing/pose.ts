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
  /** Where among the stations each lever has the rotation that it has here; undefined where all stand as at `travel`. */
  own: readonly Between[] | undefined;
}

/** Levers that move by themselves, not as the pedal has them. */
export interface Motion {
  /** s, rising. */
  readonly times: Float64Array;
  /** Of each lever at each time, rad; a straight line between two times. */
  readonly rotations: readonly Float64Array[];
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
    own: undefined,
  };
}

/** @param travel of the pedal, a fraction */
export function poseAt(pose: Pose, picture: Picture, travel: number): void {
  pose.travel = travel;
  pose.own = undefined;
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

/** @param time s; `pose.travel` is then NaN: the pedal need not stand where the rest does */
export function poseInMotion(pose: Pose, picture: Picture, { times, rotations }: Motion, time: number): void {
  const now = between(times, time);
  pose.travel = NaN;
  pose.at = { from: 0, share: 0 };
  pose.own = picture.levers.map((lever, i) => {
    const rotation = figureAt(rotations[i]!, now);
    pose.stands[i] = 0;
    pose.rotation[i] = rotation;
    pose.cos[i] = Math.cos(rotation);
    pose.sin[i] = Math.sin(rotation);
    return whereTurned(lever.rotation, rotation);
  });
}

/** The first place among the stations where a lever has turned so far; the nearest station where it never has. */
export function whereTurned(series: Float64Array, rotation: number): Between {
  let nearest = 0;
  for (let i = 0; i < series.length; i++) {
    const [here, next] = [series[i]!, series[i + 1]];
    if (next !== undefined && (here - rotation) * (next - rotation) < 0) return { from: i, share: (rotation - here) / (next - here) };
    const off = Math.abs(here - rotation);
    if (off === 0) return { from: i, share: 0 };
    if (off < Math.abs(series[nearest]! - rotation) || Number.isNaN(series[nearest])) nearest = i;
  }
  return { from: nearest, share: 0 };
}
