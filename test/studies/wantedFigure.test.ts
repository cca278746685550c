import { describe, expect, test } from 'vitest';
import { finished } from '../../src/studies/finished.ts';
import { wantedFigure, type Look } from '../../src/studies/wantedFigure.ts';

const near = (value: number): unknown => expect.closeTo(value, 9);

describe('where a condition holds', () => {
  // What counts as equal is no less, as in `compare.ts`.
  const isLess = (value: number, than: number): boolean => than - value > 1e-9 * than;

  test.each([
    [(value: number) => isLess(value, 22.6), 5, 22.6],
    [(value: number) => isLess(22.6, value), 22.6, 70],
  ])('ends where the sides cross, under a comparison that does not hold there', (holds, from, to) => {
    const found = finished(
      wantedFigure((value): Look => ({ misses: [value - 22.6], holds: holds(value) }), { from: 5, to: 70, places: 9 }),
    );
    expect(found.holding).toEqual([{ from: near(from), to: near(to), open: { from: false, to: false } }]);
  });

  test('ends at the first of the roots beyond it', () => {
    const looked = (value: number): Look => ({ misses: [value - 22.6, value - 22.7], holds: isLess(value, 22.6) });
    const found = finished(wantedFigure(looked, { from: 5, to: 70, places: 9 }));
    expect(found.holding.map(({ to }) => to)).toEqual([near(22.6)]);
  });

  test('ends openly before a jump', () => {
    const looked = (value: number): Look => ({ misses: [value < 22.6 ? -1 : 1], holds: value < 22.6 });
    const [stretch] = finished(wantedFigure(looked, { from: 5, to: 70, places: 9 })).holding;
    expect(stretch!.to).toBeLessThan(22.6);
    expect(stretch!.open).toEqual({ from: false, to: true });
  });
});

test('of a whole number only whole ones are looked at', () => {
  const seen: number[] = [];
  const look = (value: number): Look => {
    seen.push(value);
    return { misses: [value - 2.5], holds: value > 2.5 };
  };
  const found = finished(wantedFigure(look, { from: 1, to: 6, places: 6, whole: true }));
  expect(seen).toEqual([1, 2, 3, 4, 5, 6]);
  expect(found).toMatchObject({ roots: [], missing: 0, matters: true });
  expect(found.holding).toEqual([{ from: 3, to: 6, open: { from: false, to: false } }]);
});
