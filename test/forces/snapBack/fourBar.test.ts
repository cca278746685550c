/**
 * A planar four-bar against an equation of motion that is put together here from the loop of the links, and solved by mathjs:
 *     I(θ) θ̈ + ½ I′(θ) θ̇² = −M ψ′ + F₁ + F₂ |ψ′|
 * with θ and ψ the turns of the two levers, I = I₁ + I₂ ψ′² + the rod's, all derivatives by differences.
 */
import * as mathjs from 'mathjs';
import { expect, test } from 'vitest';
import { snapOf } from './support/snap.ts';

const LENGTH = 0.1;
const INERTIA = { pedal: 3e-4, shaft: 9e-5 };
const DRAG = { pedal: 0.02, shaft: 0.015 };
const PRELOAD = 0.25;
const RATE = 0.12;
const TRAVEL = 50;
/** kg: round steel of 6 mm, 7850 kg/m³: what is put in where the file gives no width. */
const ROD = (7850 * Math.PI * 0.006 ** 2 * LENGTH) / 4;

const TEXT = `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40, angle: 100 deg}}, inertia: ${INERTIA.pedal * 1e6}, friction: ${DRAG.pedal * 1e3}}
  shaft: {pivot: [${String(pivotX() * 1e3)}, 0], arms: {arm: {radius: 30, angle: 110 deg}}, inertia: ${INERTIA.shaft * 1e6}, friction: ${DRAG.shaft * 1e3}}
pedal: {lever: pedal, opens: clockwise, travel: ${TRAVEL}, pad: out}
rods:
  link: {from: pedal.out, to: shaft.arm}
plates:
  bank: {lever: shaft, bore: 40 mm}
springs:
  first: {lever: shaft, rate: ${(RATE * 1e3 * Math.PI) / 180}, preload: ${PRELOAD * 1e3}}
`;

/** So that the rod is 100 mm long as drawn. */
function pivotX(): number {
  const dy = 0.03 * Math.sin(rad(110)) - 0.04 * Math.sin(rad(100));
  return 0.04 * Math.cos(rad(100)) - 0.03 * Math.cos(rad(110)) + Math.sqrt(LENGTH ** 2 - dy ** 2);
}

function rad(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

type Point = readonly [number, number];

const crankPin = (opening: number): Point => [0.04 * Math.cos(rad(100) - opening), 0.04 * Math.sin(rad(100) - opening)];
const shaftPin = (opening: number): Point => [pivotX() + 0.03 * Math.cos(rad(110) - opening), 0.03 * Math.sin(rad(110) - opening)];

/** Opening of the shaft for an opening of the pedal: where the circle of its pin meets that of the rod's end. */
function shaftOpening(opening: number): number {
  const [x, y] = crankPin(opening);
  const [dx, dy] = [x - pivotX(), y];
  const between = Math.acos((0.03 ** 2 + dx * dx + dy * dy - LENGTH ** 2) / (2 * 0.03 * Math.hypot(dx, dy)));
  return rad(110) - (Math.atan2(dy, dx) - between);
}

const H = 1e-3;
const slope = (f: (x: number) => number, x: number): number => (8 * (f(x + H) - f(x - H)) - (f(x + 2 * H) - f(x - 2 * H))) / (12 * H);

function inertia(opening: number): number {
  const psi = slope(shaftOpening, opening);
  const tangent = (pin: (at: number) => Point, at: number, axis: 0 | 1): number => slope((x) => pin(x)[axis], at);
  const at = shaftOpening(opening);
  let rod = 0;
  for (const axis of [0, 1] as const) {
    const u = tangent(crankPin, opening, axis);
    const w = psi * tangent(shaftPin, at, axis);
    rod += (ROD / 3) * (u * u + u * w + w * w);
  }
  return INERTIA.pedal + INERTIA.shaft * psi * psi + rod;
}

function acceleration(opening: number, speed: number): number {
  const psi = slope(shaftOpening, opening);
  const torque = -(PRELOAD + RATE * shaftOpening(opening)) * psi + DRAG.pedal + DRAG.shaft * Math.abs(psi);
  return (torque - (slope(inertia, opening) * speed * speed) / 2) / inertia(opening);
}

/** mathjs's types leave it out. */
interface Solver {
  solveODE(
    f: (t: number, y: readonly number[]) => readonly number[],
    times: readonly [number, number],
    start: readonly number[],
    options: { readonly method: string; readonly tol: number; readonly firstStep: number },
  ): { readonly t: readonly number[]; readonly y: readonly (readonly [number, number])[] };
}

/** Opening and speed of the pedal after some time, s. */
function byMathjs(time: number): readonly [number, number] {
  const { solveODE } = mathjs as unknown as Solver;
  const f = (_t: number, y: readonly number[]): readonly number[] => [y[1]!, acceleration(y[0]!, y[1]!)];
  const { t, y } = solveODE(f, [0, time], [rad(TRAVEL), 0], { method: 'RK45', tol: 1e-8, firstStep: 1e-4 });
  expect(t.at(-1)).toBeCloseTo(time, 12);
  return y.at(-1)!;
}

test('a four-bar comes back as the equation of motion that mathjs solves', () => {
  const answer = snapOf(TEXT, { restitution: 0 });
  expect(answer.assumed.find(({ kind }) => kind === 'rod-mass')?.value).toBeCloseTo(ROD, 12);
  const { time, band } = answer.plates[0]!;
  const [opening, speed] = byMathjs(time!);
  // Where mathjs has it then, in terms of the time that it still needs or is early by.
  const late = (shaftOpening(opening) - band) / Math.abs(speed * slope(shaftOpening, opening));
  expect(Math.abs(late) / time!).toBeLessThan(1e-6);
  // And all along the way.
  const shaft = answer.trace.rotations[1]!;
  for (const share of [0.25, 0.5, 0.75]) {
    const i = Math.floor(share * answer.trace.times.findIndex((each) => each >= time!));
    const [then] = byMathjs(answer.trace.times[i]!);
    expect(Math.abs(shaftOpening(then) - Math.abs(shaft[i]!))).toBeLessThan(1e-6);
  }
});

test('its energy is all accounted for, and friction took what the drags say', () => {
  const { energy } = snapOf(TEXT, { restitution: 0 });
  expect(Math.abs(energy.residual)).toBeLessThan(1e-6 * energy.springs);
  const shaft = shaftOpening(rad(TRAVEL));
  expect(energy.springs).toBeCloseTo(PRELOAD * shaft + (RATE * shaft * shaft) / 2, 7);
  expect(energy.friction).toBeCloseTo(DRAG.pedal * rad(TRAVEL) + DRAG.shaft * shaft, 7);
  expect(energy.stops).toBeCloseTo(energy.springs - energy.friction, 6);
});
