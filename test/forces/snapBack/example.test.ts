/** The example whose linkage is planar: both ways against each other, and each against itself with half the step. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { snapOf } from './support/snap.ts';

const TEXT = readFileSync('examples/four-barrel.throttle.yaml', 'utf8');
const FROM = [1, 0.6, 0.3];

test.each(FROM)('from %d of the pedal both ways have the same time to 2 % where nothing bounces', (from) => {
  const [one, other] = (['equation-of-motion', 'planck'] as const).map((method) => snapOf(TEXT, { from, method, restitution: 0 }));
  expect(one!.bounces).toBe(0);
  expect(Math.abs(other!.time! / one!.time! - 1)).toBeLessThan(0.02);
  expect(Math.abs(other!.stopSpeed! / one!.stopSpeed! - 1)).toBeLessThan(0.02);
  // Friction in planck is what its motors take; springs and stops are found again but for what its joints give way by in a knock.
  expect(Math.abs(other!.energy.friction / one!.energy.friction - 1)).toBeLessThan(0.05);
  expect(Math.abs(one!.energy.residual)).toBeLessThan(1e-5 * one!.energy.springs);
  expect(Math.abs(other!.energy.residual)).toBeLessThan(0.05 * other!.energy.springs);
});

test.each(FROM)('from %d of the pedal half the step changes the time by less than 1 %', (from) => {
  for (const restitution of [0, 0.5]) {
    const [coarse, fine] = [4e-3, 2e-3].map((step) => snapOf(TEXT, { from, step, restitution }).time!);
    expect(Math.abs(fine! / coarse! - 1)).toBeLessThan(0.001);
  }
  const [coarse, fine] = [2e-5, 1e-5].map((step) => snapOf(TEXT, { from, step, restitution: 0, method: 'planck' }).time!);
  expect(Math.abs(fine! / coarse! - 1)).toBeLessThan(0.01);
});

test('each part lost, and the cable seized: what holds the plates closes them, or not', () => {
  expect(snapOf(TEXT, { without: ['return_front'] }).time).toBeGreaterThan(snapOf(TEXT).time! / 2);
  expect(snapOf(TEXT, { without: ['return_front', 'return_rear'] }).plates[0]).toMatchObject({ time: undefined, why: 'sticks' });
  expect(snapOf(TEXT, { without: ['main'] }).time).toBeGreaterThan(0);
  // The rod's springs are on the shaft, which goes alone and quicker.
  expect(snapOf(TEXT, { without: ['link'], restitution: 0 }).time).toBeLessThan(snapOf(TEXT, { restitution: 0 }).time!);
  expect(snapOf(TEXT, { seized: ['main'] }).plates[0]).toMatchObject({ time: undefined, why: 'sticks' });
});

/**
 * Where several bodies knock at once, Moreau's law and planck share the knock out otherwise; and a time ends with the last bounce that comes
 * up to 1 % of the opening, so that it leaps where one more does. Speed at the stop and the first way there are the same.
 */
test('bouncing, both ways meet the stop as fast, and their times differ by a bounce at most', () => {
  const [one, other] = (['equation-of-motion', 'planck'] as const).map((method) => snapOf(TEXT, { method, restitution: 0.5 }));
  expect(Math.abs(other!.stopSpeed! / one!.stopSpeed! - 1)).toBeLessThan(0.01);
  expect(one!.bounces).toBeGreaterThan(5);
  expect(Math.abs(other!.bounces - one!.bounces)).toBeLessThan(0.4 * one!.bounces);
  expect(Math.abs(other!.time! / one!.time! - 1)).toBeLessThan(0.05);
});
