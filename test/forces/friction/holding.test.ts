/** One lever cut free, against its own equation. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { holdingForce, unheld } from '../../../src/forces/friction/holding.ts';

const figure = fc.double({ min: -50, max: 50, noNaN: true });

describe('the force that holds a lever about to turn', () => {
  it('leaves moments in balance with the bearing rubbing against the turn', () => {
    fc.assert(
      fc.property(
        fc.record({ moment: figure, x: figure, y: figure, z: figure, drag: fc.double({ min: 0, max: 5, noNaN: true }) }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.constantFrom(1, -1),
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        (known, radius, way, angle) => {
          const free = { ...known, radius, way };
          const turns = unheld(free);
          // Pulls with arm 1 the way that it has to be held.
          const arm = turns > 0 ? -1 : 1;
          const [gx, gy] = [Math.cos(angle), Math.sin(angle)];
          const force = holdingForce(free, arm, gx, gy, 0);
          const load = Math.hypot(known.x + force * gx, known.y + force * gy, known.z);
          const all = Math.abs(known.moment) + force + known.drag + radius * load + 1e-9;
          expect(force).toBeGreaterThanOrEqual(-1e-9 * all);
          expect(Math.abs(known.moment + force * arm - way * (known.drag + radius * load)) / all).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 2000, seed: 61 },
    );
  });

  it('is none within the friction circle', () => {
    const free = { moment: 3, x: 0, y: 5, z: 0, drag: 0, radius: 0.5, way: -1 };
    expect(holdingForce(free, -0.5, 1, 0, 0)).toBeNaN();
    expect(holdingForce(free, -0.50001, 1, 0, 0)).toBeGreaterThan(1e3);
  });

  it('is nothing of friction where the lever stands', () => {
    const free = { moment: 3, x: 4, y: 5, z: 0, drag: 2, radius: 0.5, way: 0 };
    expect(unheld(free)).toBe(3);
    expect(holdingForce(free, -2, 1, 0, 0)).toBe(1.5);
  });
});
