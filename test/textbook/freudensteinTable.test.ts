/** Function generators by Freudenstein's equation, built as throttle files: do their levers stand where they were asked to? */
import { describe, expect, it } from 'vitest';
import type { FourBar } from '../../src/kinematics/fourBar/index.ts';
import { greatestOf, leastOf } from '../../src/travel/extremes.ts';
import { foundBy } from '../support/foundBy.ts';
import { DEG, expectAngle, expectFigure } from './support/check.ts';
import { linksThrough } from './support/freudensteinByHand.ts';
import { halfTangentAngles } from './support/halfTangent.ts';
import { inputToggles, solveFourBar, type Root, type SolvedFourBar } from './support/offTheTable.ts';
import { angleBetweenLinks } from './support/pins.ts';
import { generatorRows, squareLaw, tripleRows } from './values/synthesis.ts';
import type { GeneratorRow } from './values/synthesis.ts';

type Three = readonly [number, number, number];

/** Millimetres to the unit of the ground. */
const GROUND = 100;
/** rad; what a precision point may be missed by. */
const POINT = 1e-9;
/** Where an extreme is first looked for; it is refined between them. */
const stations: readonly number[] = Array.from({ length: 401 }, (_, i) => i / 400);

interface Design {
  readonly name: string;
  readonly phi: Three;
  readonly psi: Three;
  /** To eight digits, as published. */
  readonly links: FourBar;
}

const designs: readonly Design[] = [
  ...tripleRows.map((row) => ({ name: row.name, phi: three(row.phi), psi: three(row.psi), links: { ...row.links, d: 1 } })),
  ...generatorRows.filter(({ count }) => count === 3).map((row) => ({ name: row.name, ...pointsOf(row), links: { ...row.links, d: 1 } })),
];

describe('three precision points read off the table', () => {
  it.each(designs)('$name', ({ phi, psi, links: published }) => {
    const links = linksThrough(phi, psi);
    for (const name of ['a', 'b', 'c'] as const) expectFigure(links[name], published[name], 8, name);
    const root = rootThrough(links, phi[1], psi[1]);
    // Drawn between the first two points and run each way, so that none of the three is where the levers were drawn.
    const start = (phi[0] + phi[1]) / 2;
    const up = solved(links, root, start, phi[2] - start);
    const down = solved(links, root, start, phi[0] - start);
    const misses = [miss(down, phi[0], psi[0]), miss(up, phi[1], psi[1]), miss(up, phi[2], psi[2])];
    for (const off of misses) expect(off).toBeLessThan(POINT);
    expect(up.answers.findings.map(({ code }) => code)).not.toContain('not-assembled');
  });

  it.each(designs)('$name, with the published digits of its links', ({ phi, psi, links }) => {
    const root = rootThrough(links, phi[1], psi[1]);
    const file = solved(links, root, phi[2], phi[0] - phi[2]);
    const eightDigits = 0.5e-8;
    for (const [i, at] of phi.entries()) expect(miss(file, at, psi[i]!)).toBeLessThanOrEqual(eightDigits * spread(links, root, at));
  });
});

describe('structural error and transmission read off the table', () => {
  it.each(generatorRows.filter(({ defects }) => !defects.includes('assemblyGap')))('$name', (row) => {
    const points = pointsOf(row);
    // Where three points make the design, all digits of it: the error is published with more of them than rounded links give.
    const links = row.count === 3 ? linksThrough(points.phi, points.psi) : { ...row.links, d: 1 };
    const root = rootThrough(links, points.phi[1], points.psi[1]);
    const file = solved(links, root, row.phi[0], row.phi[1]);
    if (row.error !== undefined)
      expectFigure(
        greatestError(file, (share) => wanted(row, share)),
        row.error[0],
        row.error[1],
        'structural error',
      );
    const digits = row.transmissionDecimals ?? 2;
    if (row.transmission !== undefined) {
      const [least, greatest] = row.transmission;
      const between = anglesBetween(file, links);
      expectFigure(between[0], least, digits, 'least transmission');
      expectFigure(between[1], greatest, digits, 'greatest transmission');
      expectAngle(leastNamed(file), Math.min(least, 180 - greatest), digits, 'least in the load path');
    }
    if (row.leastTransmission !== undefined) expectAngle(leastNamed(file), row.leastTransmission, 1, 'least in the load path');
    expect(foundBy(file.answers, 'turns-back').length > 0).toBe(row.defects.includes('turnsBack'));
    expect(foundBy(file.answers, 'not-assembled')).toEqual([]);
  });

  it('the design with a gap cannot be assembled from the limit of its input on', () => {
    const row = generatorRows.find(({ defects }) => defects.includes('assemblyGap'))!;
    const links = { ...row.links, d: 1 };
    const points = pointsOf(row);
    const end = row.phi[0] + row.phi[1];
    const file = solved(links, rootThrough(links, points.phi[1], points.psi[1]), end, -row.phi[1]);
    const found = foundBy(file.answers, 'not-assembled')[0];
    const [edge, ...others] = inputToggles(links).filter((toggle) => toggle > row.phi[0] && toggle < end);
    expect(others).toHaveLength(0);
    expectAngle(file.theta2(found?.ranges?.[0]?.from ?? NaN) * DEG, edge ?? NaN, 7, 'limit of the input');
    expect(found?.ranges).toEqual([{ from: found?.ranges?.[0]?.from, to: 1 }]);
  });

  it('the published square-law generator', () => {
    const { links, start, turn, wantedSwing, swing, departure } = squareLaw;
    const file = solveFourBar({ links, root: 1, start, travel: turn });
    const from = file.theta4(start);
    const turned = file.theta4(start + turn) - from;
    expectFigure(Math.abs(turned), ...swing, 'swing');
    const law = (share: number): number => ((1 + 5 * share) ** 2 - 1) / 35;
    const error = greatestError(file, (share) => from + Math.sign(turned) * wantedSwing * law(share));
    expectFigure(error, ...departure, 'departure');
  });
});

/** Greatest difference in degrees between the table's output and the wanted one over the travel. */
function greatestError(file: SolvedFourBar, wantedAt: (share: number) => number): number {
  const error = (station: number): number => Math.abs(folded(file.theta4(file.theta2(station)) - wantedAt(station)));
  return greatestOf(error, stations)?.value ?? NaN;
}

/** Least and greatest angle in degrees between the lines of rod and output arm, from the table's angles. */
function anglesBetween(file: SolvedFourBar, links: FourBar): readonly [number, number] {
  const between = (station: number): number => angleBetweenLinks(links, file.theta2(station), file.theta4(file.theta2(station)));
  return [leastOf(between, stations)?.value ?? NaN, greatestOf(between, stations)?.value ?? NaN];
}

function solved(links: FourBar, root: Root, start: number, travel: number): SolvedFourBar {
  const { a, b, c, d } = links;
  return solveFourBar({ links: { a: GROUND * a, b: GROUND * b, c: GROUND * c, d: GROUND * d }, root, start, travel });
}

/** rad between the table's output angle and the wanted one. */
function miss(file: SolvedFourBar, phi: number, psi: number): number {
  return Math.abs(folded(file.theta4(phi) - psi)) * DEG;
}

/** The circuit that gives ψ at φ. */
function rootThrough(links: FourBar, phi: number, psi: number): Root {
  const off = (root: Root): number => Math.abs(folded(halfTangentAngles(links, phi * DEG, root).theta4 / DEG - psi));
  return off(-1) < off(1) ? -1 : 1;
}

/** How much the output turns for the worst signs of unit errors of the links a, b and c: by differences of the half-tangent formula. */
function spread(links: FourBar, root: Root, phi: number): number {
  const step = 1e-6;
  const at = (name: keyof FourBar, by: number): number => halfTangentAngles({ ...links, [name]: links[name] + by }, phi * DEG, root).theta4;
  return (['a', 'b', 'c'] as const).reduce((sum, name) => sum + Math.abs(Math.sin((at(name, step) - at(name, -step)) / 2)) / step, 0);
}

function leastNamed(file: SolvedFourBar): number | undefined {
  const rod = file.answers.parts.find(({ kind }) => kind === 'rod');
  return rod?.figures.find(({ label }) => label === 'least transmission angle')?.figure?.value;
}

/** Input and wanted output at Chebyshev's three points. */
function pointsOf(row: GeneratorRow): { readonly phi: Three; readonly psi: Three } {
  const shares = [0, 1, 2].map((j) => (1 - Math.cos(((2 * j + 1) * Math.PI) / 6)) / 2);
  return { phi: three(shares.map((share) => row.phi[0] + share * row.phi[1])), psi: three(shares.map((share) => wanted(row, share))) };
}

/** The wanted output where the input has run through a share of its range. */
function wanted({ f, range, psi }: GeneratorRow, share: number): number {
  const [from, to] = [f(range[0]), f(range[1])];
  return psi[0] + (psi[1] * (f(range[0] + share * (range[1] - range[0])) - from)) / (to - from);
}

function folded(degrees: number): number {
  return degrees - 360 * Math.round(degrees / 360);
}

function three(values: readonly number[]): Three {
  const [first, second, third] = values;
  if (first === undefined || second === undefined || third === undefined) throw new Error('three values');
  return [first, second, third];
}
