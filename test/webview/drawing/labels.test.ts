import { describe, expect, it } from 'vitest';
import { placeLabels, type Label } from '../../../webview/drawing/labels.ts';

const measure = (text: string) => 6 * text.length;
const label = (key: string, x: number, y: number): Label => ({ key, text: key, x, y });

describe('labels', () => {
  it('do not lie on each other where there is room', () => {
    const labels = ['pedal', 'crank', 'shaft', 'rear'].map((key, i) => label(key, 200 + 3 * i, 100));
    const placed = placeLabels(labels, 14, 500, measure, new Map());
    for (const [i, a] of placed.entries()) {
      for (const b of placed.slice(i + 1)) {
        const apart = Math.abs(a.baseline - b.baseline) >= 14 || a.left + measure(a.text) <= b.left || b.left + measure(b.text) <= a.left;
        expect(apart, `${a.key} and ${b.key}`).toBe(true);
      }
    }
  });

  it('stay on the screen where they can', () => {
    const [placed] = placeLabels([label('position', 480, 50)], 14, 500, measure, new Map());
    expect(placed!.left + measure('position')).toBeLessThanOrEqual(500);
  });

  it('keep their side of the part while it moves', () => {
    const ways = new Map<string, number>();
    const [before] = placeLabels([label('link', 480, 50)], 14, 500, measure, ways);
    const [after] = placeLabels([label('link', 300, 50)], 14, 500, measure, ways);
    expect(after!.left - before!.left).toBe(-180);
  });
});
