/** Random four-bars for the property tests of this folder. */
import fc from 'fast-check';
import type { FourBar } from '../../../src/kinematics/fourBar/index.ts';

/** Lengths in eighths or thousandths, so that sums of two are either equal or clearly not; change points come up by themselves. */
export const anyLinks: fc.Arbitrary<FourBar> = fc.record({ a: length(), b: length(), c: length(), d: length() });

/** The same with the input and output of either sign, as synthesis may give them. */
export const anySignedLinks: fc.Arbitrary<FourBar> = fc
  .tuple(anyLinks, fc.boolean(), fc.boolean())
  .map(([{ a, b, c, d }, flipInput, flipOutput]) => ({ a: flipInput ? -a : a, b, c: flipOutput ? -c : c, d }));

/** Evenly spread over two turns, with multiples of 15° and angles next to 0 mixed in. */
export const anyAngle: fc.Arbitrary<number> = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: -6_283_185, max: 6_283_185 }).map((micro) => micro * 1e-6) },
  { weight: 1, arbitrary: fc.integer({ min: -24, max: 24 }).map((step) => (step * Math.PI) / 12) },
  { weight: 1, arbitrary: fc.double({ min: -1, max: 1, noNaN: true }) },
);

/** Small whole numbers of eighths make equal lengths and change points common; they are exact in binary. */
function length(): fc.Arbitrary<number> {
  return fc.oneof(
    fc.integer({ min: 1, max: 80 }).map((eighths) => eighths / 8),
    fc.integer({ min: 100, max: 10_000 }).map((n) => n / 1000),
  );
}
