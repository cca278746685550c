import { describe, expect, it } from 'vitest';
import {
  assessGenerator,
  chebyshevPoints,
  classify,
  solvePosition,
  synthesise,
  synthesiseFunction,
  transmissionAngle,
  wantedAngles,
} from '../../src/kinematics/fourBar/index.ts';
import type { FourBar, FourBarClass, Generator, Synthesised, WantedFunction } from '../../src/kinematics/fourBar/index.ts';
import { DEG, expectAngle, expectFigure } from './support/check.ts';
import { chebyshevRows, generatorRows, reciprocalBook, squareLaw, straightLinePoints, tripleRows } from './values/synthesis.ts';
import type { GeneratorRow, TripleRow } from './values/synthesis.ts';

describe("Chebyshev's spacing", () => {
  it.each(chebyshevRows)('three points over $range', ({ range, points, decimals }) => {
    const found = chebyshevPoints(range[0], range[1], 3);
    expect(found).toHaveLength(points.length);
    points.forEach((point, i) => expectFigure(found[i], point, decimals, `point ${i + 1}`));
  });

  it('three points of the straight line', () => {
    const found = chebyshevPoints(15, 165, 3);
    straightLinePoints.points.forEach((point, i) => expectFigure(found[i], point, straightLinePoints.decimals, `point ${i + 1}`));
  });
});

describe('linkages through given triples of angles', () => {
  it.each(tripleRows)('$name', (row) => {
    const { constants, fourBar, couplers } = linkageOf(row);
    expectFigure(constants.k1, row.k[0], row.kDecimals ?? row.decimals, 'K1');
    expectFigure(constants.k2, row.k[1], row.kDecimals ?? row.decimals, 'K2');
    expectFigure(constants.k3, row.k[2], row.kDecimals ?? row.decimals, 'K3');
    expectFigure(fourBar.a, row.links.a, row.decimals, 'a');
    expectFigure(fourBar.b, row.links.b, row.decimals, 'b');
    expectFigure(fourBar.c, row.links.c, row.decimals, 'c');
    for (const coupler of couplers) expect(Math.abs(coupler - fourBar.b)).toBeLessThan(1e-9);
  });

  it("the book's rounded answers for 1/x, in the form where link 4 points the other way", () => {
    const rounded = tripleRows.find(({ name }) => name.startsWith('1/x'));
    const { constants, fourBar } = linkageOf(rounded!);
    const { k, kTolerance, links } = reciprocalBook;
    expect(Math.abs(-constants.k2 - k[0])).toBeLessThan(kTolerance);
    expect(Math.abs(constants.k1 - k[1])).toBeLessThan(kTolerance);
    expect(Math.abs(constants.k3 - k[2])).toBeLessThan(kTolerance);
    expectFigure(fourBar.a, links, 2, 'r2');
    expectFigure(-fourBar.c, links, 2, 'r4');
  });

  it('sees the extreme links of the 12-degrees-a-unit square root', () => {
    const wanted = { f: Math.sqrt, x0: 1, x1: 9, phi0: 60 * DEG - (chebyshevPoints(1, 9, 3)[0]! - 1) * 12 * DEG, dphi: 96 * DEG };
    const psi0 = 60 * DEG - (Math.sqrt(chebyshevPoints(1, 9, 3)[0]!) - 1) * 12 * DEG;
    const found = synthesiseFunction({ ...wanted, psi0, dpsi: 24 * DEG });
    expect(found.kind).toBe('generator');
    if (found.kind !== 'generator') return;
    const row = tripleRows.find(({ name }) => name.startsWith('square root'))!;
    expect(Math.abs(found.linkage.fourBar.a / row.links.a - 1)).toBeLessThan(1e-6);
    const defect = found.report.defects.find(({ kind }) => kind === 'linkRatio');
    expect(defect).toMatchObject({ ratio: expect.closeTo(1 / 0.0858, 1) as number });
  });
});

describe('function generators', () => {
  it.each(generatorRows)('$name', (row) => {
    const { linkage, report } = generatorOf(row);
    expectFigure(linkage.constants.k1, row.k[0], 8, 'K1');
    expectFigure(linkage.constants.k2, row.k[1], 8, 'K2');
    expectFigure(linkage.constants.k3, row.k[2], 8, 'K3');
    expectFigure(linkage.fourBar.a, row.links.a, 8, 'a');
    expectFigure(linkage.fourBar.b, row.links.b, 8, 'b');
    expectFigure(linkage.fourBar.c, row.links.c, 8, 'c');
    if (row.error) expectFigure(Math.abs(report.greatest?.error ?? NaN) / DEG, row.error[0], row.error[1], 'structural error');
    if (row.transmission) {
      expectAngle(report.transmission?.least.angle, row.transmission[0], row.transmissionDecimals ?? 2, 'least transmission');
      expectAngle(report.transmission?.greatest.angle, row.transmission[1], row.transmissionDecimals ?? 2, 'greatest transmission');
    }
    if (row.type) expect(classOf(linkage.fourBar).type).toBe(row.type);
    expect([...new Set(report.defects.map(({ kind }) => kind))].sort()).toEqual([...row.defects].sort());
    expect(report.branch?.points, 'all points lie on the branch followed').toEqual(report.pointErrors.map((_, i) => i));
    if (row.count === 3) for (const error of report.pointErrors) expect(Math.abs(error ?? NaN)).toBeLessThan(1e-6);
  });

  it.each(generatorRows)('$name: error and transmission are no less than at any of 2001 stations', (row) => {
    const { linkage, report } = generatorOf(row);
    const { fourBar } = linkage;
    const wanted = wantedOf(row);
    let error = 0;
    let least = Math.PI;
    for (let i = 0; i <= 2000; i++) {
      const { phi, psi } = wantedAngles(wanted, row.range[0] + ((row.range[1] - row.range[0]) * i) / 2000);
      const position = solvePosition(fourBar, phi, report.branch?.circuit ?? 'open');
      if (position === undefined) continue;
      error = Math.max(error, Math.abs(Math.asin(Math.sin(position.theta4 - psi))));
      // Between the links themselves: a reversed link points the other way.
      const between = Math.acos(Math.cos(position.theta4 - position.theta3) * Math.sign(fourBar.c));
      expect(Math.abs(between - (transmissionAngle(fourBar, phi) ?? NaN))).toBeLessThan(1e-7);
      least = Math.min(least, between, Math.PI - between);
    }
    const found = Math.abs(report.greatest?.error ?? NaN);
    expect(found).toBeGreaterThanOrEqual(error - 1e-12);
    const steep = row.defects.includes('assemblyGap');
    if (!steep) expect(found - error).toBeLessThan(1e-5);
    expect(report.transmission?.poorest.angle).toBeLessThanOrEqual(least + 1e-12);
    if (row.leastTransmission !== undefined) expectFigure(least / DEG, row.leastTransmission, 1, 'least transmission at a station');
  });

  it('reports the gap of the sine design from the start of the range to the limit of the input', () => {
    const row = generatorRows.find(({ defects }) => defects.includes('assemblyGap'))!;
    const { linkage, report } = generatorOf(row);
    const gap = report.defects.find((defect) => defect.kind === 'assemblyGap');
    expect(gap?.range.from).toBeCloseTo(30 * DEG, 12);
    const edge = gap?.range.to ?? NaN;
    expect(solvePosition(linkage.fourBar, edge - 1e-9, 'open')).toBeUndefined();
    expect(solvePosition(linkage.fourBar, edge + 1e-9, 'open')).toBeDefined();
  });

  it('shows that five points by least squares of the equation err more in angle than three points met exactly', () => {
    const [three, five] = [3, 5].map((count) =>
      generatorOf(generatorRows.find((row) => row.count === count && row.name.startsWith('a straight'))!),
    );
    expect(Math.abs(five?.report.greatest?.error ?? NaN)).toBeGreaterThan(4 * Math.abs(three?.report.greatest?.error ?? NaN));
    expect(five?.linkage.residual).toBeGreaterThan(1e-3);
  });
});

describe('a published square-law generator', () => {
  it('turns its output by nearly the wanted swing and departs from the law as stated', () => {
    const { links, start, turn, wantedSwing, swing, departure, departureInY } = squareLaw;
    const from = solvePosition(links, start * DEG, 'crossed');
    const to = solvePosition(links, (start + turn) * DEG, 'crossed');
    const turned = Math.abs((to?.theta4 ?? NaN) - (from?.theta4 ?? NaN));
    expectAngle(turned, ...swing, 'swing');
    const sense = Math.sign((to?.theta4 ?? NaN) - (from?.theta4 ?? NaN));
    const wanted: WantedFunction = {
      f: (x) => x * x,
      x0: 1,
      x1: 6,
      phi0: start * DEG,
      dphi: turn * DEG,
      psi0: from?.theta4 ?? NaN,
      dpsi: sense * wantedSwing * DEG,
    };
    const report = assessGenerator(links, wanted, [1, 3.5, 6]);
    if ('kind' in report) throw new Error(report.message);
    expect(report.branch?.circuit).toBe('crossed');
    const greatest = Math.abs(report.greatest?.error ?? NaN);
    expectAngle(greatest, ...departure, 'departure');
    expectFigure(greatest / (2 * DEG), ...departureInY, 'departure in units of Y, two degrees each');
  });
});

function linkageOf({ phi, psi }: TripleRow): Synthesised {
  const found = synthesise(phi.map((degrees, i) => ({ phi: degrees * DEG, psi: (psi[i] ?? NaN) * DEG })));
  if (found.kind === 'failed') throw new Error(found.message);
  return found;
}

function wantedOf({ f, range, phi, psi }: GeneratorRow): WantedFunction {
  return { f, x0: range[0], x1: range[1], phi0: phi[0] * DEG, dphi: phi[1] * DEG, psi0: psi[0] * DEG, dpsi: psi[1] * DEG };
}

function generatorOf(row: GeneratorRow): Generator {
  const found = synthesiseFunction(wantedOf(row), row.count);
  if (found.kind === 'failed') throw new Error(found.message);
  return found;
}

function classOf({ a, b, c, d }: FourBar): FourBarClass {
  const found = classify({ a: Math.abs(a), b, c: Math.abs(c), d });
  if (found.kind !== 'class') throw new Error(`no class: ${JSON.stringify(found)}`);
  return found;
}
