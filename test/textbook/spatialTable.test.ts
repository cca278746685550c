/** The spatial four-bar read off the table of a throttle file: both branches, drawn at several places and run both ways. */
import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';
import { DEG, expectAngle, expectFigure } from './support/check.ts';
import { readColumn, wayOfOpening } from './support/offTheTable.ts';
import { spatialFile, type DrawnSpatialFourBar } from './support/spatialFile.ts';
import { ballAt, outputRotations } from './support/spatialFourBar.ts';
import { exampleLimits, positionRows } from './values/positions.ts';
import { spatialCase } from './values/spatial.ts';

const { input, output, rod, rows, decimals } = spatialCase;

describe('the spatial case read off the table', () => {
  for (const branch of [1, 2] as const) {
    // Drawn with the published six digits, a hundredth and two degrees off: the rod's length decides, and the table must give the same.
    it.each([
      [0, 120, 0],
      [0, 120, 2],
      [60, 60, 0.01],
      [60, -60, -2],
      [120, -120, 0],
    ])(`branch ${branch}, drawn at input %d°, turning %d°, output drawn off by %d°`, (start, travel, off) => {
      const drawn = rows.find(([theta]) => theta === start)![branch] + off;
      const answers = answersOf({
        input: { ...input, ball: ballAt(input, start * DEG) },
        output,
        rod,
        drawnOutputDeg: drawn,
        travelDeg: travel,
      });
      let read = 0;
      for (const row of rows) {
        const station = (row[0] - start) / travel;
        if (station < 0 || station > 1) continue;
        expectAngle(
          (drawn + (readColumn(answers, 'driven.rotation', station) ?? NaN)) * DEG,
          row[branch],
          decimals,
          `output at ${row[0]}°`,
        );
        const slope = (readColumn(answers, 'driven.ratio', station) ?? NaN) * wayOfOpening(answers) * Math.sign(travel);
        expectFigure(slope, slopeBetween(row[0], branch), 8, `ratio at ${row[0]}°`);
        read++;
      }
      expect(read).toBe(rows.filter(([theta]) => Math.abs(2 * (theta - start) - travel) <= Math.abs(travel)).length);
      expect(read).toBeGreaterThanOrEqual(4);
      const rodPart = answers.parts.find(({ kind }) => kind === 'rod');
      expect(rodPart?.figures.find(({ label }) => label === 'four-bar')?.text).toBe('spatial');
    });
  }
});

describe('the planar textbook example made spatial by a step along parallel axes', () => {
  // The rod rises by 30 mm and is longer by as much as that takes; the angles stay.
  const rise = 30;
  const { a, b, c, d } = exampleLimits.links;
  const axis = [0, 0, 1] as const;
  const example = positionRows.find(({ name }) => name.endsWith('more digits'))!;

  it.each([
    ['open', 1],
    ['crossed', 0],
  ] as const)('gives the published angle and ratio, %s', (circuit, which) => {
    const crank = { pivot: [0, 0, 0], axis, ball: [a, 0, 0] } as const;
    const rocker = { pivot: [d, 0, 5], axis, ball: [d + c, 0, rise] } as const;
    const length = Math.hypot(b, rise);
    const start = 10;
    const drawn = [...outputRotations(crank, rocker, length, start * DEG)].sort((one, next) => one - next)[which]! / DEG;
    const travel = 60;
    const answers = answersOf({
      input: { ...crank, ball: ballAt(crank, start * DEG) },
      output: rocker,
      rod: length,
      drawnOutputDeg: drawn,
      travelDeg: travel,
    });
    const station = (example.theta2 - start) / travel;
    const values = example[circuit]!;
    expectAngle((drawn + (readColumn(answers, 'driven.rotation', station) ?? NaN)) * DEG, values.theta4, example.decimals.theta, 'θ4');
    const omega4 = (readColumn(answers, 'driven.ratio', station) ?? NaN) * wayOfOpening(answers) * example.omega2!;
    expectFigure(omega4, values.omega4!, example.decimals.omega, 'ω4');
  });
});

function answersOf(drawing: DrawnSpatialFourBar): ReturnType<typeof solve> {
  const text = spatialFile(drawing);
  const answers = solve(text);
  if (answers.problems.length > 0) throw new Error(`${JSON.stringify(answers.problems)}\n${text}`);
  return answers;
}

/** dψ/dθ of the separate closed form by differences of the fourth order. */
function slopeBetween(theta: number, branch: 1 | 2): number {
  const at = (by: number): number =>
    [...outputRotations(input, output, rod, theta * DEG + by)].sort((one, next) => one - next)[branch - 1]!;
  const step = 1e-3;
  return (8 * (at(step) - at(-step)) - (at(2 * step) - at(-2 * step))) / (12 * step);
}
