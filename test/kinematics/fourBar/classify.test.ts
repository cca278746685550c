import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { classify, solvePosition, solveVelocity } from '../../../src/kinematics/fourBar/index.ts';
import type { BarkerType, FourBar } from '../../../src/kinematics/fourBar/index.ts';
import { anyLinks } from './arbitrary.ts';

describe('classify', () => {
  it('agrees with turning every link through a full turn and seeing where the loop closes', () => {
    fc.assert(
      fc.property(anyLinks, (links) => {
        const found = classify(links);
        if (found.kind !== 'class') {
          const lengths = [links.a, links.b, links.c, links.d].sort((one, next) => one - next);
          expect(found.kind).toBe('cannotAssemble');
          expect(lengths[3]).toBeGreaterThanOrEqual((lengths[0] ?? 0) + (lengths[1] ?? 0) + (lengths[2] ?? 0) - 1e-7);
          return;
        }
        const turns = scan(links);
        expect(found.parts.input === 'crank').toBe(turns.input);
        expect(found.parts.output === 'crank').toBe(turns.output);
        expect(found.parts.coupler === 'crank').toBe(turns.coupler);
        if (found.grashof !== 'III') expect(found.type).toBe(turns.type);
        expect(found.changePoints.length > 0).toBe(found.grashof === 'III');
      }),
      { numRuns: 3000, seed: 1 },
    );
  });

  it('puts every change point on one line', () => {
    fc.assert(
      fc.property(anyLinks, (links) => {
        const found = classify(links);
        if (found.kind !== 'class') return;
        for (const { theta2, theta3, theta4 } of found.changePoints) {
          const end = links.a * Math.cos(theta2) + links.b * Math.cos(theta3);
          expect(Math.abs(end - links.d - links.c * Math.cos(theta4))).toBeLessThan(1e-7);
        }
      }),
      { numRuns: 2000, seed: 2 },
    );
  });

  it.each([
    [{ a: 5, b: 7, c: 6, d: 8 }, [Math.PI]],
    [{ a: 40, b: 100, c: 40, d: 100 }, [0, Math.PI]],
    [{ a: 40, b: 40, c: 100, d: 100 }, [0, Math.PI]],
    [{ a: 50, b: 50, c: 50, d: 50 }, [0, 0, Math.PI]],
  ] as const)('names the input angles of the change points of %o', (links, angles) => {
    const found = classify(links);
    expect(found.kind === 'class' ? found.changePoints.map(({ theta2 }) => theta2) : undefined).toEqual(angles);
  });

  it('says how the parts move in the words of the trade', () => {
    expect(classify({ a: 2, b: 7, c: 9, d: 6 })).toMatchObject({
      name: 'crank-rocker',
      parts: { input: 'crank', coupler: 'rocker', output: 'rocker' },
      shortest: 'input',
      longest: 'output',
    });
    expect(classify({ a: 9, b: 3, c: 8, d: 7 })).toMatchObject({
      name: 'double rocker whose coupler turns fully',
      parts: { coupler: 'crank' },
    });
    expect(classify({ a: 40, b: 100, c: 40, d: 100 })).toMatchObject({ name: 'parallelogram or antiparallelogram' });
    expect(classify({ a: 40, b: 40, c: 100, d: 100 })).toMatchObject({ name: 'kite' });
  });

  it('takes sums as equal within the stated part of the whole, and no further', () => {
    const whole = 26;
    expect(classify({ a: 5, b: 7, c: 6, d: 8 + 0.9e-9 * whole })).toMatchObject({ grashof: 'III' });
    expect(classify({ a: 5, b: 7, c: 6, d: 8 + 1.1e-9 * whole })).toMatchObject({ grashof: 'II' });
    expect(classify({ a: 5, b: 7, c: 6, d: 8 - 1.1e-9 * whole })).toMatchObject({ grashof: 'I' });
    expect(classify({ a: 5, b: 7, c: 6, d: 8.1 }, 0.01)).toMatchObject({ grashof: 'III' });
  });

  it('does not depend on the unit', () => {
    fc.assert(
      fc.property(anyLinks, fc.integer({ min: -40, max: 40 }), ({ a, b, c, d }, power) => {
        const scale = 2 ** power;
        const type = (found: ReturnType<typeof classify>): string => (found.kind === 'class' ? found.type : found.kind);
        expect(type(classify({ a: a * scale, b: b * scale, c: c * scale, d: d * scale }))).toBe(type(classify({ a, b, c, d })));
      }),
      { numRuns: 500, seed: 3 },
    );
  });

  it('answers lengths that cannot be assembled, and a loop that closes only as a line', () => {
    expect(classify({ a: 1, b: 1, c: 1, d: 4 })).toEqual({ kind: 'cannotAssemble', longest: 'ground', excess: 1, onlyStraight: false });
    expect(classify({ a: 1, b: 3, c: 1, d: 1 })).toEqual({ kind: 'cannotAssemble', longest: 'coupler', excess: 0, onlyStraight: true });
  });

  it('answers what is no length with the link and the reason', () => {
    expect(classify({ a: 0, b: 1, c: 1, d: 1 })).toMatchObject({
      kind: 'invalid',
      link: 'input',
      reason: "The input link's length is zero.",
    });
    expect(classify({ a: 1, b: -2, c: 1, d: 1 })).toMatchObject({ kind: 'invalid', link: 'coupler', length: -2 });
    expect(classify({ a: 1, b: 1, c: NaN, d: 1 })).toMatchObject({ kind: 'invalid', link: 'output' });
    expect(classify({ a: 1, b: 1, c: 1, d: Infinity })).toMatchObject({ kind: 'invalid', link: 'ground' });
  });

  it('never throws, whatever the numbers', () => {
    const any = fc.double();
    fc.assert(
      fc.property(any, any, any, any, any, (a, b, c, d, angle) => {
        const links = { a, b, c, d };
        expect(['class', 'cannotAssemble', 'invalid']).toContain(classify(links).kind);
        const position = solvePosition(links, angle, 'open');
        if (position !== undefined) solveVelocity(links, position, 1);
      }),
      { numRuns: 2000, seed: 4 },
    );
  });
});

interface Turns {
  readonly input: boolean;
  readonly output: boolean;
  readonly coupler: boolean;
  readonly type: BarkerType;
}

/** By brute force: which links can turn fully, and, where none can, whether a side link can point at the other pivot. */
function scan({ a, b, c, d }: FourBar): Turns {
  // The other two links must reach from the end of a turned link to the pivot left over.
  const closes = (turned: number, one: number, other: number, angle: number): boolean => {
    const left = Math.hypot(d - turned * Math.cos(angle), turned * Math.sin(angle));
    return left <= one + other + 1e-7 && left >= Math.abs(one - other) - 1e-7;
  };
  const always = (turned: number, one: number, other: number): boolean => {
    for (let i = 0; i <= 90; i++) if (!closes(turned, one, other, (i * Math.PI) / 90)) return false;
    return true;
  };
  const input = always(a, b, c);
  const output = always(c, a, b);
  const coupler = always(b, a, c);
  // Pointing at the other pivot.
  const inputInward = closes(a, b, c, 0);
  const outputInward = closes(c, a, b, 0);
  const triple = inputInward ? (outputInward ? 'RRR1' : 'RRR2') : outputInward ? 'RRR4' : 'RRR3';
  const type = input ? (output ? 'GCCC' : 'GCRR') : output ? 'GRRC' : coupler ? 'GRCR' : triple;
  return { input, output, coupler, type };
}
