/**
 * A pin that slides in a fork: the fork presses it with w along its normal n, and rubs against its sliding v with μ w:
 *     force on the pin  w (s n − d μ v/|v|)
 * v is how the pin moves against the fork there, along the slot and, between levers whose axes are not parallel, across it. Both forces act
 * at the pin's centre: a pin of any thickness would add its radius to the arm of μ w, and the format gives none.
 */
import { fillArms, type Grip, type JointLine } from './line.ts';
import type { Turning } from './rodLine.ts';

/**
 * @param normal n, of length 1 @param pin, fork the pin's place as each lever holds it @param isFork whether the fork is driven
 */
export function fillSlotLine(
  coefficient: number,
  normal: Readonly<Record<'x' | 'y' | 'z', number>>,
  pin: Grip,
  fork: Grip,
  pinTurning: Turning,
  forkTurning: Turning,
  isFork: boolean,
  line: JointLine,
): void {
  const to = isFork ? -1 : 1;
  line.gx = to * normal.x;
  line.gy = to * normal.y;
  line.gz = to * normal.z;
  let vx = pinTurning.rate * pin.tx - forkTurning.rate * fork.tx;
  let vy = pinTurning.rate * pin.ty - forkTurning.rate * fork.ty;
  let vz = pinTurning.rate * pin.tz - forkTurning.rate * fork.tz;
  // What rounding left of the speed into the fork's wall.
  const into = vx * normal.x + vy * normal.y + vz * normal.z;
  vx -= into * normal.x;
  vy -= into * normal.y;
  vz -= into * normal.z;
  const speed = Math.sqrt(vx * vx + vy * vy + vz * vz);
  const rubs = coefficient > 0 && speed > 0 ? (-to * coefficient) / speed : 0;
  line.hx = rubs * vx;
  line.hy = rubs * vy;
  line.hz = rubs * vz;
  fillArms(line, isFork ? fork : pin, isFork ? pin : fork);
}
