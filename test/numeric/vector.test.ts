/** The size of a vector against the built-in function, to the last bit. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sizeOf } from '../../src/numeric/vector.ts';

test('a size is that of Math.hypot to the last bit', () => {
  const part = fc.oneof(fc.double(), fc.double({ min: -1, max: 1 }), fc.constantFrom(0, -0, NaN, Infinity, 3, 4));
  fc.assert(
    fc.property(part, part, part, (x, y, z) => {
      expect(sizeOf(x, y, z)).toBe(Math.hypot(x, y, z));
    }),
    { numRuns: 3000 },
  );
});
