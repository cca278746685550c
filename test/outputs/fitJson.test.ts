/** The JSON of a fit, held to its schema. */
import { readFileSync } from 'node:fs';
import Ajv from 'ajv';
import { describe, expect, it } from 'vitest';
import { fitText } from '../../src/fitText.ts';
import { fitJson } from '../../src/outputs/fitJson.ts';
import type { JsonFit } from '../../src/outputs/json/fitDocument.ts';
import { solve } from '../../src/solve.ts';
import { finished } from '../../src/studies/finished.ts';
import { NOTHING_BESIDE, type ReadBeside } from '../../src/studies/fit/gather.ts';
import { BENCH, benchText, SOUND_BENCH, TEN } from '../studies/fit/bench.ts';
import { BROKEN_FILE, EMPTY_FILE, HOSTILE_FILE, wholeFiles } from './support/checked.ts';

const ajv = new Ajv({ allErrors: true });
const validate = ajv.compile(JSON.parse(readFileSync(new URL('../../schema/fit.schema.json', import.meta.url), 'utf8')) as object);

/** The document, held to the schema. */
function documentOf(text: string, beside: ReadBeside = NOTHING_BESIDE): JsonFit {
  const document: unknown = JSON.parse(fitJson(solve(text), finished(fitText(text, beside)), 'a'));
  expect(validate(document), ajv.errorsText(validate.errors)).toBe(true);
  return document as JsonFit;
}

const columns = ['pedal.travel', 'tps.signal', 'shaft.opening'];
const noise = ['0.004 V', '0.1 deg'];
const told = benchText({ columns, at: TEN, fit: ['link.length', 'tps.at_closed'], noise, linkage: SOUND_BENCH });

it('holds to its schema for whole linkages, broken, empty and hostile files, and for texts that can be fitted', () => {
  const whole = wholeFiles().map(({ answers }) => answers.text);
  const open = benchText({
    columns,
    at: TEN,
    fit: ['link.length', 'shaft.pivot.x', 'crank.pivot.x', 'tps.at_closed', 'shaft.inertia'],
    noise,
    off: { '3:0': 1 },
  });
  const far = benchText({ columns: ['main.pull', 'bank.fraction'], at: [4, 8, 300], fit: ['link.length'] });
  const csv = `${BENCH}measured:\n  fit: [main.slack]\n  runs: {a: {file: a.csv}}\n`;
  for (const text of [...whole, BROKEN_FILE, EMPTY_FILE, HOSTILE_FILE, '', told, open, far, csv]) documentOf(text);
});

it('refuses a key more, a key less, or a value of another kind', () => {
  const document = documentOf(told);
  for (const wrong of [
    { ...document, extra: 1 },
    { ...document, caution: undefined },
    { ...document, readings: [{ ...document.readings[0], verdict: 'fine' }] },
  ])
    expect(validate(wrong)).toBe(false);
});

describe('says', () => {
  it('what to turn, what else holds then, and what would come nearer but gives something up', () => {
    const tune = `tune:
  free:
    reach: {from: 30 mm, to: 45 mm}
  curve: {of: shaft.opening, through: [[5 %, 0 deg], [50 %, 33 deg], [90 %, 70 deg]]}
  keep: [full_opening, transmission]
`;
    const linkage = BENCH.replace('levers:', 'let:\n  reach: 38 mm\nlevers:').replace('radius: 38 mm ± 0.3 mm', 'radius: reach') + tune;
    const { turning } = documentOf(benchText({ columns, at: TEN, fit: ['main.slack'], noise: ['0.00002 V', '0.002 deg'], linkage }));
    expect(turning).toMatchObject({ notChecked: null, wanted: 'tune', demands: ['full_opening', 'transmission'], unmet: [] });
    const { nearer, after } = turning!;
    expect(nearer!.unmet).toMatchObject([{ name: 'full_opening', metAsFound: true, metAsDrawn: true }]);
    expect(nearer!.after[0]!.error.value!).toBeLessThan(after[0]!.error.value!);
  });

  it('each dimension with its error in the unit of its place, and each reading beside what was found', () => {
    const { dimensions, readings, correlations, verdict, rank } = documentOf(told);
    expect(verdict.outcome).toBe('sound');
    expect(dimensions.map(({ name, value: { unit } }) => [name, unit])).toEqual([
      ['link.length', 'mm'],
      ['tps.at_closed', 'deg'],
    ]);
    expect(dimensions[0]!.nominal.value).toBeCloseTo(110.5, 9);
    expect(dimensions[0]!.tolerance!.value).toBeCloseTo(0.6, 9);
    expect(dimensions[0]!.place.offset).toBe(told.indexOf('110.5 mm'));
    expect(Math.abs(dimensions[1]!.value.value! - 12)).toBeLessThan(3 * dimensions[1]!.error.value!);
    expect(correlations[0]![0]).toBeCloseTo(1, 12);
    expect(correlations[0]![1]).toBeCloseTo(correlations[1]![0]!, 12);
    expect(rank).toEqual({ dimensions: 2, told: 2, narrowed: 2 });
    expect(readings.length).toBe(20);
    expect(readings[2]).toMatchObject({ run: 'bench', row: 2, column: 'tps.signal', csvLine: null, travel: 10, verdict: 'counts' });
    expect(readings[2]!.fitted.unit).toBe('V');
  });

  it('where a CSV file is missing, at the value that names it', () => {
    const text = `${BENCH}measured:\n  fit: [main.slack]\n  runs: {a: {file: a.csv}}\n`;
    const { verdict, problems, dimensions, rank } = documentOf(text);
    expect(verdict).toEqual({ outcome: 'unusable', text: 'There is no file `a.csv` beside this one' });
    expect(problems).toMatchObject([{ code: 'unknown-name', place: { offset: text.indexOf('a.csv') } }]);
    expect(dimensions).toEqual([]);
    expect(rank).toBeNull();
  });

  it('null where a dimension is not told, and why noise is as it is', () => {
    const {
      dimensions,
      untold,
      columns: read,
    } = documentOf(benchText({ columns: ['pedal.travel', 'crank.opening'], at: TEN, fit: ['main.slack', 'tps.at_closed'] }));
    expect(dimensions[1]!.error.value).toBeNull();
    expect(untold).toMatchObject([{ dimensions: ['tps.at_closed'], shown: 0, text: 'these readings tell nothing of tps.at_closed' }]);
    expect(read).toMatchObject([{ noiseFrom: 'common practice, no source', noise: { unit: 'deg' } }]);
    expect(read[0]!.noise.value).toBeCloseTo(0.2, 12);
  });
});
