/** How closely turns are known: by how much they scatter from one set of readings of the same car to the next. */
import { expect, test } from 'vitest';
import { turningWords } from '../../../src/outputs/turningWords.ts';
import { BENCH, benchText, fitted } from './bench.ts';

const base = {
  columns: ['pedal.travel', 'tps.signal', 'shaft.opening'],
  at: [0, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95],
  fit: ['link.length', 'main.slack'],
  noise: ['0.004 V', '0.2 deg'],
  linkage: BENCH.replace('length: 110.5 mm ± 0.6 mm', 'length: 110.5 mm'),
};
const car = { 'rods.link.length': 0.1112, 'cables.main.slack': 0.4e-3 };
const SEEDS = 30;

test('turns scatter by as much as their standard errors say', () => {
  const turns = Array.from({ length: SEEDS }, (_, i) => {
    const { turning } = fitted(benchText({ ...base, car, seed: i + 1 }));
    if (turning.kind !== 'turn') throw new Error(turning.why);
    return turning.turns;
  });
  for (const part of ['link', 'main']) {
    const own = turns.map((each) => each.find((turn) => turn.part === part)!);
    const changes = own.map(({ change }) => change);
    const mean = changes.reduce((sum, each) => sum + each, 0) / SEEDS;
    const scatter = Math.sqrt(changes.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (SEEDS - 1));
    const error = own.reduce((sum, each) => sum + each.error!, 0) / SEEDS;
    // A standard deviation of thirty figures is known to 13 %: within two and a half of that.
    expect(scatter / error).toBeGreaterThan(0.67);
    expect(scatter / error).toBeLessThan(1.33);
    // As far as the car was off, since nothing else is.
    expect(Math.abs(mean - (part === 'link' ? -0.7e-3 : 0.6e-3))).toBeLessThan((4 * error) / Math.sqrt(SEEDS));
  }
});

test('the words give the error beside the turn', () => {
  const words = turningWords(fitted(benchText({ ...base, car })).turning).join('\n');
  expect(words).toMatch(/link: 0\.\d+ ± 0\.\d+ turns shorter/);
  expect(words).toMatch(/main: 0\.\d+ mm ± 0\.\d+ mm more slack/);
});
