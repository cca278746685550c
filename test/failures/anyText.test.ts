/** Failures of files that are half written: whatever stands there, something is answered. */
import { expect, it } from 'vitest';
import fc from 'fast-check';
import { solve } from '../../src/solve.ts';
import { returnText } from '../../src/outputs/returnText.ts';
import { CRANK, textOf } from './throttles.ts';

it('never throws and never shows a figure that is none, wherever a line is taken out or a figure is another', () => {
  const lines = textOf(CRANK).split('\n');
  fc.assert(
    fc.property(fc.nat(lines.length - 1), fc.nat(200), fc.constantFrom('0', '-40', '1e6', '0.001', ''), (gone, place, figure) => {
      const kept = lines.filter((_, i) => i !== gone || place % 2 === 0).join('\n');
      let number = 0;
      const text = kept.replaceAll(/-?\d+(?:\.\d+)?/g, (was) => (number++ === place ? figure : was));
      expect(returnText(solve(text), { file: 'a' })).not.toMatch(/NaN|Infinity|undefined/);
    }),
    { numRuns: 40, seed: 6 },
  );
}, 60_000);
