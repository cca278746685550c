import { describe, expect, test } from 'vitest';
import { errorText, fullWords } from '../../src/outputs/tunedText.ts';
import { solve } from '../../src/solve.ts';
import { slopesOf } from '../studies/tune/slopes.ts';

describe('a distance from the curve', () => {
  const answers = solve(slopesOf('bank.fraction'));

  test('of a column in percent is in percent', () => {
    expect(errorText(answers, { column: 'bank.fraction' }, 0.000768)).toBe('0.077 %');
    expect(errorText(answers, { column: 'bank.fraction' }, 0.3377)).toBe('33.77 %');
  });

  test('of another is in its own unit', () => {
    expect(errorText(answers, { column: 'shaft.opening' }, Math.PI / 180)).toBe('1°');
    expect(errorText(answers, { column: 'bank.area' }, 2e-6)).toBe('2 mm²');
  });
});

test('what slopes count to is told where the file does not say what is full opening', () => {
  const words = (text: string, column: string): readonly string[] => fullWords(solve(text), { column }, (value) => `(${value.toFixed(3)})`);
  const bare = slopesOf('shaft.opening').replace(/plates:\n.*\n/, '');
  const greatest = solve(bare).table([1], ['shaft.opening']).columns[0]!.values[0]!;
  expect(words(bare, 'shaft.opening')).toEqual([
    expect.stringContaining(`(${((greatest * Math.PI) / 180).toFixed(3)}), the greatest as the file stands`),
  ]);
  expect(words(slopesOf('shaft.opening'), 'shaft.opening')).toEqual([]);
  expect(words(slopesOf('bank.area'), 'bank.area')).toEqual([]);
});
