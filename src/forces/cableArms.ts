/**
 * How far a turn of a lever draws on its cable, m a radian: the arm on which the cable's tension works.
 *
 * Pin: e·t / |e|, with e from the housing end to the pin and t the pin's derivative by rotation. Drum: its effective radius.
 */
import type { Build } from '../kinematics/build.ts';
import { drumAt, type DrumPoint } from '../kinematics/joints/drum.ts';
import type { CableEndModel, CableJoint } from '../kinematics/model.ts';
import type { Pose } from '../kinematics/pose.ts';

/** d(pull) / d(rotation) of the driving lever; 1 where the pedal is the cable itself. */
export function pullArm(build: Build, pose: Pose, { driver, driverEnd }: CableJoint): number {
  return driver === undefined || driverEnd === undefined ? 1 : armOf(build, pose, driver, driverEnd);
}

/** d(what has reached the driven end) / d(rotation) of the driven lever. */
export function passedArm(build: Build, pose: Pose, { driven, drivenEnd }: CableJoint): number {
  // A pull brings a driven pin nearer to its housing end, and turns a drum its way.
  const arm = armOf(build, pose, driven, drivenEnd);
  return drivenEnd.kind === 'pin' ? -arm : arm;
}

function armOf(build: Build, pose: Pose, lever: number, end: CableEndModel): number {
  const { mechanism, parameters: p } = build;
  const rotation = pose.rotation[lever]!;
  if (Number.isNaN(rotation)) return NaN;
  if (end.kind === 'drum') {
    const sense = mechanism.senses[lever]!;
    drumAt(end.drum, p, sense * rotation, point, sense * pose.rate[lever]!);
    return end.drum.wraps * point.radius;
  }
  const { pin, housing } = end;
  const c = pose.cosine[lever]!;
  const s = pose.sine[lever]!;
  let square = 0;
  let along = 0;
  for (let axis = 0; axis < 3; axis++) {
    const perp = p[pin + 3 + axis]!;
    const cross = p[pin + 6 + axis]!;
    const e = p[pin + axis]! + c * perp + s * cross - p[housing + axis]!;
    square += e * e;
    along += e * (c * cross - s * perp);
  }
  return along / Math.sqrt(square);
}

const point: DrumPoint = { radius: 0, slope: 0, integral: 0 };
