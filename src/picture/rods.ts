/** Rods and couplings. */
import type { DrawnCoupling, DrawnRod } from '../protocol/picture.ts';
import type { Drawable } from './drawable.ts';
import { pinPlace } from './turning.ts';

export function drawRods(drawable: Drawable): readonly DrawnRod[] {
  return drawable.joints.flatMap(({ joint, build }): DrawnRod[] => {
    if (joint.kind !== 'rod') return [];
    const from = pinPlace(drawable, build, joint.driver, joint.driverPin);
    const to = pinPlace(drawable, build, joint.driven, joint.drivenPin);
    return from === undefined || to === undefined ? [] : [{ name: joint.name, from, to, width: joint.source.width?.nominal }];
  });
}

export function drawCouplings({ joints, placeOf }: Drawable): readonly DrawnCoupling[] {
  return joints.flatMap(({ joint, build }): DrawnCoupling[] => {
    if (joint.kind !== 'coupling') return [];
    const [from, to, ratio] = [placeOf(joint.driver), placeOf(joint.driven), build.parameters[joint.ratio]!];
    return from === undefined || to === undefined || !Number.isFinite(ratio) ? [] : [{ name: joint.name, from, to, ratio }];
  });
}
