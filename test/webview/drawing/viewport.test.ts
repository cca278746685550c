import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitted, kept, panned, pinched, resized, wheelFactor, weightIn, zoomed, type Viewport } from '../../../webview/drawing/viewport.ts';
import { roundLength } from '../../../webview/drawing/overlay.ts';

const figure = fc.double({ min: -500, max: 500, noNaN: true });
const box = fc.tuple(figure, figure, figure, figure).map(([a, b, c, d]) => ({
  left: Math.min(a, b),
  right: Math.max(a, b),
  top: Math.min(c, d),
  bottom: Math.max(c, d),
}));
const size = fc.record({ width: fc.integer({ min: 60, max: 2000 }), height: fc.integer({ min: 60, max: 1500 }) });
const viewport: fc.Arbitrary<Viewport> = fc.record({
  scale: fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
  x: fc.double({ min: -1e7, max: 1e7, noNaN: true }),
  y: fc.double({ min: -1e7, max: 1e7, noNaN: true }),
});

describe('viewport', () => {
  it('shows all of the drawing when it fits', () => {
    fc.assert(
      fc.property(box, size, (extent, room) => {
        const { scale, x, y } = fitted(extent, room);
        expect(scale * extent.left + x).toBeGreaterThanOrEqual(-1e-6);
        expect(scale * extent.right + x).toBeLessThanOrEqual(room.width + 1e-6);
        expect(scale * extent.top + y).toBeGreaterThanOrEqual(-1e-6);
        expect(scale * extent.bottom + y).toBeLessThanOrEqual(room.height + 1e-6);
      }),
    );
  });

  it('keeps under the pointer what is under the pointer', () => {
    const before = { scale: 2, x: 30, y: -40 };
    const at = { x: 210, y: 90 };
    const after = zoomed(before, 1.7, at);
    expect(after.scale).toBeCloseTo(3.4, 12);
    expect((at.x - after.x) / after.scale).toBeCloseTo((at.x - before.x) / before.scale, 12);
    expect((at.y - after.y) / after.scale).toBeCloseTo((at.y - before.y) / before.scale, 12);
  });

  it('grows with two fingers that part, and keeps under each what was under it', () => {
    const before = { scale: 2, x: 30, y: -40 };
    const [one, other] = [
      { x: 100, y: 100 },
      { x: 200, y: 100 },
    ];
    const after = pinched(before, one, { x: 50, y: 100 }, other);
    expect(after.scale).toBeCloseTo(3, 12);
    const seen = ({ scale, x, y }: Viewport, at: { x: number; y: number }) => [(at.x - x) / scale, (at.y - y) / scale];
    const close = (a: readonly number[], b: readonly number[]) => a.forEach((figure, i) => expect(figure).toBeCloseTo(b[i]!, 9));
    close(seen(after, { x: 50, y: 100 }), seen(before, one));
    close(seen(after, other), seen(before, other));
    expect(pinched(before, one, other, other)).toEqual(panned(before, 50, 0));
  });

  it('keeps the middle in the middle when the window changes', () => {
    const before = { scale: 3, x: 5, y: 7 };
    const after = resized(before, { width: 400, height: 300 }, { width: 700, height: 200 });
    expect((350 - after.x) / after.scale).toBeCloseTo((200 - before.x) / before.scale, 12);
    expect((100 - after.y) / after.scale).toBeCloseTo((150 - before.y) / before.scale, 12);
  });

  it('never loses the drawing, nor goes beyond what can be recognised, whatever is asked', () => {
    fc.assert(
      fc.property(viewport, box, size, (wanted, extent, room) => {
        const { scale, x, y } = kept(wanted, extent, room);
        const fit = fitted(extent, room).scale;
        expect(scale).toBeGreaterThanOrEqual(0.2 * fit * (1 - 1e-9));
        expect(scale).toBeLessThanOrEqual(Math.max(100 * fit, 200) * (1 + 1e-9));
        expect(scale * extent.right + x).toBeGreaterThanOrEqual(29.99);
        expect(scale * extent.left + x).toBeLessThanOrEqual(room.width - 29.99);
        expect(scale * extent.bottom + y).toBeGreaterThanOrEqual(29.99);
        expect(scale * extent.top + y).toBeLessThanOrEqual(room.height - 29.99);
      }),
    );
  });

  it('leaves alone what is in bounds', () => {
    const extent = { left: 0, right: 100, top: 0, bottom: 50 };
    const room = { width: 500, height: 400 };
    const near = panned(zoomed(fitted(extent, room), 3, { x: 100, y: 100 }), 20, -10);
    expect(kept(near, extent, room)).toEqual(near);
  });

  it('comes nearer as the wheel turns away, by no more than a bounded step', () => {
    expect(wheelFactor({ deltaY: -100, deltaMode: 0, ctrlKey: false })).toBeGreaterThan(1.1);
    expect(wheelFactor({ deltaY: 100, deltaMode: 0, ctrlKey: false })).toBeCloseTo(
      1 / wheelFactor({ deltaY: -100, deltaMode: 0, ctrlKey: false }),
      12,
    );
    expect(wheelFactor({ deltaY: -1e9, deltaMode: 2, ctrlKey: true })).toBeLessThan(12);
    expect(wheelFactor({ deltaY: -3, deltaMode: 1, ctrlKey: false })).toBeCloseTo(
      wheelFactor({ deltaY: -48, deltaMode: 0, ctrlKey: false }),
      12,
    );
  });

  it('draws lighter in a small window, and no heavier in a huge one', () => {
    const [small, middle, large, huge] = [280, 400, 900, 3000].map((width) => weightIn({ width, height: width }));
    expect(small).toBe(0.6);
    expect(middle).toBeGreaterThan(0.6);
    expect(middle).toBeLessThan(1);
    expect([large, huge]).toEqual([1, 1]);
  });

  it('has a scale of a round length', () => {
    expect([0.0137, 0.9, 1, 1.9, 2, 4.99, 5, 9.99, 48, 110, 3000].map(roundLength)).toEqual([0.01, 0.5, 1, 1, 2, 2, 5, 5, 20, 100, 2000]);
  });
});
