/** Figures that the format bounds: readings of a car with next to none of it want less as often as more, and less is not told. */
import { expect, test } from 'vitest';
import { dimensionWords } from '../../../src/outputs/fitWords.ts';
import { BENCH, benchText, fitted, TEN } from './bench.ts';

const truth = { 'rods.link.length': 0.1108, 'cables.main.slack': 2e-5 };
const linkage = BENCH.replace('length: 110.5 mm ± 0.6 mm', 'length: 110.5 mm');
const base = {
  columns: ['pedal.travel', 'shaft.opening'],
  at: TEN,
  car: truth,
  fit: ['link.length', 'main.slack'],
  noise: ['0.2 deg'],
  linkage,
};

test('a slack is never found below 0, what is held there says so, and the truth lies within the errors', () => {
  let [held, hits] = [0, 0];
  for (let seed = 1; seed <= 20; seed++) {
    const { dimensions } = fitted(benchText({ ...base, seed }));
    const [length, slack] = dimensions;
    expect(slack!.value).toBeGreaterThanOrEqual(0);
    if (slack!.isAtBound) {
      held++;
      expect(slack!.value).toBe(0);
      expect(dimensionWords(slack!)).toContain('the readings would have less within their error, which cannot be');
    }
    hits += Math.abs(length!.value - 0.1108) <= 2 * length!.error ? 1 : 0;
  }
  // Near every second: as often as the noise has it.
  expect(held).toBeGreaterThan(2);
  expect(held).toBeLessThan(16);
  expect(hits).toBeGreaterThan(16);
});

test('a slack far below 0 is told as what no car has', () => {
  // Of a rod that is longer than the file has it, and is not looked for.
  const far = benchText({ ...base, car: { ...truth, 'rods.link.length': 0.1112 }, fit: ['main.slack'], noise: ['0.02 deg'] });
  const [slack] = fitted(far.replace(/length: 111.2\d* mm, adjust/, 'length: 110.5 mm, adjust')).dimensions;
  expect(slack!.value).toBeLessThan(0);
  expect(slack!.cannotBe).toMatchObject({ of: 'slack' });
  expect(slack!.isAtBound).toBe(false);
});
