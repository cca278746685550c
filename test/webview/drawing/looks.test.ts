import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { areLooks, keepLook, lookOf, looks, middleIn, viewportAt } from '../../../webview/drawing/looks.ts';

const A = 'file:///a.throttle.yaml';
const B = 'file:///b.throttle.yaml';

beforeEach(() => {
  looks.value = [];
});

describe('looks', () => {
  it('keeps one for each view of a file, and none of another file', () => {
    keepLook({ uri: A, direction: 'front', seen: 'all' });
    keepLook({ uri: A, direction: 'top', seen: 'engine' });
    keepLook({ uri: A, direction: 'front', seen: { x: 1, y: 2, scale: 3 } });
    expect([lookOf(A, 'front'), lookOf(A, 'top'), lookOf(A, 'side')]).toEqual([{ x: 1, y: 2, scale: 3 }, 'engine', undefined]);
    keepLook({ uri: B, direction: 'front', seen: 'all' });
    expect(lookOf(A, 'front')).toBeUndefined();
    expect(looks.value).toHaveLength(1);
  });

  it('finds the same viewport in the same room, and the same middle in another', () => {
    const viewport = { scale: 2.5, x: -31, y: 77 };
    const middle = middleIn(viewport, { width: 640, height: 480 });
    const again = viewportAt(middle, { width: 640, height: 480 });
    expect([again.scale, again.x, again.y]).toEqual([2.5, expect.closeTo(-31, 9), expect.closeTo(77, 9)]);
    const small = viewportAt(middle, { width: 300, height: 200 });
    expect((150 - small.x) / small.scale).toBeCloseTo((320 - viewport.x) / viewport.scale, 9);
  });

  it('takes back what it kept, and nothing that could not be drawn', () => {
    expect(areLooks([{ uri: A, direction: 'side', seen: { x: 0, y: -5, scale: 0.5 } }])).toBe(true);
    for (const scale of [0, -1, NaN, Infinity, 1e300, '2', null]) {
      expect(areLooks([{ uri: A, direction: 'side', seen: { x: 0, y: 0, scale } }])).toBe(false);
    }
    expect(areLooks([{ uri: A, direction: 'below', seen: 'all' }])).toBe(false);
    fc.assert(fc.property(fc.anything(), (kept) => typeof areLooks([{ uri: A, direction: 'side', seen: kept }]) === 'boolean'));
  });
});
