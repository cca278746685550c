/** Figures for each station. */
import type { Pose } from '../kinematics/pose.ts';

/** One figure read off each pose. */
export function seriesOf(poses: readonly Pose[], read: (pose: Pose) => number): Float64Array {
  const series = new Float64Array(poses.length);
  // A mapping `Float64Array.from` takes several times as long.
  for (let i = 0; i < poses.length; i++) series[i] = read(poses[i]!);
  return series;
}
