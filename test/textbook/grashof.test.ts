import { describe, expect, it } from 'vitest';
import { classify } from '../../src/kinematics/fourBar/index.ts';
import type { FourBar, FourBarClass } from '../../src/kinematics/fourBar/index.ts';
import { grashofRows, inversionRows } from './values/grashof.ts';

describe("Grashof's condition and the type of every published and made-up four-bar", () => {
  it.each(grashofRows.map((row) => [describeLinks(row.links), row] as const))('%s', (_, { links, sums, type }) => {
    const found = classOf(links);
    expect(found.type).toBe(type);
    expect(found.shortestPlusLongest).toBeCloseTo(sums[0], 12);
    expect(found.otherTwo).toBeCloseTo(sums[2], 12);
    expect(found.grashof).toBe({ '<': 'I', '>': 'II', '=': 'III' }[sums[1]]);
  });

  it.each(inversionRows)('$lengths goes by the place of the $deciding, in every order of the rest', ({ lengths, deciding, types }) => {
    const orders = permutations(lengths);
    expect(orders).toHaveLength(24);
    for (const [a, b, c, d] of orders) {
      const links = { a, b, c, d };
      const place = (['a', 'b', 'c', 'd'] as const).find((name) => links[name] === deciding);
      expect(classOf(links).type, describeLinks(links)).toBe(types[place ?? 'd']);
    }
  });

  it('becomes a double rocker when the short link of the 100, 200, 300, 350 assignment stands opposite the ground', () => {
    expect(classOf({ a: 200, b: 100, c: 300, d: 350 }).type).toBe('GRCR');
  });
});

function classOf(links: FourBar): FourBarClass {
  const found = classify(links);
  if (found.kind !== 'class') throw new Error(`no class: ${JSON.stringify(found)}`);
  return found;
}

function describeLinks({ a, b, c, d }: FourBar): string {
  return `${a}, ${b}, ${c} on ${d}`;
}

function permutations(values: readonly number[]): readonly (readonly [number, number, number, number])[] {
  const orders: [number, number, number, number][] = [];
  const extend = (taken: readonly number[]): void => {
    if (taken.length === 4) orders.push(taken.map((i) => values[i] ?? NaN) as [number, number, number, number]);
    for (let i = 0; i < 4; i++) if (!taken.includes(i)) extend([...taken, i]);
  };
  extend([]);
  return orders;
}
