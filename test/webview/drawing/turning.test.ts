import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Triple } from '../../../src/protocol/picture.ts';
import { onPaper, PROJECTIONS } from '../../../webview/drawing/projection.ts';
import { inSpaceAt, turnedAbout, turningPoint, xTurned, yTurned } from '../../../webview/drawing/turning.ts';
import { cross, dot, plus, scaled, unit } from '../../../webview/drawing/vector.ts';

const figure = fc.double({ min: -1, max: 1, noNaN: true });
const triple: fc.Arbitrary<Triple> = fc.tuple(figure, figure, figure);
const axis = triple.map(unit).filter((way) => way !== undefined);
const angle = fc.double({ min: -7, max: 7, noNaN: true });

/** Base, perp and cross of the point that is at `drawn` when nothing has turned. */
function turning(drawn: Triple, pivot: Triple, about: Triple): readonly number[] {
  const arm = plus(drawn, pivot, -1);
  const base = plus(pivot, scaled(about, dot(about, arm)));
  const perp = plus(drawn, base, -1);
  return [...base, ...perp, ...cross(about, perp)];
}

describe('turning points', () => {
  it('agree with turning the drawn place about the axis by Rodrigues and projecting it', () => {
    fc.assert(
      fc.property(triple, triple, axis, angle, fc.constantFrom(...Object.values(PROJECTIONS)), (drawn, pivot, about, rotation, view) => {
        const at = turning(drawn, pivot, about);
        const there = turnedAbout(drawn, pivot, about, rotation);
        inSpaceAt(at, rotation).forEach((value, i) => expect(value).toBeCloseTo(there[i]!, 10));
        const point = turningPoint(view, 0, at);
        const spot = onPaper(view, there);
        expect(xTurned(point, rotation)).toBeCloseTo(spot.x, 7);
        expect(yTurned(point, rotation)).toBeCloseTo(spot.y, 7);
      }),
    );
  });

  it('turn counter-clockwise where the axis points at the person', () => {
    const [x, y] = turnedAbout([1, 0, 0], [0, 0, 0], [0, 0, 1], Math.PI / 2);
    expect(x).toBeCloseTo(0, 12);
    expect(y).toBeCloseTo(1, 12);
  });

  it('come back when they are turned back', () => {
    fc.assert(
      fc.property(triple, triple, axis, angle, (drawn, pivot, about, rotation) => {
        const back = turnedAbout(turnedAbout(drawn, pivot, about, rotation), pivot, about, -rotation);
        back.forEach((value, i) => expect(value).toBeCloseTo(drawn[i]!, 10));
      }),
    );
  });
});
