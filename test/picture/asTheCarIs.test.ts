/** The answer that writes a file as its car is: the file then does what was found of the car, also where parts of it are told only together. */
import { describe, expect, test } from 'vitest';
import { applyEdits } from '../../src/definition/edit.ts';
import { editsOfWrites } from '../../src/picture/studies/blocks.ts';
import { fitPage } from '../../src/picture/studies/fitPage.ts';
import { solve } from '../../src/solve.ts';
import { BENCH, benchText, fitted, TEN } from '../studies/fit/bench.ts';

const columns = ['pedal.travel', 'tps.signal', 'shaft.opening'];
const noise = ['0.004 V', '0.1 deg'];
const car = { 'rods.link.length': 0.1108 };
const loose = { ...car, 'cables.main.slack': 1.6e-3 };
const OPEN = BENCH.replaceAll(' ± 0.3 mm', '').replace(' ± 0.6 mm', '');

describe.each([
  ['with tolerances', BENCH, car, undefined],
  ['without, of which some show only together', OPEN, loose, ['link.length', 'main.slack', 'tps.at_closed', 'tps.range.0', 'tps.range.1']],
])('a car %s', (_, linkage, built, fit) => {
  const text = benchText({ columns, at: TEN, car: built, noise, linkage, ...(fit !== undefined && { fit }) });
  const found = fitted(text);
  const { study } = solve(text);
  const answers = fitPage(text, study!, found, []).blocks.filter(({ kind }) => kind === 'answer');

  test('is written whole, so that the file does what was found', () => {
    expect(found.untold.length).toBeGreaterThan(0);
    const [answer] = answers as Extract<(typeof answers)[number], { kind: 'answer' }>[];
    expect(answer!.lines.map(({ text: words }) => words).join()).toContain('not told each by itself');
    const written = solve(applyEdits(text, editsOfWrites(text, study!, answer!.writes)!));
    for (const { column, travel, fitted: value, of } of found.readings) {
      const now = written.study!.columns.get(column)!.read(written.study!.travel.build, written.study!.travel.poseAt(travel));
      expect(Math.abs(now - value) / found.columns[of]!.noise).toBeLessThan(0.1);
    }
  });
});

test('a car that the readings do not go with is not written, and the page says why', () => {
  const text = benchText({
    columns,
    at: TEN,
    fit: ['link.length', 'main.slack'],
    noise,
    linkage: OPEN,
    car: { ...car, 'rods.link.length': 0.1175 },
  });
  const { blocks } = fitPage(text, solve(text).study!, fitted(text), []);
  expect(blocks.some(({ kind }) => kind === 'answer')).toBe(false);
  const why = blocks.find((block) => block.kind === 'lines' && block.title === 'The file as the car is');
  expect(JSON.stringify(why)).toContain('not written: no car has what was found of link.length');
});
