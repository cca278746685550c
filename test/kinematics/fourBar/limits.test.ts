import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  assembledWithin,
  classify,
  deadCentres,
  inputLimits,
  outputLimits,
  outputSwing,
  solvePosition,
  solveVelocity,
  transmissionAngle,
  transmissionExtremes,
} from '../../../src/kinematics/fourBar/index.ts';
import type { AngleRange } from '../../../src/kinematics/fourBar/index.ts';
import { anyAngle, anyLinks, anySignedLinks } from './arbitrary.ts';

describe('limit positions of the input', () => {
  it('bound exactly the angles at which the loop closes', () => {
    fc.assert(
      fc.property(anySignedLinks, anyAngle, (links, theta2) => {
        const limits = inputLimits(links)!;
        const margin = Math.min(...limits.toggles.map(({ angle }) => Math.abs(Math.sin((theta2 - angle) / 2))), 1);
        const { a, c, d } = links;
        const loose = Math.hypot(a * Math.cos(theta2) - d, a * Math.sin(theta2)) < 1e-9 * (Math.abs(a) + d) && links.b === Math.abs(c);
        if (margin < 1e-6 || loose) return;
        expect(limits.reachable.some((range) => contains(range, theta2))).toBe(solvePosition(links, theta2, 'open') !== undefined);
      }),
      { numRuns: 5000, seed: 21 },
    );
  });

  it('put coupler and output in line, and agree with the cosine formula', () => {
    fc.assert(
      fc.property(anyLinks, (links) => {
        const { a, b, c, d } = links;
        for (const { angle, inLine } of inputLimits(links)!.toggles) {
          const sign = inLine === 'extended' ? -1 : 1;
          const cosine = (a * a + d * d - b * b - c * c) / (2 * a * d) + (sign * b * c) / (a * d);
          expect(Math.abs(Math.cos(angle) - cosine)).toBeLessThan(1e-7 * (1 + ((b + c) * (b + c)) / (a * d)));
          const position = solvePosition(links, angle, 'open') ?? solvePosition(links, angle * (1 - 1e-12), 'open');
          if (position) expect(Math.abs(Math.sin(position.theta4 - position.theta3))).toBeLessThan(1e-4);
        }
      }),
      { numRuns: 3000, seed: 22 },
    );
  });

  it('hinder no crank and stop every rocker', () => {
    fc.assert(
      fc.property(anyLinks, (links) => {
        const found = classify(links);
        const [input, output] = [inputLimits(links)!, outputLimits(links)!];
        if (found.kind !== 'class') return;
        const full = ({ reachable }: { readonly reachable: readonly AngleRange[] }): boolean =>
          reachable.some(({ from, to }) => to - from > 6.283185);
        expect(full(input)).toBe(found.parts.input === 'crank');
        expect(full(output)).toBe(found.parts.output === 'crank');
        const change = input.toggles.some(({ changePoint }) => changePoint);
        expect(change).toBe(found.grashof === 'III');
      }),
      { numRuns: 3000, seed: 23 },
    );
  });

  it('of lengths that cannot be assembled are none, and nothing is reachable', () => {
    expect(inputLimits({ a: 1, b: 1, c: 1, d: 4 })).toEqual({ toggles: [], reachable: [] });
    expect(inputLimits({ a: 9, b: 1, c: 1, d: 4 })).toEqual({ toggles: [], reachable: [] });
    expect(inputLimits({ a: 1, b: 9, c: 1, d: 4 })).toEqual({ toggles: [], reachable: [] });
    expect(outputSwing({ a: 1, b: 1, c: 1, d: 4 })).toBe(0);
    expect(inputLimits({ a: 1, b: NaN, c: 1, d: 4 })).toBeUndefined();
  });

  it('cut a range of more than a turn into all its parts', () => {
    const links = { a: 9, b: 3, c: 8, d: 7 };
    const parts = assembledWithin(links, { from: 0, to: 4 * Math.PI });
    expect(parts).toHaveLength(4);
    expect(parts.reduce((sum, { from, to }) => sum + to - from, 0)).toBeCloseTo(
      4 * (inputLimits(links)!.reachable[0]!.to - inputLimits(links)!.reachable[0]!.from),
      12,
    );
  });
});

describe('dead centres and swing of the output', () => {
  it('close the loop with input and coupler in line, and the output stands still', () => {
    fc.assert(
      fc.property(anySignedLinks, (links) => {
        for (const { theta2, theta3, theta4, inLine, circuit } of deadCentres(links)) {
          const { a, b, c, d } = links;
          const size = Math.abs(a) + b + Math.abs(c) + d;
          const x = a * Math.cos(theta2) + b * Math.cos(theta3) - d - c * Math.cos(theta4);
          const y = a * Math.sin(theta2) + b * Math.sin(theta3) - c * Math.sin(theta4);
          // A change point counts as one within 1e-9 of the links, so it closes to no more.
          const straight = Math.abs(Math.sin(theta4)) < 1e-12;
          if (Math.abs(Math.abs(a) - b) > 1e-9 || inLine === 'extended')
            expect(Math.hypot(x, y) / size).toBeLessThan(straight ? 1e-8 : 1e-11);
          expect(Math.abs(Math.sin(theta3 - theta2))).toBeLessThan(1e-9);
          const velocity = solveVelocity(links, { theta2, theta3, theta4 }, 1);
          if (velocity && Math.abs(Math.sin(theta4 - theta3)) > 1e-3) {
            expect(Math.abs(velocity.omega4)).toBeLessThan(1e-5);
            const again = solvePosition(links, theta2, circuit);
            expect(Math.abs(Math.sin(((again?.theta4 ?? NaN) - theta4) / 2))).toBeLessThan(1e-8);
          }
        }
      }),
      { numRuns: 3000, seed: 24 },
    );
  });

  it('give the swing seen by turning the input through a whole turn', () => {
    let compared = 0;
    fc.assert(
      fc.property(anyLinks, (links) => {
        const found = classify(links);
        if (found.kind !== 'class' || found.type !== 'GCRR') return;
        compared++;
        let [least, greatest] = [Infinity, -Infinity];
        for (let i = 0; i < 2000; i++) {
          // The output of a crank-rocker never crosses the ground line on one circuit.
          const theta4 = solvePosition(links, (i * Math.PI) / 1000, 'open')?.theta4 ?? NaN;
          const upper = theta4 < 0 ? theta4 + 2 * Math.PI : theta4;
          least = Math.min(least, upper);
          greatest = Math.max(greatest, upper);
        }
        const swing = outputSwing(links) ?? NaN;
        expect(greatest - least).toBeLessThanOrEqual(swing + 1e-9);
        expect(greatest - least).toBeGreaterThan(swing - 1e-2);
      }),
      { numRuns: 3000, seed: 25 },
    );
    expect(compared).toBeGreaterThan(100);
  });
});

describe('the transmission angle', () => {
  it('lies between coupler and output as solved, and its extremes bound it over any range', () => {
    fc.assert(
      fc.property(anySignedLinks, anyAngle, fc.double({ min: 0, max: 7, noNaN: true }), (links, from, width) => {
        const range = { from, to: from + width };
        const extremes = transmissionExtremes(links, range);
        let [least, greatest] = [Infinity, -Infinity];
        for (let i = 0; i <= 200; i++) {
          const theta2 = from + (width * i) / 200;
          const position = solvePosition(links, theta2, 'open');
          if (position === undefined) continue;
          const angle = transmissionAngle(links, theta2)!;
          const cosine = Math.cos(position.theta4 - position.theta3) * Math.sign(links.c);
          expect(Math.abs(Math.cos(angle) - cosine)).toBeLessThan(1e-8);
          least = Math.min(least, angle);
          greatest = Math.max(greatest, angle);
        }
        if (least === Infinity) return;
        expect(extremes!.least.angle).toBeLessThanOrEqual(least + 1e-7);
        expect(extremes!.greatest.angle).toBeGreaterThanOrEqual(greatest - 1e-7);
        for (const { angle, theta2 } of [extremes!.least, extremes!.greatest]) {
          expect(transmissionAngle(links, theta2)).toBe(angle);
          expect(theta2).toBeGreaterThanOrEqual(range.from);
          expect(theta2).toBeLessThanOrEqual(range.to);
        }
      }),
      { numRuns: 1000, seed: 26 },
    );
  });

  it('has no extremes where the loop never closes', () => {
    expect(transmissionExtremes({ a: 1, b: 1, c: 1, d: 4 })).toBeUndefined();
    expect(transmissionExtremes({ a: 9, b: 3, c: 8, d: 7 }, { from: 0, to: 0.3 })).toBeUndefined();
    expect(transmissionAngle({ a: 1, b: 1, c: 1, d: 4 }, 0)).toBeUndefined();
  });
});

/** Whether a range holds the angle or one of its repeats. */
function contains({ from, to }: AngleRange, angle: number): boolean {
  const turn = 2 * Math.PI;
  return from + ((((angle - from) % turn) + turn) % turn) <= to;
}
