/**
 * A planar four-bar pulled by a cable, by a second method: all free bodies at once. Unknown are both components of both bearings'
 * reactions, both components and the two couples of the rod, and the tension; the equations are force and moment balances of the two
 * levers and the rod, and the couples of friction by their circles. Newton steps with mathjs's LU, the Jacobian by differences.
 */
import { lusolve } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { createFriction } from '../../../src/forces/friction/statics.ts';
import { solveSprungText } from '../support/sprung.ts';

const CRANK = [0, 0] as const;
const SHAFT = [110, 24] as const;
const OUT = { radius: 38, angle: 100 };
const ARM = { radius: 30, angle: 80 };
const DRUM = 24;
const ENTERS = [-90, 40] as const;
const MU = { crank: 0.15, shaft: 0.3, ends: 0.2, cable: 0.1 };
const DIAMETER = { crank: 8, shaft: 12, ends: 6 };
const DRAG = { crank: 9, shaft: 25 };
const BEND = 150;
/** N·mm and N·mm a radian. */
const SPRING = { preload: 400, rate: 150 };

const TEXT = `format: 1
levers:
  crank:
    pivot: [${CRANK.join(', ')}]
    arms: {out: {radius: ${OUT.radius}, angle: ${OUT.angle}}}
    drums: {wheel: {radius: ${DRUM}, wraps: clockwise}}
    friction: ${DRAG.crank}
    bearing: {diameter: ${DIAMETER.crank}, friction: ${MU.crank}}
  shaft:
    pivot: [${SHAFT.join(', ')}]
    arms: {arm: {radius: ${ARM.radius}, angle: ${ARM.angle}}}
    friction: ${DRAG.shaft}
    bearing: {diameter: ${DIAMETER.shaft}, friction: ${MU.shaft}}
pedal: {cable: main, pull: 12 mm}
cables: {main: {enters: [${ENTERS.join(', ')}], to: crank.wheel, bend: ${BEND} deg, friction: ${MU.cable}}}
rods: {link: {from: crank.out, to: shaft.arm, ends: {kind: rod_end, pin: ${DIAMETER.ends}, friction: ${MU.ends}}}}
springs: {back: {lever: shaft, rate: ${SPRING.rate * (Math.PI / 180)}, preload: ${SPRING.preload}}}
`;

const PARTS = 8;

type Plane = readonly [number, number];
const times = (a: Plane, b: Plane): number => a[0] * b[1] - a[1] * b[0];
const from = (a: Plane, b: Plane): Plane => [b[0] - a[0], b[1] - a[1]];
const circle = (diameter: number, mu: number): number => (diameter / 2) * Math.sin(Math.atan(mu));

/** Tension at the pedal's end. @param way +1 as the cable is pulled, −1 as it comes back @param angles of both levers since drawn */
function tensionByNewton(way: 1 | -1, crank: number, shaft: number): number {
  const pinOf = (pivot: Plane, { radius, angle }: typeof OUT, turned: number): Plane => {
    const at = (angle * Math.PI) / 180 + turned;
    return [pivot[0] + radius * Math.cos(at), pivot[1] + radius * Math.sin(at)];
  };
  const [one, two] = [pinOf(CRANK, OUT, crank), pinOf(SHAFT, ARM, shaft)];
  // Everything turns clockwise as the cable is pulled: the crank by one, the rod and the shaft by what the loop of the four bars asks for.
  const spin = -way;
  const [r1, r2, l] = [from(CRANK, one), from(SHAFT, two), from(one, two)];
  const [shaftSpin, rodSpin] = spun(spin, r1, r2, l);
  const wrap = circle(DIAMETER.ends, MU.ends);
  // The free inner touches the drum where its pull turns it clockwise: its way follows from the housing end and the radius.
  const away = from(CRANK, ENTERS);
  const reach = Math.hypot(...away);
  const toward = Math.atan2(away[1], away[0]);
  const lean = Math.asin(DRUM / reach);
  const pulls = [toward + lean, toward - lean]
    .map((at): Plane => [Math.cos(at), Math.sin(at)])
    .find((e) => times([away[0], away[1]], e) < 0)!;
  const moment = SPRING.preload - SPRING.rate * shaft;
  /** @param part of the friction, from none to all: the solution is followed from where the equations are linear */
  const residualOf = (part: number, u: readonly number[]): number[] => {
    const [cx, cy, sx, sy, fx, fy, firstCouple, secondCouple, tension] = u as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    const size = Math.hypot(fx, fy);
    return [
      // The crank: the cable pulls it, the rod presses it with −f, and its bearing.
      cx + tension * pulls[0] - fx,
      cy + tension * pulls[1] - fy,
      -tension * DRUM -
        times(r1, [fx, fy]) +
        firstCouple -
        part * spin * (DRAG.crank + circle(DIAMETER.crank, MU.crank) * Math.hypot(cx, cy)),
      // The shaft: the rod presses it with f; its spring closes it, which is counter-clockwise.
      sx + fx,
      sy + fy,
      moment +
        times(r2, [fx, fy]) +
        secondCouple -
        part * Math.sign(shaftSpin) * (DRAG.shaft + circle(DIAMETER.shaft, MU.shaft) * Math.hypot(sx, sy)),
      // The rod, on which both levers press back; and its ends rub against the turn of each lever in it.
      -times(l, [fx, fy]) - firstCouple - secondCouple,
      firstCouple + part * wrap * size * Math.sign(spin - rodSpin),
      secondCouple + part * wrap * size * Math.sign(shaftSpin - rodSpin),
    ];
  };
  let u: readonly number[] = [10, 10, 10, 10, -10, -1, 0, 0, 20];
  for (let i = 0; i <= PARTS; i++) {
    const residual = (at: readonly number[]): number[] => residualOf(i / PARTS, at);
    for (let step = 0; step < 60; step++) {
      const at = residual(u);
      const jacobian = at.map((_, row) => u.map((_each, column) => difference(residual, u, row, column)));
      const change = (lusolve(jacobian, at) as number[][]).map(([value]) => value!);
      u = u.map((each, k) => each - change[k]!);
      if (Math.max(...change.map(Math.abs)) < 1e-12) break;
    }
  }
  expect(Math.max(...residualOf(1, u).map(Math.abs))).toBeLessThan(1e-8);
  return u[8]! * Math.exp(way * MU.cable * ((BEND * Math.PI) / 180));
}

/** Turning of the shaft and of the rod: v₁ + ω l⊥ = v₂. */
function spun(spin: number, r1: Plane, r2: Plane, l: Plane): readonly [number, number] {
  const [[shaft], [rod]] = lusolve(
    [
      [-r2[1], l[1]],
      [r2[0], -l[0]],
    ],
    [-spin * r1[1], spin * r1[0]],
  ) as [[number], [number]];
  return [shaft, rod];
}

function difference(of: (u: readonly number[]) => number[], u: readonly number[], i: number, j: number): number {
  const step = 1e-4;
  const moved = (by: number): number[] => u.map((each, k) => (k === j ? each + by : each));
  return (of(moved(step))[i]! - of(moved(-step))[i]!) / (2 * step);
}

describe('a four-bar pulled by a cable, with everything rubbing', () => {
  const { travel, rotationsAt } = solveSprungText(TEXT);
  const friction = createFriction(travel.build);

  it.each([0, 0.2, 0.5, 0.8, 1])('takes and gives back what all its free bodies together ask for, at %d', (at) => {
    const { effort, release } = friction.at(travel.poseAt(at));
    const { crank, shaft } = rotationsAt(at) as { crank: number; shaft: number };
    expect(effort).toBeCloseTo(tensionByNewton(1, crank, shaft), 7);
    expect(release).toBeCloseTo(tensionByNewton(-1, crank, shaft), 7);
    expect(release).toBeGreaterThan(1);
    expect(effort).toBeGreaterThan(1.5 * release);
  });
});
