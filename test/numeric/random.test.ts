import { describe, expect, test } from 'vitest';
import { philox, randomOf } from '../../src/numeric/random.ts';

describe('Philox 4×32-10', () => {
  // Known answers that the authors publish with their Random123 library, from memory: a wrong digit in either would not match.
  test.each([
    [
      [0, 0, 0, 0],
      [0, 0],
      [0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8],
    ],
    [
      [~0, ~0, ~0, ~0],
      [~0, ~0],
      [0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd],
    ],
    [
      [0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344],
      [0xa4093822, 0x299f31d0],
      [0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1],
    ],
  ])('of counter %j and key %j', (counter, [key0, key1], answer) => {
    const words = Uint32Array.from(counter);
    philox(words, key0! >>> 0, key1! >>> 0);
    expect([...words]).toEqual(answer);
  });
});

describe('draws', () => {
  const COUNT = 100_000;
  const random = randomOf(7);
  const numbers = Array.from({ length: COUNT }, (_, i) => i);
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

  // Moments of the two laws, each within five standard errors of its estimate.
  test('uniform ones have the moments of the uniform law', () => {
    const values = numbers.map((number) => random.uniform(number, 3));
    expect(Math.abs(mean(values) - 1 / 2)).toBeLessThan(5 * Math.sqrt(1 / 12 / COUNT));
    expect(Math.abs(mean(values.map((value) => (value - 1 / 2) ** 2)) - 1 / 12)).toBeLessThan(5 * Math.sqrt(1 / 180 / COUNT));
    expect(Math.min(...values.slice(0, 1000))).toBeGreaterThan(0);
  });

  test('normal ones have the moments of the normal law', () => {
    const values = numbers.map((number) => random.normal(number, 3));
    expect(Math.abs(mean(values))).toBeLessThan(5 / Math.sqrt(COUNT));
    expect(Math.abs(mean(values.map((value) => value ** 2)) - 1)).toBeLessThan(5 * Math.sqrt(2 / COUNT));
    expect(Math.abs(mean(values.map((value) => value ** 4)) - 3)).toBeLessThan(5 * Math.sqrt(96 / COUNT));
  });

  test('of other draws, cases, seeds and streams they are others', () => {
    const all = [random.uniform(1, 1), random.uniform(1, 2), random.uniform(2, 1), randomOf(8).uniform(1, 1), randomOf(7, 1).uniform(1, 1)];
    expect(new Set(all).size).toBe(all.length);
    expect(randomOf(7).uniform(1, 1)).toBe(all[0]);
  });

  test('neighbouring draws of a case go their own ways', () => {
    const product = mean(numbers.map((number) => random.normal(number, 0) * random.normal(number, 1)));
    expect(Math.abs(product)).toBeLessThan(5 / Math.sqrt(COUNT));
  });
});
