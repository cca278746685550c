import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { forgetNone, placeLabels, type Label, type PlacedLabel, type Rect, type Way } from '../../../webview/drawing/labels.ts';

const LINE = 14;
const measure = (text: string) => 6 * text.length;
const label = (key: string, x: number, y: number): Label => ({ key, text: key, x, y });
const room = { size: { width: 500, height: 400 }, height: LINE, measure, taken: [] as readonly Rect[] };

/** By the baseline a text's descent lies under it: a quarter of the line. */
const rectOf = ({ left, baseline, text }: PlacedLabel): Rect => ({
  left,
  right: left + measure(text),
  top: baseline - 0.75 * LINE,
  bottom: baseline + 0.25 * LINE,
});
const meet = (a: Rect, b: Rect) => a.left < b.right - 1e-6 && b.left < a.right - 1e-6 && a.top < b.bottom - 1e-6 && b.top < a.bottom - 1e-6;

const names = fc.array(
  fc.record({ letters: fc.integer({ min: 1, max: 12 }), x: fc.integer({ min: 200, max: 300 }), y: fc.integer({ min: 150, max: 250 }) }),
  { minLength: 1, maxLength: 16 },
);

describe('labels', () => {
  it('lie neither on each other nor on what is written, and are never cut, on however dense a shaft', () => {
    fc.assert(
      fc.property(names, (all) => {
        const taken = [{ left: 180, top: 100, right: 320, bottom: 140 }];
        const labels = all.map(({ letters, x, y }, i) => ({ key: String(i), text: 'n'.repeat(letters), x, y }));
        const rects = placeLabels(labels, { ...room, taken, ways: new Map() }).map(rectOf);
        expect(rects.length).toBe(all.length);
        for (const [i, rect] of rects.entries()) {
          expect(rect.left >= 0 && rect.top >= -1e-6 && rect.right <= 500 && rect.bottom <= 400 + 1e-6).toBe(true);
          for (const other of [...rects.slice(i + 1), ...taken]) expect(meet(rect, other)).toBe(false);
        }
      }),
    );
  });

  it('stand beside their part where there is room, and have a line to it where there is none', () => {
    const crowd = Array.from({ length: 9 }, (_, i) => label(`part_${i}`, 250, 200));
    const placed = placeLabels(crowd, { ...room, ways: new Map() });
    expect(placed[0]!.leader).toBeUndefined();
    const far = placed.filter(({ leader }) => leader !== undefined);
    expect(far.length).toBeGreaterThan(2);
    for (const each of far) {
      const { left, right, top, bottom } = rectOf(each);
      const { x, y } = each.leader!;
      expect(x >= left && x <= right && y >= top - 1e-6 && y <= bottom + 1e-6).toBe(true);
    }
  });

  it('are left out where there is no room, until they are looked for again', () => {
    const ways = new Map<string, Way>();
    const labels = [
      label('front_back', 30, 15),
      label('rear_bank', 30, 15),
      label('position', 30, 15),
      label('a_name_broader_than_all', 30, 15),
    ];
    const tiny = { ...room, size: { width: 60, height: 30 }, ways };
    const placed = placeLabels(labels, tiny);
    expect(placed.map(({ key }) => key)).toEqual(['front_back', 'rear_bank']);
    expect(meet(rectOf(placed[0]!), rectOf(placed[1]!))).toBe(false);
    // A frame on, with room enough: names do not flicker while the pedal moves.
    const wide = { ...tiny, size: { width: 500, height: 400 } };
    expect(placeLabels(labels, wide).length).toBe(2);
    forgetNone(ways);
    expect(placeLabels(labels, wide).length).toBe(4);
  });

  it('keep their side of the part while it moves, until they would be cut', () => {
    const ways = new Map<string, Way>();
    const [before] = placeLabels([label('link', 480, 50)], { ...room, ways });
    const [after] = placeLabels([label('link', 300, 50)], { ...room, ways });
    expect(after!.left - before!.left).toBe(-180);
    const [edge] = placeLabels([label('link', 4, 50)], { ...room, ways });
    expect(edge!.left).toBeGreaterThanOrEqual(0);
  });
});
