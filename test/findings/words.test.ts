/** Figures in messages. */
import { expect, test } from 'vitest';
import { degrees, millimetres, volts } from '../../src/findings/words.ts';
import { figureText } from '../../src/outputs/figure.ts';

test('the same figure reads the same in a message as everywhere else', () => {
  for (const size of [0, 3.6e-5, 0.0036, 0.036, 0.824, 5.153, 9.996, 27.64, 359.4]) {
    for (const shown of [size, -size]) {
      expect(degrees((shown * Math.PI) / 180)).toBe(figureText({ value: (shown * Math.PI) / 180, dimension: 'angle' }));
      expect(millimetres(shown / 1e3)).toBe(figureText({ value: shown / 1e3, dimension: 'length' }));
      expect(volts(shown)).toBe(figureText({ value: shown, dimension: 'voltage' }));
    }
  }
  expect([degrees(5.153 * (Math.PI / 180)), volts(0.0362), millimetres(0.000_003_4)]).toEqual(['5.15°', '0.036 V', '0.0034 mm']);
});

test('what is to be made may have more digits', () => {
  expect([degrees(82.553 * (Math.PI / 180), 2), millimetres(0.110_191_4, 3)]).toEqual(['82.55°', '110.191 mm']);
});
