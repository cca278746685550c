import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { holdingWords } from '../../src/outputs/solvedFigureText.ts';
import { solve } from '../../src/solve.ts';
import { solveFigure } from '../../src/solveFigure.ts';
import { finished } from '../../src/studies/finished.ts';

const EXAMPLE = readFileSync('examples/tune-a-bellcrank.throttle.yaml', 'utf8');

/** The ends of the stretches that are told, as they stand there. */
function endsTold(change: string, demand: string, bounds: { readonly from: string; readonly to: string }): readonly string[] {
  const solved = finished(solveFigure(EXAMPLE, { change, demand, ...bounds }));
  if (solved.kind !== 'solved') throw new Error(solved.why);
  return [...holdingWords(solved).matchAll(/(?:from|to|at) (?:about )?(-?[\d.]+ [^ ;]+)/g)].map(([, end = '']) => end);
}

describe('where a demand holds is told', () => {
  test.each([
    ['crank_reach', { from: '36.1234567 mm', to: '42 mm' }],
    ['shaft_reach', { from: '28 mm', to: '33.7654321 mm' }],
  ])('with figures of %s at which it does', (change, bounds) => {
    const name = 'narrow';
    for (const least of [36.61, 36.62, 36.63, 36.64]) {
      const demand = `at(50%, shaft.opening) >= ${least} deg`;
      const ends = endsTold(change, demand, bounds);
      expect(ends.length).toBeGreaterThanOrEqual(2);
      for (const end of ends) {
        const text = EXAMPLE.replace(new RegExp(`^( +${change}: ).*$`, 'm'), `$1${end}`).replace(
          'require:\n',
          `require:\n  ${name}: ${demand}\n`,
        );
        expect([end, solve(text).requirements.find((each) => each.requirement.name === name)?.outcome]).toEqual([end, 'passed']);
      }
    }
  });
});
