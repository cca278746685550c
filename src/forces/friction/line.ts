/**
 * The line on which a joint's force works, with its friction. A joint that presses with w ≥ 0 the way s (+1 or −1) while its levers are
 * about to move the way d brings to its driven lever
 *     force  w (s G + d H)      moment about the driven lever's axis  w (s A + d A′)
 * and to its driving lever the opposite force, with the moment w (s B + d B′) about that lever's axis. G, A and B are what the joint does
 * without friction, H, A′ and B′ what friction adds: it turns round with the motion, not with the force.
 */
export interface JointLine {
  gx: number;
  gy: number;
  gz: number;
  hx: number;
  hy: number;
  hz: number;
  /** A and A′, m; without a dimension for a coupling, whose force is a torque. */
  arm: number;
  armFriction: number;
  /** B and B′. */
  back: number;
  backFriction: number;
}

export function createLine(): JointLine {
  return { gx: 0, gy: 0, gz: 0, hx: 0, hy: 0, hz: 0, arm: 0, armFriction: 0, back: 0, backFriction: 0 };
}

/** Fills A … B′ from G and H, which work at points of the two levers, without couples. */
export function fillArms(line: JointLine, driven: Grip, driver: Grip): void {
  const { gx, gy, gz, hx, hy, hz } = line;
  line.arm = gx * driven.tx + gy * driven.ty + gz * driven.tz;
  line.armFriction = hx * driven.tx + hy * driven.ty + hz * driven.tz;
  line.back = -(gx * driver.tx + gy * driver.ty + gz * driver.tz);
  line.backFriction = -(hx * driver.tx + hy * driver.ty + hz * driver.tz);
}

/** Where a force takes hold of a lever: a place P, m, and u × (P − pivot), which a force times is its moment about the axis. */
export interface Grip {
  x: number;
  y: number;
  z: number;
  tx: number;
  ty: number;
  tz: number;
}

export function createGrip(): Grip {
  return { x: 0, y: 0, z: 0, tx: 0, ty: 0, tz: 0 };
}

/** A pin fixed to a lever, as it stands. @param pin nine parameters @param c, s of the lever's rotation */
export function gripPin(p: Float64Array, pin: number, c: number, s: number, into: Grip): void {
  into.x = p[pin]! + c * p[pin + 3]! + s * p[pin + 6]!;
  into.y = p[pin + 1]! + c * p[pin + 4]! + s * p[pin + 7]!;
  into.z = p[pin + 2]! + c * p[pin + 5]! + s * p[pin + 8]!;
  into.tx = c * p[pin + 6]! - s * p[pin + 3]!;
  into.ty = c * p[pin + 7]! - s * p[pin + 4]!;
  into.tz = c * p[pin + 8]! - s * p[pin + 5]!;
}

/** A place that a lever carries for the moment. @param axis three parameters @param pivot three parameters */
export function gripPlace(p: Float64Array, axis: number, pivot: number, x: number, y: number, z: number, into: Grip): void {
  const rx = x - p[pivot]!;
  const ry = y - p[pivot + 1]!;
  const rz = z - p[pivot + 2]!;
  into.x = x;
  into.y = y;
  into.z = z;
  into.tx = p[axis + 1]! * rz - p[axis + 2]! * ry;
  into.ty = p[axis + 2]! * rx - p[axis]! * rz;
  into.tz = p[axis]! * ry - p[axis + 1]! * rx;
}
