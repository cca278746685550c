/** Readings from CSV files beside the throttle file: what is wrong with them is told at the value of `file`. */
import { describe, expect, it } from 'vitest';
import { readDefinition } from '../../../src/definition/read.ts';
import { csvNames, gatherReadings, type BesideFile } from '../../../src/studies/fit/gather.ts';
import { BENCH, fitted, whyNot } from './bench.ts';

const textOf = (run: string, fit = '[main.slack, tps.at_closed]'): string => `${BENCH}measured:
  fit: ${fit}
  runs:
    bench: ${run}
`;
const TEXT = textOf('{file: bench.csv}');
const CSV = 'pedal.travel [%],tps.signal [V]\n0,0.94\n20,1.39\n40,1.97\n60,2.6\n80,3.27\n';
const held =
  (text: string): (() => BesideFile) =>
  () => ({ kind: 'text', text });

/** Every problem stands at the name of the file. */
function told(text: string, beside: () => BesideFile): readonly string[] {
  const { definition, problems: own } = readDefinition(text);
  expect(own).toEqual([]);
  const { problems } = gatherReadings(definition!, beside);
  for (const { span, severity, code } of problems) {
    expect(severity).toBe('error');
    expect(text.slice(span.start, span.end)).toBe(code === 'too-few-readings' ? 'measured' : 'bench.csv');
  }
  return problems.map(({ message, cure }) => `${message} | ${cure ?? ''}`);
}

it('reads a sound file', () => {
  expect(told(TEXT, held(CSV))).toEqual([]);
  const { readings } = fitted(TEXT, held(CSV));
  expect(readings.map(({ line, row, value }) => [line, row, value])).toEqual([
    [2, 1, 0.94],
    [3, 2, 1.39],
    [4, 3, 1.97],
    [5, 4, 2.6],
    [6, 5, 3.27],
  ]);
});

it('names each file once, in the order of the runs', () => {
  const { definition } = readDefinition(`${BENCH}measured:
  runs:
    cold: {file: cold.csv}
    hot: {file: hot.csv}
    again: {file: cold.csv}
`);
  expect(csvNames(definition!)).toEqual(['cold.csv', 'hot.csv']);
  expect(csvNames({})).toEqual([]);
});

describe('what is wrong is told at its place', () => {
  it.each<[string, BesideFile, string]>([
    ['a file that is not there', { kind: 'missing' }, 'There is no file `bench.csv` beside this one | Put it into the same folder'],
    ['a file that cannot be read', { kind: 'unreadable', reason: 'may not be read: check its permissions' }, '`bench.csv` may not be read'],
    ['an empty file', { kind: 'text', text: '' }, '`bench.csv`, line 1, column 1: The file is empty'],
    ['an unknown column', { kind: 'text', text: CSV.replace('signal', 'signl') }, 'Did you mean `tps.signal`?'],
    ['NaN', { kind: 'text', text: CSV.replace('1.39', 'NaN') }, '`bench.csv`, line 3, column 4: `NaN` is no reading'],
    ['a decimal comma', { kind: 'text', text: CSV.replace('1.39', '1,39') }, 'a decimal comma parts a figure in two'],
    ['a wrong unit', { kind: 'text', text: CSV.replace('[V]', '[mm]') }, 'The unit of `tps.signal` cannot be used'],
    ['a position beyond the travel', { kind: 'text', text: CSV.replace('80,', '180,') }, '`pedal.travel` must lie between 0 % and 100 %'],
    ['only empty rows', { kind: 'text', text: 'pedal.travel [%],tps.signal [V]\n,\n,\n' }, 'The file has no readings'],
    [
      'too few readings',
      { kind: 'text', text: 'pedal.travel [%],tps.signal [V]\n0,0.94\n' },
      '1 reading cannot tell 2 dimensions | Take names out of `fit`',
    ],
  ])('%s', (_, file, words) => {
    const [first, ...others] = told(TEXT, () => file);
    expect(first).toContain(words);
    expect(others).toEqual([]);
    // And nothing is made of it.
    expect(whyNot(TEXT, () => file).length).toBeGreaterThan(10);
  });

  it('of many mistakes the first, with how many more there are', () => {
    const all = told(TEXT, held(`pedal.travel [%],tps.signal [V]\n${'0,NaN\n'.repeat(20)}`));
    expect(all.length).toBe(6);
    expect(all.at(-1)).toContain('`bench.csv` has 15 more such mistakes');
  });

  it('a noise of a column that the file does not have', () => {
    const text = textOf('{file: bench.csv, noise: {shaft.opening: 0.1 deg}}');
    const { definition } = readDefinition(text);
    const [problem, ...others] = gatherReadings(definition!, held(CSV)).problems;
    expect(problem).toMatchObject({ message: 'The run has no readings of `shaft.opening`' });
    expect(text.slice(problem!.span.start, problem!.span.end)).toBe('shaft.opening');
    expect(others).toEqual([]);
  });
});
