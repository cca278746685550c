import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessGenerator, solvePosition, synthesiseFunction, wantedAngles } from '../../../src/kinematics/fourBar/index.ts';
import type { GeneratorReport, WantedFunction } from '../../../src/kinematics/fourBar/index.ts';

const DEG = Math.PI / 180;
const sound: WantedFunction = { f: (x) => 1 / x, x0: 1, x1: 2, phi0: 30 * DEG, dphi: 90 * DEG, psi0: 105 * DEG, dpsi: 60 * DEG };

describe('function generators', () => {
  it('refine the greatest error between samples: no finer sampling finds more', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 20, max: 120 }),
        fc.integer({ min: 60, max: 160 }),
        fc.integer({ min: 20, max: 80 }),
        (start, psi, turn) => {
          const wanted = { ...sound, phi0: start * DEG, psi0: psi * DEG, dphi: turn * DEG, dpsi: 40 * DEG };
          const found = synthesiseFunction(wanted);
          if (found.kind === 'failed' || found.report.branch === undefined) return;
          const { branch, greatest } = found.report;
          let sampled = 0;
          for (let i = 0; i <= 5000; i++) {
            const pair = wantedAngles(wanted, 1 + i / 5000);
            if (pair.phi < branch.range.from || pair.phi > branch.range.to) continue;
            const theta4 = solvePosition(found.linkage.fourBar, pair.phi, branch.circuit)?.theta4;
            if (theta4 !== undefined) sampled = Math.max(sampled, 2 * Math.abs(Math.asin(Math.sin((theta4 - pair.psi) / 2))));
          }
          expect(Math.abs(greatest?.error ?? NaN)).toBeGreaterThanOrEqual(sampled - 1e-9);
        },
      ),
      { numRuns: 4 * 60, seed: 7741 },
    );
  });

  it('give the same linkage when x, or the sense of x, is measured otherwise', () => {
    const plain = generated(sound);
    const scaled = generated({ ...sound, f: (x) => 1000 / x, x0: 1, x1: 2 });
    const reversed = generated({ ...sound, x0: 2, x1: 1, phi0: 120 * DEG, dphi: -90 * DEG, psi0: 165 * DEG, dpsi: -60 * DEG });
    for (const other of [scaled, reversed]) {
      for (const name of ['a', 'b', 'c'] as const) expect(other.linkage.fourBar[name]).toBeCloseTo(plain.linkage.fourBar[name], 9);
      expect(other.report.greatest?.error).toBeCloseTo(plain.report.greatest?.error ?? NaN, 9);
      expect(other.report.greatest?.x).toBeCloseTo(plain.report.greatest?.x ?? NaN, 4);
    }
  });

  it('go through chosen points as well as through spaced ones', () => {
    const chosen = generated(sound, [1, 1.4, 2]);
    expect(chosen.points.map(({ x }) => x)).toEqual([1, 1.4, 2]);
    for (const error of chosen.report.pointErrors) expect(Math.abs(error ?? NaN)).toBeLessThan(1e-9);
  });

  it('report the angle error at the points of a least-squares design', () => {
    const five = generated(sound, 5);
    expect(five.report.pointErrors).toHaveLength(5);
    const worst = Math.max(...five.report.pointErrors.map((error) => Math.abs(error ?? NaN)));
    expect(worst).toBeGreaterThan(1e-6);
    expect(worst).toBeLessThanOrEqual(Math.abs(five.report.greatest?.error ?? NaN) + 1e-12);
  });

  it('detect points on two branches', () => {
    const links = { a: 40, b: 120, c: 80, d: 100 };
    const start = solvePosition(links, 0.5, 'open')?.theta4 ?? NaN;
    const end = solvePosition(links, 2.5, 'crossed')?.theta4 ?? NaN;
    const report = assessed(
      assessGenerator(links, { f: (x) => x, x0: 0, x1: 1, phi0: 0.5, dphi: 2, psi0: start, dpsi: end - start }, [0, 1]),
    );
    expect(report.defects.find(({ kind }) => kind === 'branch')).toMatchObject({ branches: [{ circuit: 'open' }, { circuit: 'crossed' }] });
    expect(report.pointErrors[1]).toBeUndefined();
  });

  it('detect an output that turns back, at the dead centre, and by how much', () => {
    const links = { a: 40, b: 120, c: 80, d: 100 };
    const at = (degrees: number): number => solvePosition(links, degrees * DEG, 'open')?.theta4 ?? NaN;
    const wanted = { f: (x: number) => x, x0: 0, x1: 1, phi0: 10 * DEG, dphi: 80 * DEG, psi0: at(10), dpsi: at(90) - at(10) };
    const turn = assessed(assessGenerator(links, wanted, [0, 1])).defects.find((defect) => defect.kind === 'turnsBack');
    expect(turn?.phi).toBeCloseTo(24.146848 * DEG, 7);
    expect(turn?.x).toBeCloseTo((24.146848 - 10) / 80, 7);
    expect(turn?.by).toBeCloseTo(at(10) - at(24.146848), 9);
    const hump = assessed(assessGenerator(links, { ...wanted, f: (x) => x - 1.2 * Math.sin(Math.PI * x) }, [0, 1]));
    expect(hump.defects.some(({ kind }) => kind === 'turnsBack')).toBe(false);
  });

  it('hold transmission and link ratio to limits that can be set', () => {
    const kinds = (report: GeneratorReport): readonly string[] => report.defects.map(({ kind }) => kind);
    const found = synthesiseFunction(sound, 3, { transmission: 55 * DEG, linkRatio: 2 });
    expect(found.kind === 'generator' ? kinds(found.report) : []).toEqual(['poorTransmission', 'linkRatio']);
    expect(kinds(generated(sound).report)).toEqual([]);
  });

  it('say why there is none', () => {
    const failure = (wanted: Partial<WantedFunction>, points: number | readonly number[] = 3): string => {
      const found = synthesiseFunction({ ...sound, ...wanted }, points);
      return found.kind === 'failed' ? found.failure : found.kind;
    };
    expect(failure({ x1: 1 })).toBe('bad-range');
    expect(failure({ dphi: 0 })).toBe('bad-range');
    expect(failure({ phi0: NaN })).toBe('bad-range');
    expect(failure({ f: () => 3 })).toBe('function-flat');
    expect(failure({ x0: 0 })).toBe('function-undefined');
    expect(failure({ f: (x) => (x > 1.2 && x < 1.8 ? NaN : x) })).toBe('function-undefined');
    expect(failure({}, [1, 1.5, 2.5])).toBe('point-outside');
    expect(failure({}, 2)).toBe('too-few-points');
    expect(failure({}, 0)).toBe('too-few-points');
    expect(failure({}, [1.2, 1.2, 1.2])).toBe('repeated-points');
    expect(failure({ f: (x) => x, psi0: 30 * DEG, dpsi: 90 * DEG })).toBe('singular');
  });

  it('keep to the ends of the range where the function ends there', () => {
    const report = generated({ ...sound, f: (x) => Math.sqrt(2 - x) }).report;
    expect(report.greatest?.x).toBeLessThanOrEqual(2);
    expect(report.greatest?.error).toSatisfy(Number.isFinite);
  });
});

function generated(wanted: WantedFunction, points: number | readonly number[] = 3) {
  const found = synthesiseFunction(wanted, points);
  if (found.kind === 'failed') throw new Error(found.message);
  return found;
}

function assessed(found: ReturnType<typeof assessGenerator>): GeneratorReport {
  if ('kind' in found) throw new Error(found.message);
  return found;
}
