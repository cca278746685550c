import { describe, expect, it } from 'vitest';
import type { DrawnKeepOut, Triple } from '../../../src/protocol/picture.ts';
import { outlineOf } from '../../../webview/drawing/symbols/keepOuts.ts';

const polygon = (...corners: readonly (readonly [number, number])[]): DrawnKeepOut => ({
  name: 'bonnet',
  clearance: 0.005,
  shape: { kind: 'polygon', corners: corners.map(([x, y]): Triple => [x, y, 0]) },
});

const SHAPES = {
  square: polygon([0, 0], [0.1, 0], [0.1, 0.05], [0, 0.05]),
  'clockwise square': polygon([0, 0.05], [0.1, 0.05], [0.1, 0], [0, 0]),
  'notched bar': polygon([0, 0], [0.2, 0], [0.2, 0.03], [0.1, 0.02], [0, 0.03]),
};

/** From a place to the nearest point of a polygon's edge, m. */
function distance([x, y]: Triple, corners: readonly Triple[]): number {
  const each = corners.map(([ax, ay], i) => {
    const [bx, by] = corners[(i + 1) % corners.length]!;
    const t = Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2)));
    return Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay));
  });
  return Math.min(...each);
}

describe('clearance line', () => {
  it.each(Object.entries(SHAPES))('of a %s keeps the clearance all around', (_, shape) => {
    if (shape.shape.kind !== 'polygon') throw new Error('No polygon');
    const line = outlineOf(shape, shape.clearance);
    for (const [i, corner] of line.entries()) {
      const next = line[(i + 1) % line.length]!;
      expect(distance(corner, shape.shape.corners)).toBeCloseTo(0.005, 9);
      // Chords of an arc of 6° lie 0.14 % within it.
      const middle: Triple = [(corner[0] + next[0]) / 2, (corner[1] + next[1]) / 2, 0];
      expect(distance(middle, shape.shape.corners)).toBeGreaterThan(0.005 * 0.998);
    }
  });

  it('of a circle is a circle', () => {
    const line = outlineOf({ name: 'rail', clearance: 0.003, shape: { kind: 'circle', centre: [0.1, 0.2, 0], radius: 0.01 } }, 0.003);
    for (const [x, y] of line) expect(Math.hypot(x - 0.1, y - 0.2)).toBeCloseTo(0.013, 12);
  });
});
