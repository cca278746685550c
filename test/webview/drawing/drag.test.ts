import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Handle, Picture, Triple } from '../../../src/protocol/picture.ts';
import {
  arrowStep,
  drawnPlaceAt,
  handleAsDrawn,
  placeText,
  roundedPlace,
  spotOfHandle,
  withChange,
  withoutPath,
} from '../../../webview/drawing/drag.ts';
import { PROJECTIONS } from '../../../webview/drawing/projection.ts';
import { cross, dot, plus, scaled, unit } from '../../../webview/drawing/vector.ts';

const figure = fc.double({ min: -1, max: 1, noNaN: true });
const triple: fc.Arbitrary<Triple> = fc.tuple(figure, figure, figure);
const axis = triple.map(unit).filter((way) => way !== undefined);
const angle = fc.double({ min: -4, max: 4, noNaN: true });
const view = fc.constantFrom(...Object.values(PROJECTIONS));

/** One lever with one pin, as far as moving needs it. */
function pinOn(drawn: Triple, pivot: Triple, about: Triple): { readonly picture: Picture; readonly handle: Handle } {
  const base = plus(pivot, scaled(about, dot(about, plus(drawn, pivot, -1))));
  const perp = plus(drawn, base, -1);
  const handle: Handle = {
    path: 'levers.crank.arms.out',
    label: 'pin out of crank',
    kind: 'pin',
    at: { lever: 0, at: [...base, ...perp, ...cross(about, perp)] },
    lets: [],
  };
  return { picture: { levers: [{ pivot, axis: about }] } as unknown as Picture, handle };
}

describe('moving a place', () => {
  it('is where it was when the pointer has not moved, at any rotation and in any view', () => {
    fc.assert(
      fc.property(triple, triple, axis, angle, view, (drawn, pivot, about, rotation, seen) => {
        const { picture, handle } = pinOn(drawn, pivot, about);
        const back = drawnPlaceAt(picture, seen, handle, spotOfHandle(seen, handle, rotation), rotation);
        back.forEach((value, i) => expect(value).toBeCloseTo(drawn[i]!, 10));
      }),
    );
  });

  it('turns what the pointer moved back by the rotation of the lever', () => {
    const { picture, handle } = pinOn([0.04, 0, 0], [0, 0, 0], [0, 0, 1]);
    // After a quarter turn the pin stands at y = 40 mm; 5 mm to the right there is 5 mm down as drawn.
    const to = drawnPlaceAt(picture, PROJECTIONS.front, handle, { x: 5, y: -40 }, Math.PI / 2);
    expect(to[0]).toBeCloseTo(0.04, 12);
    expect(to[1]).toBeCloseTo(-0.005, 12);
    expect(to[2]).toBe(0);
  });

  it('keeps the depth of what is fixed', () => {
    const handle: Handle = { path: 'cables.main.enters', label: '', kind: 'housing', at: [0.1, 0.2, 0.03], lets: [] };
    const to = drawnPlaceAt({ levers: [] } as unknown as Picture, PROJECTIONS.top, handle, { x: 110, y: 40 }, 0);
    expect(to).toEqual([0.11, 0.2, 0.04]);
    expect(handleAsDrawn(handle)).toEqual([0.1, 0.2, 0.03]);
  });

  it('rounds to a tenth of a millimetre, or a hundredth, and leaves what was not moved', () => {
    expect(roundedPlace([0.012345, 0.0200004, 0], [0.01, 0.0200004, 0], false)).toEqual([0.0123, 0.0200004, 0]);
    expect(roundedPlace([0.012345, -0.017777, 0], [0.01, 0.02, 0], true)).toEqual([0.01235, -0.01778, 0]);
  });

  it('takes a tenth, a whole or a hundredth of a millimetre for an arrow key, up being up', () => {
    const plain = { shiftKey: false, altKey: false };
    expect(arrowStep('ArrowUp', plain)).toEqual({ x: 0, y: -0.1 });
    expect(arrowStep('ArrowRight', { ...plain, shiftKey: true })).toEqual({ x: 1, y: 0 });
    expect(arrowStep('ArrowDown', { ...plain, altKey: true })).toEqual({ x: 0, y: 0.01 });
    expect(arrowStep('a', plain)).toBeUndefined();
  });

  it('takes the place of what was tried at the same path, and of nothing else', () => {
    const dial = { kind: 'value', path: 'let.reach', value: 3 } as const;
    const old = { kind: 'place', path: 'cables.main.enters', to: [0, 0, 0], fine: false, through: undefined } as const;
    const moved = { ...old, to: [1, 0, 0] } as const;
    expect(withChange([dial, old], moved)).toEqual([dial, moved]);
    expect(withoutPath([dial, moved], old.path)).toEqual([dial]);
  });

  it('says a place as the file does', () => {
    expect(placeText([0.12, -0.0402, 0])).toBe('[120, −40.2] mm');
    expect(placeText([0.12, 0.04, 0.0005])).toBe('[120, 40, 0.5] mm');
  });
});
