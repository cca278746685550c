import { describe, expect, it } from 'vitest';
import { checkValue } from '../../support/checkFormula.ts';

/** ∂/∂n of a formula at n, as it stands in the contract: one-sided, from above. */
function slope(text: string, n: number): number {
  const { formula } = checkValue('number', text);
  if (formula === undefined) throw new Error(text);
  const into = new Float64Array(formula.uses.length);
  formula.gradient(Float64Array.of(0.038, 0.5, n), into);
  const [only] = into;
  return only ?? NaN;
}

describe('the derivative at a kink', () => {
  it.each([
    ['abs(n)', 0, 1],
    ['-abs(n)', 0, -1],
    ['abs(-3 * n)', 0, 3],
    ['abs(abs(n))', 0, 1],
    ['max(n, 2 * n)', 0, 2],
    ['min(n, 2 * n)', 0, 1],
    ['max(0, n)', 0, 1],
    ['min(0, n)', 0, 0],
    ['max(0, -n)', 0, 0],
    ['max(n, 1, 2 - n)', 1, 1],
    ['min(n, 1, 2 - n)', 1, -1],
    ['hypot(3 * n, 4 * n)', 0, 5],
    ['hypot(n)', 0, 1],
    ['floor(n)', 1, 0],
    ['round(n) + n', 0.5, 1],
    ['n^2', 0, 0],
    ['n^1', 0, 1],
    ['n^3', -2, 12],
    ['(n - 1)^2', 1, 0],
  ])('of %s at n = %d is that from above, %d', (text, n, wanted) => {
    expect(slope(text, n)).toBeCloseTo(wanted, 14);
  });
});
