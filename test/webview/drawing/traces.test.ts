import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { extentOf } from '../../../webview/drawing/extent.ts';
import { PROJECTIONS } from '../../../webview/drawing/projection.ts';
import { traceOf } from '../../../webview/drawing/traces.ts';
import { turningPoint, xTurned, yTurned } from '../../../webview/drawing/turning.ts';
import { shownOf } from '../../support/drawingPage.ts';

const FOLDER = new URL('../../../examples/', import.meta.url);
const EXAMPLES = readdirSync(FOLDER).filter((name) => name.endsWith('.throttle.yaml'));

/** From a spot to the nearest of a line of spots, mm. */
function away(spot: { x: number; y: number }, line: readonly { x: number; y: number }[]): number {
  const each = line.slice(1).map((b, i) => {
    const a = line[i]!;
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const t = Math.min(1, Math.max(0, ((spot.x - a.x) * dx + (spot.y - a.y) * dy) / (dx * dx + dy * dy || 1)));
    return Math.hypot(spot.x - a.x - t * dx, spot.y - a.y - t * dy);
  });
  return Math.min(...each);
}

describe('traces', () => {
  it.each(EXAMPLES)('of %s pass through each pin at each station, and the drawing takes them in', (name) => {
    const { picture } = shownOf(readFileSync(new URL(name, FOLDER), 'utf8'));
    for (const view of Object.values(PROJECTIONS)) {
      const box = extentOf(picture, view);
      for (const [index, { arms, rotation, isDriven }] of picture.levers.entries()) {
        if (!isDriven) continue;
        for (const { at } of arms) {
          const point = turningPoint(view, index, at);
          const line = traceOf(point, rotation);
          const radius = Math.hypot(at[3]!, at[4]!, at[5]!) * 1000;
          for (const angle of rotation.filter((figure, i) => i % 10 === 0 && !Number.isNaN(figure))) {
            const spot = { x: xTurned(point, angle), y: yTurned(point, angle) };
            expect(away(spot, line)).toBeLessThan(0.0004 * radius);
            expect(spot.x).toBeGreaterThan(box.left - 0.0004 * radius);
            expect(spot.x).toBeLessThan(box.right + 0.0004 * radius);
            expect(spot.y).toBeGreaterThan(box.top - 0.0004 * radius);
            expect(spot.y).toBeLessThan(box.bottom + 0.0004 * radius);
          }
        }
      }
    }
  });

  it('are the drawn place alone where there is no rotation', () => {
    const point = turningPoint(PROJECTIONS.front, 0, [0, 0, 0, 0.04, 0, 0, 0, 0.04, 0]);
    const [spot, ...more] = traceOf(point, Float64Array.of(NaN, NaN));
    expect(more).toEqual([]);
    expect(spot!.x).toBe(40);
    expect(spot!.y).toBeCloseTo(0, 12);
  });
});
