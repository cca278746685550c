/**
 * One spatial loop, position and ratio: the engine against a flat, hand-inlined closed form in the same run. Budget: 1.5 times.
 * Beside it, for comparison, the same by root finding with mathjs and by stepping bodies in planck.
 */
import { lusolve } from 'mathjs';
import { CircleShape, DistanceJoint, RevoluteJoint, Vec2, World } from 'planck';
import { advance } from '../../src/kinematics/advance.ts';
import { createPose } from '../../src/kinematics/pose.ts';
import { solveText } from '../support/solveSketch.ts';
import { inTurns, nanosecondsPerCall, report } from './stopwatch.ts';

const BUDGET = 1.5;
const TRAVEL = (60 * Math.PI) / 180;

const { build, mechanism } = solveText(`format: 1
levers:
  foot: {pivot: [0, 0, 0], axis: [0.1, -0.2, 1], arms: {pin: {radius: 40 mm, angle: 80 deg, offset: 4 mm}}}
  driven: {pivot: [150, 20, 30], axis: [-0.3, 0.15, 1], arms: {pin: {radius: 55 mm, angle: 100 deg}}}
pedal: {lever: foot, opens: clockwise, travel: 60 deg}
rods:
  link: {from: foot.pin, to: driven.pin}
`);

const p = build.parameters;
const joint = mechanism.joints[0]!;
if (joint.kind !== 'rod') throw new Error('The benchmark wants a rod');
const from = [...p.subarray(joint.driverPin, joint.driverPin + 9)];
const to = [...p.subarray(joint.drivenPin, joint.drivenPin + 9)];
const length = p[joint.length]!;
const side = p[joint.side]!;
const STATIONS = 1024;
const sink = new Float64Array(2);

/** The figures of the loop one after the other, as a flat form reads them: both pins, the length and the side. */
const figures = Float64Array.from([...from, ...to, length, side]);
const out = new Float64Array(2);

/** The flat form: written out by hand for this one kind of loop, its figures from one array, what it finds into another. */
function station(f: Float64Array, angle: number, into: Float64Array): void {
  const c1 = Math.cos(angle);
  const s1 = Math.sin(angle);
  const dx = f[0]! + c1 * f[3]! + s1 * f[6]! - f[9]!;
  const dy = f[1]! + c1 * f[4]! + s1 * f[7]! - f[10]!;
  const dz = f[2]! + c1 * f[5]! + s1 * f[8]! - f[11]!;
  const px = f[12]!;
  const py = f[13]!;
  const pz = f[14]!;
  const qx = f[15]!;
  const qy = f[16]!;
  const qz = f[17]!;
  const a = px * dx + py * dy + pz * dz;
  const b = qx * dx + qy * dy + qz * dz;
  const c = 0.5 * (px * px + py * py + pz * pz + dx * dx + dy * dy + dz * dz - f[18]! * f[18]!);
  const h = a * a + b * b;
  const s = f[19]! * Math.sqrt(h - c * c);
  const c2 = (a * c + b * s) / h;
  const s2 = (b * c - a * s) / h;
  const ex = c2 * px + s2 * qx - dx;
  const ey = c2 * py + s2 * qy - dy;
  const ez = c2 * pz + s2 * qz - dz;
  const along1 = ex * (c1 * f[6]! - s1 * f[3]!) + ey * (c1 * f[7]! - s1 * f[4]!) + ez * (c1 * f[8]! - s1 * f[5]!);
  into[0] = Math.atan2(s2, c2);
  into[1] = -along1 / s;
}

function flat(calls: number): void {
  let rotations = 0;
  let ratios = 0;
  for (let i = 0; i < calls; i++) {
    station(figures, (-TRAVEL * (i & (STATIONS - 1))) / STATIONS, out);
    rotations += out[0]!;
    ratios += out[1]!;
  }
  sink[0] = rotations;
  sink[1] = ratios;
}

/** The same with every figure in a local variable and nothing stored: what no engine can be, the floor. */
function floor(): (calls: number) => void {
  const [b1x, b1y, b1z, p1x, p1y, p1z, q1x, q1y, q1z] = from as [number, number, number, number, number, number, number, number, number];
  const [b2x, b2y, b2z, p2x, p2y, p2z, q2x, q2y, q2z] = to as [number, number, number, number, number, number, number, number, number];
  const constant = p2x * p2x + p2y * p2y + p2z * p2z - length * length;
  return (calls) => {
    let rotations = 0;
    let ratios = 0;
    for (let i = 0; i < calls; i++) {
      const angle = (-TRAVEL * (i & (STATIONS - 1))) / STATIONS;
      const c1 = Math.cos(angle);
      const s1 = Math.sin(angle);
      const dx = b1x + c1 * p1x + s1 * q1x - b2x;
      const dy = b1y + c1 * p1y + s1 * q1y - b2y;
      const dz = b1z + c1 * p1z + s1 * q1z - b2z;
      const a = p2x * dx + p2y * dy + p2z * dz;
      const b = q2x * dx + q2y * dy + q2z * dz;
      const c = 0.5 * (constant + dx * dx + dy * dy + dz * dz);
      const h = a * a + b * b;
      const s = side * Math.sqrt(h - c * c);
      const c2 = (a * c + b * s) / h;
      const s2 = (b * c - a * s) / h;
      const ex = c2 * p2x + s2 * q2x - dx;
      const ey = c2 * p2y + s2 * q2y - dy;
      const ez = c2 * p2z + s2 * q2z - dz;
      const along1 = ex * (c1 * q1x - s1 * p1x) + ey * (c1 * q1y - s1 * p1y) + ez * (c1 * q1z - s1 * p1z);
      rotations += Math.atan2(s2, c2);
      ratios += -along1 / s;
    }
    sink[0] = rotations;
    sink[1] = ratios;
  };
}

const pose = createPose(mechanism);
const driven = joint.driven;
function engine(calls: number): void {
  let rotations = 0;
  let ratios = 0;
  for (let i = 0; i < calls; i++) {
    advance(build, (i & (STATIONS - 1)) / STATIONS, pose);
    rotations += pose.rotation[driven]!;
    ratios += pose.rate[driven]!;
  }
  sink[0] = rotations;
  sink[1] = ratios / -TRAVEL;
}

/** Newton steps on the distance of the pins, each solved by mathjs, from the station before. */
function rootFinding(calls: number): void {
  const turnedPin = (pin: readonly number[], angle: number): readonly number[] =>
    [0, 1, 2].map((axis) => pin[axis]! + Math.cos(angle) * pin[axis + 3]! + Math.sin(angle) * pin[axis + 6]!);
  const miss = (angle1: number, angle2: number): number => {
    const pin1 = turnedPin(from, angle1);
    return Math.hypot(...turnedPin(to, angle2).map((each, axis) => each - pin1[axis]!)) - length;
  };
  let rotation = 0;
  for (let i = 0; i < calls; i++) {
    const angle = (-TRAVEL * (i & (STATIONS - 1))) / STATIONS;
    for (let step = 0; step < 8; step++) {
      const slope = (miss(angle, rotation + 1e-6) - miss(angle, rotation - 1e-6)) / 2e-6;
      const change = (lusolve([[slope]], [miss(angle, rotation)]) as number[][])[0]![0]!;
      rotation -= change;
      if (Math.abs(change) < 1e-12) break;
    }
  }
  sink[0] = rotation;
}

/** Planar: planck knows no third dimension. Two levers on revolute joints and a rod; one step a station. */
function bodyStepping(): (calls: number) => void {
  const world = new World({ gravity: new Vec2(0, 0) });
  const ground = world.createBody();
  const lever = (x: number, y: number, type: 'kinematic' | 'dynamic') => {
    const body = world.createBody({ type, position: new Vec2(x, y) });
    body.createFixture({ shape: new CircleShape(0.2), density: 1 });
    return body;
  };
  const foot = lever(0, 0, 'kinematic');
  const turnedLever = lever(3, 0, 'dynamic');
  world.createJoint(new RevoluteJoint({}, ground, turnedLever, new Vec2(3, 0)));
  world.createJoint(new DistanceJoint({}, foot, turnedLever, new Vec2(0, 1), new Vec2(3, 1)));
  foot.setAngularVelocity(-0.2);
  return (calls) => {
    for (let i = 0; i < calls; i++) world.step(1 / 60, 10, 10);
  };
}

const ways: readonly ((calls: number) => void)[] = [flat, floor(), engine];
const sums = ways.map((way) => {
  way(STATIONS);
  return [...sink];
});
if (sums.some(([rotations, ratios]) => Math.abs(rotations! - sums[0]![0]!) > 1e-9 || Math.abs(ratios! - sums[0]![1]!) > 1e-9)) {
  throw new Error('The ways differ');
}

const [flatTime, floorTime, engineTime] = inTurns(50_000, ways, 80) as [number, number, number];
report('flat hand-inlined closed form, position and ratio, a station', `${flatTime.toFixed(1)} ns`);
report('the same with its figures in local variables and nothing stored', `${floorTime.toFixed(1)} ns`);
report(
  'engine, position, ratio and curvature',
  `${engineTime.toFixed(1)} ns, ${(engineTime / flatTime).toFixed(2)} × flat (budget ${BUDGET})`,
);
const besides = (what: string, time: number): void => report(what, `${time.toFixed(0)} ns, ${(time / flatTime).toFixed(0)} × flat`);
besides('root finding with mathjs, position alone', nanosecondsPerCall(1000, rootFinding, 5));
besides('planck, one step of a planar loop', nanosecondsPerCall(2000, bodyStepping(), 5));
