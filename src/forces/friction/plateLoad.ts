/**
 * What the manifold's vacuum presses the shaft of the plates with: the pressure difference on what a plate still shuts of its bore,
 *     Q = Δp (π D²/4 − A(ψ))
 * A force on a projected area, along the bore (statics of fluids, from memory). Δp is taken to stay what it is across the closed plate,
 * though it falls as the plates open: on the safe side, and exact where it matters most. Which way the bores lie the file does not say, so
 * Q is added to the size of the bearing's other load, as if both pulled the same way.
 */
import { PLACE_UNIT_SI } from '../../definition/dimensions.ts';
import type { PlatesModel } from '../../kinematics/attached.ts';
import type { Build } from '../../kinematics/build.ts';
import type { Pose } from '../../kinematics/pose.ts';
import { areaAt } from '../../plates/platesAt.ts';

/**
 * Pa, where the file gives none: an engine held by its closed throttle leaves about 30 kPa of the air's 100 in the manifold. Common
 * practice, no source.
 */
export const USUAL_VACUUM = 70 * PLACE_UNIT_SI.pressure;

/** On the shaft by all plates of a set, N. @param vacuum parameter of the pressure difference; the usual one where undefined */
export function plateLoad(build: Build, pose: Pose, plates: PlatesModel, vacuum: number | undefined): number {
  const { parameters: p } = build;
  const bore = p[plates.bore]!;
  const shut = (Math.PI / 4) * bore * bore - areaAt(build, pose, plates);
  return p[plates.count]! * (vacuum === undefined ? USUAL_VACUUM : p[vacuum]!) * shut;
}
