import { describe, expect, test } from 'vitest';
import { errorText } from '../../src/outputs/tunedText.ts';
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
