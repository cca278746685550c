/** Bands of what the foot feels, against each build written into the file and solved as a whole. */
import { describe, expect, test } from 'vitest';
import { variedFigures } from '../../../src/kinematics/toleranced.ts';
import { quantile } from '../../../src/numeric/quantile.ts';
import { solve } from '../../../src/solve.ts';
import { planMargins } from '../../../src/picture/charts/margins.ts';
import { finished } from '../../../src/studies/finished.ts';
import { BAND_SHARES, bandsOf, mainCurves } from '../../../src/studies/tolerance/bands.ts';
import { drawsOf } from '../../../src/studies/tolerance/monteCarlo.ts';
import { example } from '../../support/editorRequests.ts';
import { plainNumber } from '../../textbook/support/fourBarFile.ts';

/** Bearings, ends and a housing that rub, an open stop past which the cable stretches, and tolerances on an arm, a preload and a friction. */
const FIRM = example('firm-pedal')
  .replace('shaft_reach: 32 mm ± 0.1 mm', 'shaft_reach: 32 mm')
  .replace('preload: 1500 N*mm', 'preload: 1500 N*mm ± 150 N*mm')
  .replace('bend: 120 deg\n    friction: 0.12', 'bend: 120 deg\n    friction: 0.12 ± 0.05');
/** As they stand in the text, and SI of a unit of each. */
const WRITTEN: Readonly<Record<string, readonly [string, string, number]>> = {
  'let.crank_reach': ['38 mm ± 0.1 mm', 'mm', 1e-3],
  'cables.main.friction': ['0.12 ± 0.05', '', 1],
  'springs.pedal_return.preload': ['1500 N*mm ± 150 N*mm', 'N*mm', 1e-3],
};
const STATIONS = [0, 0.2, 0.5, 0.8, 1];
const BUILDS = 7;

describe.each([
  ['with friction', FIRM],
  ['without friction', FIRM.replace(/^ +(bearing|friction): .*\n/gm, '').replace(', friction: 0.1}', '}')],
])('effort %s', (name, text) => {
  const { study, problems } = solve(text);
  if (study === undefined || problems.length > 0) throw new Error(JSON.stringify(problems));
  const { mechanism } = study.travel;
  const varied = variedFigures(mechanism);
  const rubs = name === 'with friction';
  const columns = ['pedal.effort', 'pedal.release', 'shaft.closing'].map((column) => study.columns.get(column)!);
  const request = { seed: 4, law: 'normal', from: 0, to: BUILDS } as const;
  const { missing, bands } = finished(bandsOf(mechanism, columns, varied, STATIONS, request));

  test('lies between the percentiles of builds written out and solved whole', () => {
    expect(varied.map(({ path }) => path).sort()).toEqual(
      Object.keys(WRITTEN)
        .filter((path) => rubs || !path.startsWith('cables.'))
        .sort(),
    );
    const draw = drawsOf(request.seed, request.law, varied);
    const tables = Array.from({ length: BUILDS }, (_, k) => {
      let built = text;
      varied.forEach(({ path, middle }, j) => {
        const [was, unit, si] = WRITTEN[path]!;
        expect(built).toContain(was);
        built = built.replace(was, `${plainNumber((middle + draw(k, j)) / si)} ${unit}`);
      });
      const answers = solve(built);
      expect(answers.problems).toEqual([]);
      return answers.table(
        STATIONS,
        columns.map((column) => column.name),
      ).columns;
    });
    bands.forEach(({ column, low, middle, high }, i) => {
      STATIONS.forEach((_, station) => {
        const all = Float64Array.from(tables, (table) => Number(table[i]!.values[station])).sort();
        const figures = { low, middle, high };
        for (const key of ['low', 'middle', 'high'] as const) {
          const wanted = quantile(all, BAND_SHARES[key]);
          expect(Math.abs(figures[key][station]! * column.scale - wanted)).toBeLessThan(1e-6 * Math.max(1, Math.abs(wanted)));
        }
        // Between builds it differs by far more than is let pass above.
        if (column.key === 'effort') expect(all.at(-1)! - all[0]!).toBeGreaterThan(0.05);
      });
    });
    expect(missing).toBe(0);
  });

  test('is more pressing than coming back with friction alone', () => {
    const [effort, release] = bands;
    for (let station = 0; station < STATIONS.length; station++) {
      if (rubs) expect(effort!.middle[station]!).toBeGreaterThan(release!.middle[station]!);
      else expect(effort!.low[station]!).toBeCloseTo(release!.low[station]!, 9);
    }
  });

  test('is among the curves that matter most', () => {
    expect(mainCurves(study).map((column) => column.name)).toEqual(expect.arrayContaining(['pedal.effort', 'pedal.release']));
  });
});

test('closing torque over friction with a spring off lies between the percentiles of builds written out and solved whole', () => {
  const { study } = solve(FIRM);
  const { mechanism } = study!.travel;
  const varied = variedFigures(mechanism);
  const offs = planMargins(study!).curves.flatMap(({ column }) =>
    'along' in column && column.read ? [{ ...column, read: column.read }] : [],
  );
  // Through the cable the springs of the shaft bring back the pedal, too.
  expect(offs.map(({ name }) => name).sort()).toEqual([
    'pedal.margin without pedal_return',
    'pedal.margin without return_inner',
    'pedal.margin without return_outer',
    'shaft.margin without return_inner',
    'shaft.margin without return_outer',
  ]);
  const { bands } = finished(bandsOf(mechanism, offs, varied, STATIONS, { seed: 4, law: 'normal', from: 0, to: BUILDS }));
  const draw = drawsOf(4, 'normal', varied);
  const built = Array.from({ length: BUILDS }, (_, k) =>
    varied.reduce((text, { path, middle }, j) => {
      const [was, unit, si] = WRITTEN[path]!;
      return text.replace(was, `${plainNumber((middle + draw(k, j)) / si)} ${unit}`);
    }, FIRM),
  );
  const alongs = built.map((text) => new Map(planMargins(solve(text).study!).curves.map(({ column }) => [column.name, column])));
  for (const { column, low, high } of bands) {
    STATIONS.forEach((at, station) => {
      const all = Float64Array.from(alongs, (of) => {
        const known = of.get(column.name)!;
        return 'along' in known ? known.along(at) : NaN;
      }).sort();
      for (const [got, share] of [
        [low[station]!, BAND_SHARES.low],
        [high[station]!, BAND_SHARES.high],
      ] as const) {
        const wanted = quantile(all, share);
        if (Number.isNaN(wanted)) expect(got).toBeNaN();
        else expect(Math.abs(got - wanted)).toBeLessThan(1e-6 * Math.max(1, wanted));
      }
    });
    expect(Number.isNaN(low[2]!) || high[2]! > low[2]! * 1.0005).toBe(true);
  }
});

test('a figure that no build has is no build left out', () => {
  // No stiffness: past the open stop the pull cannot be told.
  const { study } = solve(FIRM.replace(/ {4}stiffness: 140 N\/mm\n/, ''));
  const { mechanism } = study!.travel;
  const effort = study!.columns.get('pedal.effort')!;
  const request = { seed: 4, law: 'normal', from: 0, to: BUILDS } as const;
  const { missing, bands } = finished(bandsOf(mechanism, [effort], variedFigures(mechanism), [0, 1], request));
  expect(bands[0]!.middle[0]).toBeGreaterThan(0);
  expect(bands[0]!.middle[1]).toBeNaN();
  expect(missing).toBe(0);
});
