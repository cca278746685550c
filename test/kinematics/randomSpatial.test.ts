/** Two thousand random spatial linkages, near toggles and change points on purpose, read from text and solved. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyMechanism } from '../support/mechanisms.ts';
import { checkRandom } from './randomChecks.ts';

describe('random spatial linkages', () => {
  test('keep their lengths and branch and stand where Newton steps with LU from mathjs bring them', { timeout: 240_000 }, () => {
    const { faults, compared, parted } = checkRandom(fc.sample(anyMechanism({ only: 'spatial' }), { numRuns: 2000, seed: 21 }));
    expect(faults).toEqual([]);
    expect(compared).toBeGreaterThan(8_000);
    expect(parted).toBeLessThan(1600);
  });
});
