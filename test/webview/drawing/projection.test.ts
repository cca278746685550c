import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Triple } from '../../../src/protocol/picture.ts';
import { depthOf, inSpace, isEndOn, onPaper, PROJECTIONS } from '../../../webview/drawing/projection.ts';
import { cross, dot } from '../../../webview/drawing/vector.ts';

const figure = fc.double({ min: -1, max: 1, noNaN: true });
const place: fc.Arbitrary<Triple> = fc.tuple(figure, figure, figure);

describe('projection', () => {
  it.each(Object.entries(PROJECTIONS))(
    '%s: right, up and towards are square to each other and right-handed',
    (_, { right, up, towards }) => {
      expect([dot(right, right), dot(up, up), dot(right, up)]).toEqual([1, 1, 0]);
      expect(cross(right, up).map((figure) => figure + 0)).toEqual([...towards]);
    },
  );

  it('has x to the right in the front view and from above, and y up in the front view and from the side', () => {
    expect(onPaper(PROJECTIONS.front, [0.1, 0.2, 0.3])).toEqual({ x: 100, y: -200 });
    const above = onPaper(PROJECTIONS.top, [0.1, 0.2, 0.3]);
    expect(above.x).toBeCloseTo(100, 9);
    // What is nearer in the front view lies lower, as on a table.
    expect(above.y).toBeCloseTo(300, 9);
    const side = onPaper(PROJECTIONS.side, [0.1, 0.2, 0.3]);
    // Seen from the right, the front is at the left.
    expect(side.x).toBeCloseTo(-300, 9);
    expect(side.y).toBeCloseTo(-200, 9);
  });

  it('leads back to the place from its spot and its depth', () => {
    fc.assert(
      fc.property(place, fc.constantFrom(...Object.values(PROJECTIONS)), (there, view) => {
        const back = inSpace(view, onPaper(view, there), depthOf(view, there));
        back.forEach((figure, i) => expect(figure).toBeCloseTo(there[i]!, 12));
      }),
    );
  });

  it('takes an axis for end on only where it points at the person', () => {
    expect(isEndOn(PROJECTIONS.front, [0, 0, -1])).toBe(true);
    expect(isEndOn(PROJECTIONS.front, [0, 0.6, 0.8])).toBe(false);
    expect(isEndOn(PROJECTIONS.top, [0, 0, 1])).toBe(false);
  });
});
