/** How long a rod is whose length the file leaves as drawn: it goes along with the arms that the car has. */
import type { Build } from '../../kinematics/build.ts';

/** m; undefined where the dimension is not what is added to such a length. @param index into the mechanism's dimensions */
export function drawnRodLength({ mechanism, parameters }: Build, index: number): number | undefined {
  if (mechanism.dimensions[index]?.kind !== 'as-drawn') return undefined;
  const joint = mechanism.joints.find((each) => each.kind === 'rod' && each.lengthDimension === index);
  return joint?.kind === 'rod' ? parameters[joint.length] : undefined;
}
