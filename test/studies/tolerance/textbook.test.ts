/** The studies of tolerances against the textbook's linkage: figures of `test/textbook/values/tolerance.ts`, with their source. */
import { describe, expect, test } from 'vitest';
import { distributionsOf } from '../../../src/studies/tolerance/distribution.ts';
import { randomBuilds, type Builds, type Law } from '../../../src/studies/tolerance/monteCarlo.ts';
import { effectsOn } from '../../../src/studies/tolerance/sensitivity.ts';
import { corners, stackOf } from '../../../src/studies/tolerance/stack.ts';
import { finished } from '../../../src/studies/finished.ts';
import { DEG, expectFigure } from '../../textbook/support/check.ts';
import { toleranceCase } from '../../textbook/values/tolerance.ts';
import { caseOf, textbookLinkage, type Case } from './cases.ts';

const OPENING = 'opening of driven at full pedal';
const PATHS = {
  a: 'levers.foot.arms.pin.radius',
  b: 'rods.coupler.length',
  c: 'levers.driven.arms.pin.radius',
  d: 'levers.driven.pivot.0',
} as const;

function builds({ mechanism, outcomes, toleranced }: Case, law: Law, from: number, to: number, seed = 1): Builds {
  return finished(randomBuilds(mechanism, outcomes, toleranced, { seed, law, from, to }));
}

describe('the linkage of the textbook, all four lengths ± 0.05 mm', () => {
  const own = caseOf(textbookLinkage(`± ${toleranceCase.tolerance} mm`));
  const at = own.outcome(OPENING);
  const { middle, effects } = finished(effectsOn(own.mechanism, own.outcomes, own.toleranced))[at]!;

  test('has the stated sensitivities, the greatest first', () => {
    const rates = Object.fromEntries(effects.map(({ of, rate }) => [of.path, rate]));
    for (const [name, path] of Object.entries(PATHS) as [keyof typeof PATHS, string][]) {
      expectFigure(rates[path]! * 1e-3, toleranceCase.perUnit[name], 8, name);
    }
    expect(effects.map(({ of }) => of.path)).toEqual([PATHS.b, PATHS.a, PATHS.d, PATHS.c]);
  });

  test('stacks to the stated worst case and root of the sum of squares', () => {
    const stack = stackOf(effects);
    expectFigure(stack.highest / DEG, toleranceCase.worstCaseDeg, 6, 'worst case up');
    expectFigure(-stack.lowest / DEG, toleranceCase.worstCaseDeg, 6, 'worst case down');
    expectFigure(stack.rootSumSquare / DEG, toleranceCase.rootSumSquareDeg, 6, 'root of the sum of squares');
    expect(stack.kinked).toBe(false);
  });

  test('has the stated corners', () => {
    const range = finished(corners(own.mechanism, own.outcomes, own.toleranced))![at]!;
    expectFigure(Math.max(range.most - middle, middle - range.least) / DEG, toleranceCase.cornersDeg, 6, 'corners');
    expect(range.missing).toBe(0);
  });

  test('has three standard deviations of random builds as stated', () => {
    const { deviation, mean, missing } = finished(distributionsOf(own.outcomes, [builds(own, 'normal', 0, 10_000)])).outcomes[at]!;
    expect(Math.abs(3 * deviation - toleranceCase.rootSumSquareDeg * DEG) / DEG).toBeLessThan(toleranceCase.randomWithinDeg);
    // Five standard errors of a mean of 10 000.
    expect(Math.abs(mean - middle)).toBeLessThan((5 * deviation) / 100);
    expect(missing).toBe(0);
  });

  test('has the standard deviation of even builds: half of the width over √3 for each, where normal ones have it over 3', () => {
    const { deviation, percentiles } = finished(distributionsOf(own.outcomes, [builds(own, 'uniform', 0, 10_000)])).outcomes[at]!;
    const expected = (toleranceCase.rootSumSquareDeg * DEG) / Math.sqrt(3);
    expect(Math.abs(deviation / expected - 1)).toBeLessThan(0.03);
    // None lies beyond the worst corner.
    expect(Math.max(...percentiles.map((each) => Math.abs(each - middle)))).toBeLessThan(toleranceCase.cornersDeg * DEG);
  });
});

test('random builds come to the linear figure as tolerances shrink', () => {
  const own = caseOf(textbookLinkage('± 0.001 mm'));
  const at = own.outcome(OPENING);
  const { middle, effects } = finished(effectsOn(own.mechanism, own.outcomes, own.toleranced))[at]!;
  const all = builds(own, 'normal', 0, 200).values[at]!;
  // Build by build: the sum of each dimension's effect, from the very draws that the build was made of.
  const wide = caseOf(textbookLinkage('± 0.1 mm'));
  const hundredfold = builds(wide, 'normal', 0, 200).values[at]!;
  const spread = stackOf(effects).rootSumSquare;
  let [nearest, farthest] = [0, 0];
  all.forEach((value, k) => {
    nearest = Math.max(nearest, Math.abs(100 * (value - middle) - (hundredfold[k]! - middle)) / (100 * spread));
    farthest = Math.max(farthest, Math.abs(value - middle) / spread);
  });
  // What is left is of second order: about 1e-3 of the spread at a tenth of a millimetre.
  expect(nearest).toBeLessThan(1e-2);
  expect(farthest).toBeGreaterThan(0.5);
});

test('the same seed gives the same builds however they are shared out, and another seed others', () => {
  const own = caseOf(textbookLinkage('± 0.05 mm'));
  const whole = builds(own, 'normal', 0, 300);
  const parts = [builds(own, 'normal', 170, 300), builds(own, 'normal', 0, 170)];

  expect([...parts[1]!.values[0]!, ...parts[0]!.values[0]!]).toEqual([...whole.values[0]!]);
  expect(finished(distributionsOf(own.outcomes, parts))).toEqual(finished(distributionsOf(own.outcomes, [whole])));
  expect([...builds(own, 'normal', 0, 300, 2).values[0]!]).not.toEqual([...whole.values[0]!]);
});

test('an unsymmetrical tolerance is centred', () => {
  const own = caseOf(textbookLinkage('+0.1/-0 mm'));
  const moved = caseOf(
    textbookLinkage('± 0.05 mm')
      .replace('40 mm ±', '40.05 mm ±')
      .replace('120 mm ±', '120.05 mm ±')
      .replace('80 mm ±', '80.05 mm ±')
      .replace('100 mm ±', '100.05 mm ±'),
  );
  const [one, other] = [own, moved].map((each) => builds(each, 'uniform', 0, 50).values[0]!) as [Float64Array, Float64Array];
  one.forEach((value, k) => expect(value).toBeCloseTo(other[k]!, 12));
});
