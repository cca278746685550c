/**
 * A coupling turns one lever by a ratio of another: meshing gears, a dog, a common shaft.
 *
 * Stiff (no lag, both ways): φ₂ = ratio · φ₁. With lag or one way: φ₂ − rest₂ = ratio · (φ₁ − rest₁ beyond lag), and a
 * one-way coupling passes on what opens and nothing else.
 */
import type { Bounds } from '../build.ts';
import type { CouplingJoint, Mechanism } from '../model.ts';
import type { Pose } from '../pose.ts';

export function moveCoupling(mechanism: Mechanism, joint: CouplingJoint, p: Float64Array, bounds: Bounds, pose: Pose): void {
  const { driver, driven } = joint;
  const ratio = p[joint.ratio]!;
  let rotation = ratio * pose.rotation[driver]!;
  let gain = ratio;
  if (joint.oneWay || joint.lag !== undefined) {
    const since = pose.rotation[driver]! - bounds.restRotation[driver]!;
    const beyond = beyondLag(since, joint.lag === undefined ? 0 : p[joint.lag]!, pose.rate[driver]!);
    const passes =
      !Number.isNaN(beyond) &&
      beyond !== WITHIN &&
      !(joint.oneWay && ratio * pushes(beyond, pose.rate[driver]!) * mechanism.senses[driven]! < 0);
    gain = passes ? ratio : 0;
    rotation = bounds.restRotation[driven]! + (passes ? ratio * beyond : 0 * since);
  }
  pose.rotation[driven] = rotation;
  pose.cosine[driven] = Math.cos(rotation);
  pose.sine[driven] = Math.sin(rotation);
  pose.rate[driven] = gain === 0 ? 0 : gain * pose.rate[driver]!;
  pose.curvature[driven] = gain === 0 ? 0 : gain * pose.curvature[driver]!;
}

/** Marks a rotation within the lag. No rotation beyond a lag is infinite. */
const WITHIN = Infinity;

/** What of a rotation lies beyond a lag either way; at its edge it counts as beyond where it goes on that way. */
function beyondLag(since: number, lag: number, rate: number): number {
  if (Number.isNaN(since)) return NaN;
  if (since > lag + MET || (since > lag - MET && rate > 0)) return since - lag;
  if (since < -lag - MET || (since < -lag + MET && rate < 0)) return since + lag;
  return WITHIN;
}

/** rad; this near to the edge of a lag counts as on it. */
const MET = 1e-12;

/** Sign of what is passed on; at the very edge, the sign of what comes next. */
function pushes(beyond: number, rate: number): number {
  return Math.abs(beyond) <= MET ? rate : beyond;
}
