/** The JSON of `solve`, `tune` and `tolerance`, each held to its schema by a validator that is not ours. */
import { readFileSync } from 'node:fs';
import Ajv from 'ajv';
import { describe, expect, test } from 'vitest';
import { applyEdits } from '../../src/definition/edit.ts';
import type { JsonSolvedFigure } from '../../src/outputs/json/solvedFigureDocument.ts';
import type { JsonTolerance } from '../../src/outputs/json/toleranceDocument.ts';
import type { JsonTuned } from '../../src/outputs/json/tunedDocument.ts';
import { solve } from '../../src/solve.ts';
import { textbookLinkage, twoShafts } from '../studies/tolerance/cases.ts';
import { hiddenTruths } from '../support/hiddenTruths.ts';
import { call } from './support.ts';

const files = {
  linkage: textbookLinkage('± 0.05 mm').replace(', adjust:', ', ends: {kind: rod_end, play: 0.05 mm}, adjust:'),
  shafts: `${twoShafts('± 0.1 mm')}require:\n  opens: at(100%, first.opening) >= 67.9 deg\n  light: at(40%, pedal.effort) <= 3.3 N\n`,
  blanks: `${twoShafts('± 0.1 mm')}require:\n  opens far enough: at(60%, first.opening) >= 40 deg\n`,
  truth: hiddenTruths(1)[0]!.text,
  hopeless: hiddenTruths(1)[0]!.text.replace(/through: \[.*\]\]/, 'through: [[0 %, 0 deg], [50 %, 70 deg], [100 %, 75 deg]]'),
};

async function documentOf(
  kind: string,
  file: keyof typeof files,
  ...options: string[]
): Promise<{ readonly code: number; readonly document: unknown }> {
  const ajv = new Ajv({ allErrors: true });
  const schema = JSON.parse(readFileSync(new URL(`../../schema/${kind}.schema.json`, import.meta.url), 'utf8')) as object;
  const validate = ajv.compile(schema);
  const { code, out, error } = await call([kind, file, '--format', 'json', ...options], { files });
  expect(error).toBe('');
  const document = JSON.parse(out) as object;
  expect(validate(document), ajv.errorsText(validate.errors)).toBe(true);
  expect(validate({ ...document, extra: 1 })).toBe(false);
  expect(validate({ ...document, caution: undefined })).toBe(false);
  return { code, document };
}

test('solve: figures in their units, and edits that give what is told', async () => {
  const { code, document } = await documentOf(
    'solve',
    'shafts',
    '--change',
    'levers.first.arms.arm.radius',
    '--for',
    'at(60%, first.opening) == 40 deg',
  );
  const { change, choices, demand } = document as JsonSolvedFigure;
  expect(code).toBe(0);
  expect(change.present).toEqual({ value: 40, unit: 'mm' });
  expect(demand.name).toBeNull();
  const [choice] = choices;
  const { place, text } = choice!.edits[0]!;
  const edited = applyEdits(files.shafts, [{ span: { start: place.offset, end: place.endOffset }, text }]);
  expect(solve(edited).table([0.6], ['first.opening']).columns[0]!.values[0]).toBeCloseTo(40, 7);
  const none = await documentOf('solve', 'shafts', '--change', 'levers.first.arms.arm.radius', '--for', 'at(60%, first.opening) == 85 deg');
  expect(none.code).toBe(1);
  expect((none.document as JsonSolvedFigure).nearest).not.toBeNull();
});

test('solve: by the name of a requirement that has blanks', async () => {
  const asked = ['--change', 'levers.first.arms.arm.radius', '--for', 'opens far enough'];
  const { code, document } = await documentOf('solve', 'blanks', ...asked, '--from', '30 mm', '--to', '50 mm');
  const { demand, choices, bounds } = document as JsonSolvedFigure;
  expect(code).toBe(0);
  expect(demand.name).toBe('opens far enough');
  expect(choices.length).toBeGreaterThan(0);
  expect(bounds).toMatchObject({ from: { value: 30, unit: 'mm' }, to: { value: 50, unit: 'mm' } });
});

describe('tolerance', () => {
  test('figures, shares and bands of a file with a tolerance on everything', async () => {
    const { code, document } = await documentOf('tolerance', 'shafts', '--builds', '200', '--law', 'uniform');
    const { options, outcomes, requirements, bands, figures } = document as JsonTolerance;
    expect(code).toBe(1);
    expect(options).toEqual({ seed: 1, law: 'uniform', builds: 200 });
    for (const { effects } of outcomes) expect(effects).toHaveLength(figures.length);
    const [full] = outcomes;
    expect(full).toMatchObject({ name: 'opening of first at full pedal', unit: 'deg', play: null });
    // The stop alone decides: even over 67.5° to 68.5°, four tenths of which fail the line of 67.9°.
    const [opens, light] = requirements;
    expect(opens!.failed / opens!.builds).toBeGreaterThan(0.3);
    expect(opens!.failed / opens!.builds).toBeLessThan(0.5);
    expect(opens!.share).toBeCloseTo(1 - opens!.failed / opens!.builds, 12);
    expect(light).toMatchObject({ name: 'light', builds: 100, undecided: 0 });
    const opening = bands!.columns.find(({ name }) => name === 'first.opening')!;
    const last = opening.middle.length - 1;
    expect(opening.low[last]!).toBeCloseTo(67.55, 1);
    expect(opening.middle[last]!).toBeCloseTo(68, 1);
    expect(opening.high[last]!).toBeCloseTo(68.45, 1);
    opening.middle.forEach((value, i) => {
      expect(opening.low[i]!).toBeLessThanOrEqual(value!);
      expect(opening.high[i]!).toBeGreaterThanOrEqual(value!);
    });
  });

  test('play by itself', async () => {
    const { document } = await documentOf('tolerance', 'linkage', '--builds', '100');
    const { outcomes, figures } = document as JsonTolerance;
    expect(figures.filter(({ pin }) => pin !== null).map(({ pin, half }) => [pin, half])).toEqual([
      ['foot.pin', { value: 0.025, unit: 'mm' }],
      ['driven.pin', { value: 0.025, unit: 'mm' }],
    ]);
    const { play, stack } = outcomes[0]!;
    expect(play!.rootSumSquare!).toBeLessThan(stack.rootSumSquare!);
  });

  test.each([
    [['--law', 'gauss'], /no law `gauss`; write normal or uniform/],
    [['--builds', '5'], /whole number from 100/],
    [['--builds', '1e4'], /whole number from 100/],
    [['--format', 'xml'], /no format `xml`/],
    [['--change', 'x'], /`--change` belongs to `solve`/],
  ])('%j is answered in words', async (options, words) => {
    const { code, error } = await call(['tolerance', 'linkage', ...options], { files });
    expect(code).toBe(2);
    expect(error).toMatch(words);
  });
});

test('tune: values, distances and edits; and what stands in the way', async () => {
  const { code, document } = await documentOf('tune', 'truth');
  const { answers, column, enough } = document as JsonTuned;
  expect(code).toBe(0);
  expect(column).toBe('shaft.opening');
  expect(enough).toEqual({ value: expect.closeTo(0.1, 12) as number, unit: 'deg' });
  expect(answers[0]).toMatchObject({ isOnCurve: true, keepsAll: true });
  expect(answers[0]!.edits).toHaveLength(answers[0]!.values.length);
  const hopeless = await documentOf('tune', 'hopeless');
  expect(hopeless.code).toBe(1);
});

describe('solve', () => {
  test.each([
    [['--for', 'opens'], /What may be changed is missing/],
    [['--change', 'levers.first.arms.arm.radius'], /What it is for is missing/],
    [['--change', 'levers.first.arms.arm.radius', '--for', 'opns'], /no requirement `opns`.*did you mean `opens`/i],
    [['--change', 'nothing', '--for', 'opens'], /no figure `nothing`/],
    [['--change', 'levers.first.arms.arm.radius', '--for', 'opens', '--from', '50 mm', '--to', '20 mm'], /reversed/],
    [['--change', 'sensors.tps.at_closed', '--for', 'opens'], /does not depend on/],
    [['--change', '--for', 'opens'], /needs a value/],
  ])('%j is answered in words', async (options, words) => {
    const { code, error, out } = await call(['solve', 'shafts', ...options], { files });
    expect([code, out]).toEqual([2, '']);
    expect(error).toMatch(words);
  });

  test('tells each value with what it does, where it holds and how it was looked for', async () => {
    const { code, out } = await call(['solve', 'shafts', '--change', 'springs.close.preload', '--for', 'light'], { files });
    expect(code).toBe(0);
    expect(out).toMatch(/springs\.close\.preload: \d+(\.\d+)? N\*mm/);
    expect(out).toContain('besides: ');
    expect(out).toMatch(/Where it holds\n {2}from .* to /);
    expect(out).toMatch(/at 129 values evenly within the bounds/);
    expect(out).toContain('Caution.');
    expect(out).toMatch(/shafts: 1 value of springs\.close\.preload found\n$/);
    expect(out).not.toMatch(/NaN|undefined|Infinity/);
  });
});
