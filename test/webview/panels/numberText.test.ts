import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../webview/panels/numberText.ts';

describe('a typed number', () => {
  test.each([
    ['38', 38],
    [' -5.25 ', -5.25],
    ['\u22125', -5],
    ['.5', 0.5],
    ['5.', 5],
    ['1e-3', 0.001],
    ['38 mm', 38],
    ['38mm', 38],
  ])('%j is taken', (typed, number) => {
    expect(numberIn(typed, 'mm')).toEqual({ number });
  });

  test('is looked for only where something is typed', () => {
    expect(numberIn('  ', 'mm')).toBeUndefined();
  });

  test.each([
    ['3,5', '3.5'],
    ['3,5 mm', '3.5'],
  ])('%j has a decimal comma', (typed, meant) => {
    expect(numberIn(typed, 'mm')).toEqual({ wrong: 'comma', meant });
  });

  test.each(['1.5 inch', 'abc', '1e999', 'NaN', 'Infinity', '0x10', '1,000,000', '--5', 'mm', '1 2', '1e'])('%j is none', (typed) => {
    expect(numberIn(typed, 'mm')).toEqual({ wrong: 'not-a-number' });
  });

  test('needs no unit where the field has none', () => {
    expect(numberIn('3', '')).toEqual({ number: 3 });
    expect(numberIn('3 mm', '')).toEqual({ wrong: 'not-a-number' });
  });
});
