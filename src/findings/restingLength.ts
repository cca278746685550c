/** The length of a rod at which a lever that it holds open just comes to rest, by halving between its length and that as drawn. */
import { decideBranches } from '../kinematics/branches.ts';
import { createBounds, type Build } from '../kinematics/build.ts';
import type { LeverModel, RodJoint } from '../kinematics/model.ts';
import { createPose } from '../kinematics/pose.ts';
import { turnedAt } from '../kinematics/poseGeometry.ts';
import { settleRest } from '../kinematics/rest.ts';
import { minus } from '../numeric/vector.ts';
import type { Study } from './study.ts';

/** m; undefined where the lever does not come to rest either with the rod as drawn. @param opening rad; at rest or below counts as closed */
export function restingLength(
  { travel: { build, mechanism } }: Study,
  rod: RodJoint,
  lever: LeverModel,
  opening: number,
): number | undefined {
  const drawn = createPose(mechanism);
  const isClosed = (length: number): boolean => {
    const { bounds } = restedWith(build, rod, length);
    return mechanism.senses[lever.index]! * bounds.restRotation[lever.index]! <= opening;
  };
  let open = build.parameters[rod.length]!;
  let closed = Math.hypot(...minus(turnedAt(build, drawn, rod.driven, rod.drivenPin), turnedAt(build, drawn, rod.driver, rod.driverPin)));
  if (isClosed(open) || !isClosed(closed)) return undefined;
  for (let halved = 0; halved < HALVINGS; halved++) {
    const middle = (open + closed) / 2;
    if (isClosed(middle)) closed = middle;
    else open = middle;
  }
  return closed;
}

/** The build with a rod of another length, settled at rest. @param length m */
export function restedWith(build: Build, rod: RodJoint, length: number): Build {
  const { mechanism } = build;
  const trial: Build = { ...build, parameters: Float64Array.from(build.parameters), bounds: createBounds(mechanism) };
  trial.parameters[rod.length] = length;
  decideBranches(mechanism, trial.parameters);
  settleRest(trial);
  return trial;
}

/** Down to a micrometre of a metre and further. */
const HALVINGS = 30;
