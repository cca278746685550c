/** The area formula against quadrature of what is seen along the bore, its slope against differences, and its limits. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { greatestOpenArea, openArea, openAreaSlope, shadowAngle, type PlateShape } from '../../src/plates/openArea.ts';

const DEG = Math.PI / 180;

/** m and rad; shafts from none to nearly the bore, also exactly at either end. */
const anyShape = fc
  .record({
    bore: fc.double({ min: 0.02, max: 0.09, noNaN: true }),
    share: fc.oneof({ weight: 6, arbitrary: fc.double({ min: 0, max: 0.999, noNaN: true }) }, fc.constantFrom(0, 1e-6, 0.9999)),
    seat: fc.oneof({ weight: 6, arbitrary: fc.double({ min: 0, max: 40, noNaN: true }) }, fc.constantFrom(0, 75)),
  })
  .map(({ bore, share, seat }): PlateShape => ({ bore, shaft: bore * share, seat: seat * DEG }));

/** Somewhere between seat and along the bore. */
const anyCase = fc.record({ shape: anyShape, share: fc.double({ min: 0.005, max: 1, noNaN: true }) }).map(({ shape, share }) => ({
  shape,
  angle: shape.seat + share * (Math.PI / 2 - shape.seat),
}));

/**
 * Seen along the bore: a disc, less the union of an ellipse that reaches across the bore along the shaft, and of a strip as wide as the
 * shaft. Taken by chords across the shaft, at y = R sin θ; Simpson's rule between the places where strip, ellipse or bore take over.
 */
function seenOpen({ bore, shaft, seat }: PlateShape, angle: number): number {
  const radius = bore / 2;
  const narrowed = Math.abs(Math.cos(angle)) / Math.cos(seat);
  const openHalf = (theta: number): number => {
    const chord = radius * Math.cos(theta);
    return Math.max(0, chord - Math.max(narrowed * chord, shaft / 2)) * radius * Math.cos(theta);
  };
  const corner = (chord: number): number => Math.acos(Math.min(1, chord / radius));
  const places = [0, corner(shaft / 2 / narrowed), corner(shaft / 2), Math.PI / 2].sort((one, other) => one - other);
  return 4 * places.slice(1).reduce((sum, to, i) => sum + simpson(openHalf, places[i]!, to), 0);
}

function simpson(f: (x: number) => number, from: number, to: number): number {
  const step = (to - from) / SLICES;
  let sum = f(from) + f(to);
  for (let i = 1; i < SLICES; i++) sum += (i % 2 === 1 ? 4 : 2) * f(from + i * step);
  return (sum * step) / 3;
}

const SLICES = 400;

describe('open area', () => {
  it('is what quadrature finds open along the bore', () => {
    let hidden = 0;
    fc.assert(
      fc.property(anyCase, ({ shape, angle }) => {
        const seen = seenOpen(shape, angle);
        if (angle > shadowAngle(shape)) hidden++;
        expect(Math.abs(openArea(shape, angle) - seen)).toBeLessThan(1e-9 * seen + 1e-14 * shape.bore ** 2);
      }),
      { numRuns: 1000 },
    );
    expect(hidden).toBeGreaterThan(50);
  });

  it('falls past 90° as it rose', () => {
    fc.assert(
      fc.property(anyCase, ({ shape, angle }) => {
        const rising = openArea(shape, angle);
        expect(Math.abs(openArea(shape, Math.PI - angle) - rising)).toBeLessThan(1e-13 * shape.bore ** 2);
        // At 90° itself both are the slope of opening further.
        if (angle < Math.PI / 2) expect(openAreaSlope(shape, Math.PI - angle)).toBeCloseTo(-openAreaSlope(shape, angle), 12);
      }),
      { numRuns: 200 },
    );
  });

  it('has the slope that differences give it', () => {
    fc.assert(
      fc.property(anyCase, ({ shape, angle }) => {
        const room = Math.min(angle - shape.seat, Math.PI / 2 - angle, Math.abs(angle - shadowAngle(shape)));
        fc.pre(room > 1e-3);
        const step = room / 50;
        const at = (by: number): number => openArea(shape, angle + by * step);
        const difference = (8 * (at(1) - at(-1)) - (at(2) - at(-2))) / (12 * step);
        expect(Math.abs(openAreaSlope(shape, angle) - difference)).toBeLessThan(1e-6 * shape.bore ** 2);
      }),
      { numRuns: 300 },
    );
  });

  it('only rises from the seat to 90° and is never more than the greatest', () => {
    fc.assert(
      fc.property(anyShape, (shape) => {
        const angles = Array.from({ length: 200 }, (_, i) => shape.seat + (i / 199) * (Math.PI / 2 - shape.seat));
        const areas = angles.map((angle) => openArea(shape, angle));
        areas.slice(1).forEach((area, i) => expect(area).toBeGreaterThanOrEqual(areas[i]! - 1e-15 * shape.bore ** 2));
        expect(areas.at(-1)).toBeCloseTo(greatestOpenArea(shape), 15);
        expect(Math.min(...angles.slice(0, -1).map((angle) => openAreaSlope(shape, angle)))).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 200 },
    );
  });
});

describe('at its limits', () => {
  const shape: PlateShape = { bore: 0.045, shaft: 0.008, seat: 6 * DEG };
  const bore = (Math.PI / 4) * 0.045 ** 2;

  it.each([6, 5.999, 0, -20, 174, 174.001, 180, 200])('is shut at %d°, at or beyond its seat', (angle) => {
    expect(openArea(shape, angle * DEG)).toBeLessThan(1e-19);
    if (angle % 168 !== 6) expect(Math.abs(openAreaSlope(shape, angle * DEG))).toBe(0);
  });

  it('starts at its seat with a slope, towards opening', () => {
    const step = 1e-6;
    expect(openAreaSlope(shape, shape.seat) / (openArea(shape, shape.seat + step) / step)).toBeCloseTo(1, 5);
    expect(openAreaSlope(shape, shape.seat)).toBeGreaterThan(1e-5);
  });

  it('keeps its digits where it opens by a millionth of a degree', () => {
    const opening = 1e-6 * DEG;
    const linear = openAreaSlope(shape, shape.seat) * opening;
    expect(Math.abs(openArea(shape, shape.seat + opening) / linear - 1)).toBeLessThan(1e-6);
  });

  it('stays as it is while the shaft hides it', () => {
    const hidden = shadowAngle(shape);
    for (const angle of [hidden + 1e-9, (hidden + Math.PI / 2) / 2, Math.PI / 2, Math.PI - hidden - 1e-9]) {
      expect(openArea(shape, angle)).toBe(greatestOpenArea(shape));
      expect(openAreaSlope(shape, angle)).toBe(0);
    }
    expect(openArea(shape, hidden - 1e-3)).toBeLessThan(greatestOpenArea(shape));
  });

  it('opens without a shaft as 1 − cos ψ / cos ψ₀, and the whole bore in the end', () => {
    const bare = { ...shape, shaft: 0 };
    for (const angle of [10, 40, 89]) {
      expect(openArea(bare, angle * DEG)).toBeCloseTo(bore * (1 - Math.cos(angle * DEG) / Math.cos(6 * DEG)), 16);
    }
    expect(openArea(bare, Math.PI / 2)).toBeCloseTo(bore, 16);
    expect(openAreaSlope(bare, Math.PI / 2)).toBeCloseTo(-bore / Math.cos(6 * DEG), 16);
  });

  it('opens by nothing at first where the plate seats square to the bore', () => {
    const square = { ...shape, seat: 0 };
    expect(openAreaSlope(square, 0)).toBeCloseTo(0, 20);
    expect(openArea(square, 1e-3)).toBeGreaterThan(0);
    expect(openArea(square, 1e-3)).toBeLessThan(1e-6 * bore);
  });

  it('leaves about π D²/4 − d D under a thin shaft, and next to nothing under one as thick as the bore', () => {
    const thin = greatestOpenArea({ ...shape, shaft: 0.0005 });
    expect(thin).toBeCloseTo(bore - 0.0005 * 0.045, 9);
    expect(Math.abs(thin - (bore - 0.0005 * 0.045))).toBeGreaterThan(0);
    const thick = greatestOpenArea({ ...shape, shaft: 0.0449999 });
    expect(thick).toBeGreaterThan(0);
    expect(thick).toBeLessThan(1e-7 * bore);
    expect(openArea({ ...shape, shaft: 0.045 }, 1)).toBe(0);
    expect(openArea({ ...shape, shaft: 0.05 }, 1)).toBe(0);
  });

  it('has no value for a shape or an angle that is none', () => {
    expect(openArea({ ...shape, bore: 0 }, 1)).toBeNaN();
    expect(openArea({ ...shape, bore: -0.04 }, 1)).toBeNaN();
    expect(openArea({ ...shape, shaft: -0.001 }, 1)).toBeNaN();
    expect(openArea({ ...shape, seat: NaN }, 1)).toBeNaN();
    expect(openArea(shape, NaN)).toBeNaN();
    expect(openAreaSlope(shape, NaN)).toBeNaN();
    expect(openAreaSlope({ ...shape, bore: 0 }, 1)).toBeNaN();
    expect(greatestOpenArea({ ...shape, seat: 2 })).toBeNaN();
  });
});
