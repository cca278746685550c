/**
 * One lever against closed forms: a torsional oscillator with preload, I ö = −(M₀ ∓ F + k o) with F the drag, and a lever that is thrown
 * back by its stop under a torque that does not change. Derivations: any mechanics book; worked out here.
 */
import { expect, test } from 'vitest';
import { inSi, oneLeverText, snapOf, type OneLever } from './support/snap.ts';

const CASES: readonly OneLever[] = [
  { inertia: 95, preload: 240, rate: 2.2, opening: 80 },
  { inertia: 95, preload: 240, rate: 2.2, drag: 60, opening: 80 },
  { inertia: 800, preload: 0, rate: 5, opening: 40 },
  { inertia: 800, preload: 30, rate: 5, drag: 30, opening: 40 },
  { inertia: 12, preload: 500, rate: 0.01, drag: 499, opening: 85 },
];

/** 1e-8 of the greatest speed is what the steps are allowed to be off. */
const CLOSE = 1e-6;

test.each(CASES)('closes when the oscillator does, $inertia kg·mm² with $drag N·mm of drag', (lever) => {
  const { inertia, preload, rate, drag, opening } = inSi(lever);
  const answer = snapOf(oneLeverText(lever), { restitution: 0, horizon: 30 });
  const omega = Math.sqrt(rate / inertia);
  const centre = (preload - drag) / rate;
  const band = 0.01 * opening;
  const time = Math.acos((band + centre) / (opening + centre)) / omega;
  const stopSpeed = omega * Math.sqrt((opening + centre) ** 2 - centre ** 2);
  expect(answer.plates[0]?.band).toBeCloseTo(band, 12);
  expect(Math.abs(answer.time! / time - 1)).toBeLessThan(CLOSE);
  expect(Math.abs(answer.stopSpeed! / stopSpeed - 1)).toBeLessThan(CLOSE);
  expect(answer.bounces).toBe(0);
  const given = preload * opening + (rate * opening ** 2) / 2;
  expect(answer.energy.springs / given).toBeCloseTo(1, 7);
  expect(answer.energy.friction / given).toBeCloseTo((drag * opening) / given, 6);
  expect(answer.energy.stops / given).toBeCloseTo(1 - (drag * opening) / given, 6);
  expect(Math.abs(answer.energy.residual) / given).toBeLessThan(CLOSE);
});

test('is thrown back by its stop as often and as high as its speeds say', () => {
  const lever: OneLever = { inertia: 100, preload: 300, rate: 1e-9, opening: 80 };
  const { inertia, preload, opening } = inSi(lever);
  const e = 0.5;
  const answer = snapOf(oneLeverText(lever), { restitution: e });
  const falling = preload / inertia;
  // Heights of the flights are e² of the one before; the third is the last above 1 %: 25, 6.25, 1.56, 0.39 %.
  let time = Math.sqrt((2 * opening) / falling);
  let speed = falling * time;
  for (let flight = 1; flight <= 3; flight++) {
    speed *= e;
    time += flight < 3 ? (2 * speed) / falling : (speed + Math.sqrt(speed ** 2 - 2 * falling * 0.01 * opening)) / falling;
  }
  expect(Math.abs(answer.time! / time - 1)).toBeLessThan(CLOSE);
  // A bounce below a thousandth of the greatest speed is none: 0.5⁹ is the last above.
  expect(answer.bounces).toBe(9);
  expect(answer.energy.kinetic).toBe(0);
  expect(Math.abs(answer.energy.residual)).toBeLessThan(CLOSE * answer.energy.springs);
});

test('where drag is greater than what the springs have it stands, and says so', () => {
  const answer = snapOf(oneLeverText({ inertia: 95, preload: 10, rate: 0.5, drag: 60, opening: 80 }));
  expect(answer.time).toBeUndefined();
  expect(answer.plates[0]).toMatchObject({ time: undefined, why: 'sticks', stopSpeed: undefined });
  expect((answer.plates[0]!.opening * 180) / Math.PI).toBeCloseTo(80, 9);
  expect(answer.energy.springs).toBe(0);
});

test('where drag overtakes the springs on the way it stands short of its stop, where its energy is used up', () => {
  const lever: OneLever = { inertia: 95, preload: 10, rate: 2, drag: 110, opening: 80 };
  const { preload, rate, drag, opening } = inSi(lever);
  const answer = snapOf(oneLeverText(lever));
  expect(answer.plates[0]).toMatchObject({ time: undefined, why: 'sticks' });
  // (preload − drag)(o₀ − o) + k (o₀² − o²)/2 = 0 for o ≠ o₀.
  expect(answer.plates[0]!.opening).toBeCloseTo((2 * (drag - preload)) / rate - opening, 7);
});

test('without any spring it stands where it is', () => {
  const text = oneLeverText({ inertia: 95, preload: 100, rate: 2, opening: 80 });
  expect(snapOf(text, { without: ['first'] }).plates[0]).toMatchObject({ time: undefined, why: 'sticks', bounces: 0 });
});

test('a spring that opens throws it against its open stop, and it is never closed', () => {
  const answer = snapOf(oneLeverText({ inertia: 95, preload: -100, rate: 0.1, opening: 80 }), { from: 0.5 });
  expect(answer.plates[0]).toMatchObject({ time: undefined, why: 'sticks' });
  expect((answer.plates[0]!.opening * 180) / Math.PI).toBeCloseTo(80, 6);
});

test('a lever that only swings is followed to the end, and said to be still moving', () => {
  const answer = snapOf(oneLeverText({ inertia: 95, preload: -200, rate: 5, opening: 80 }), { from: 0.9, horizon: 0.5 });
  expect(answer.followed).toBe(0.5);
  expect(answer.plates[0]).toMatchObject({ time: undefined, why: 'still-moving' });
  expect(Math.abs(answer.energy.residual)).toBeLessThan(CLOSE * answer.energy.kinetic);
});

test('released at rest it is closed from the first', () => {
  const answer = snapOf(oneLeverText({ inertia: 95, preload: 100, rate: 2, opening: 80 }), { from: 0 });
  expect(answer).toMatchObject({ time: 0, bounces: 0, stopSpeed: undefined, followed: 0 });
});

test('the longest step allowed changes nothing that is told', () => {
  const text = oneLeverText({ inertia: 95, preload: 240, rate: 2.2, drag: 60, opening: 80 });
  const [coarse, fine] = [snapOf(text, { step: 4e-3 }), snapOf(text, { step: 1e-3 })];
  expect(fine.trace.times.length).toBeGreaterThan(1.5 * coarse.trace.times.length);
  expect(Math.abs(fine.time! / coarse.time! - 1)).toBeLessThan(CLOSE);
});

test.each([0, 0.2, 0.5, 0.8].map((restitution) => ({ restitution })))(
  'planck is as late to a hundredth where one body bounces, restitution $restitution',
  ({ restitution }) => {
    const text = oneLeverText({ inertia: 100, preload: 300, rate: 1, opening: 80 });
    const [one, other] = (['equation-of-motion', 'planck'] as const).map((method) => snapOf(text, { method, restitution }));
    expect(Math.abs(other!.time! / one!.time! - 1)).toBeLessThan(0.01);
    expect(Math.abs(other!.stopSpeed! / one!.stopSpeed! - 1)).toBeLessThan(0.01);
  },
);
