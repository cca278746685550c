import fc from 'fast-check';
import { expect, test } from 'vitest';
import { solveLinear } from '../../src/numeric/linearSystem.ts';
import '../support/seed.ts';

test('the solution satisfies the equations', () => {
  const figure = fc.double({ min: -1, max: 1, noNaN: true });
  const systems = fc.integer({ min: 1, max: 6 }).chain((n) =>
    fc.record({
      n: fc.constant(n),
      a: fc.array(figure, { minLength: n * n, maxLength: n * n }),
      x: fc.array(figure, { minLength: n, maxLength: n }),
    }),
  );
  fc.assert(
    fc.property(systems, ({ n, a, x }) => {
      const rows = Array.from({ length: n }, (_, i) => a.slice(i * n, (i + 1) * n));
      const b = Float64Array.from(rows, (row) => row.reduce((sum, each, j) => sum + each * x[j]!, 0));
      const found = Float64Array.from(b);
      solveLinear(Float64Array.from(a), found, n);
      rows.forEach((row, i) => expect(row.reduce((sum, each, j) => sum + each * found[j]!, 0)).toBeCloseTo(b[i]!, 6));
    }),
  );
});

test('an equation that follows from the others leaves an unknown at 0', () => {
  const b = Float64Array.of(4, 8);
  solveLinear(Float64Array.of(1, 2, 2, 4), b, 2);
  expect(b[0]! + 2 * b[1]!).toBeCloseTo(4, 12);
  expect([...b]).toContain(0);
});
