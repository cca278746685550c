import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PLACE_UNIT_SI, type Dimension } from '../../src/definition/dimensions.ts';
import { compareTexts } from '../../src/compareTexts.ts';
import { figureRows } from '../../src/outputs/compareFigures.ts';
import { isShown, pairText } from '../../src/outputs/figurePair.ts';
import { withMinus } from '../../src/outputs/minus.ts';
import type { OutcomeChange } from '../../src/studies/compare/comparison.ts';
import '../support/seed.ts';
import { BASE, edited } from '../studies/compareFiles.ts';

const outcome = (was: number, is: number, dimension: Dimension, percent = false): OutcomeChange => ({
  ...{ about: 'rest', from: 'column', part: 'a', key: 'b.least', label: 'b least', percent },
  was: { figure: { value: was * PLACE_UNIT_SI[dimension], dimension } },
  is: { figure: { value: is * PLACE_UNIT_SI[dimension], dimension } },
  difference: (is - was) * PLACE_UNIT_SI[dimension],
});

const number = (text: string): number => Number(text.replace('\u2212', '-').replace(/[^\d.-]/g, ''));
const digits = (text: string): number => /\.(\d+)/.exec(text)?.[1]?.length ?? 0;

describe('a figure of both files', () => {
  it.each([
    [1232.4, 938.8, 'area', ['1232 mm²', '939 mm²', '−293.6 mm²']],
    [1232.4, 1201.4, 'area', ['1232 mm²', '1201 mm²', '−31 mm²']],
    [-12.34, -10, 'angle', ['−12.3°', '−10°', '+2.3°']],
    [-60, -61, 'length', ['−60 mm', '−61 mm', '−1 mm']],
    [10.04, 9.96, 'force', ['10.04 N', '9.96 N', '−0.08 N']],
  ] as const)('%f → %f %s has a difference that fits what is shown', (was, is, dimension, [before, after, difference]) => {
    expect(pairText(outcome(was, is, dimension))).toEqual({ was: before, is: after, difference });
  });

  it('has points of a percentage with a digit more where the shown ones lie apart otherwise', () => {
    expect(pairText(outcome(0.22149, 0.21975, 'number', true))).toEqual({ was: '22.1 %', is: '22 %', difference: '−0.17 points' });
    expect(pairText(outcome(0.27, 0.268, 'number', true)).difference).toBe('−0.2 points');
  });

  it('never has another difference than the shown figures but with a digit more', () => {
    const value = fc.integer({ min: -2e7, max: 2e7 }).map((tenThousandths) => tenThousandths / 1e4);
    fc.assert(
      fc.property(value, value, fc.constantFrom<Dimension>('area', 'angle', 'force', 'length', 'torque'), (was, is, dimension) => {
        const both = outcome(was, is, dimension);
        fc.pre(isShown(both));
        const shown = pairText(both);
        expect(shown.was).not.toBe(shown.is);
        const most = Math.max(digits(shown.was), digits(shown.is));
        if (digits(shown.difference) > most) {
          expect(Math.abs(number(shown.difference) - (is - was))).toBeLessThanOrEqual(0.51 * 10 ** -digits(shown.difference));
        } else expect(number(shown.difference)).toBeCloseTo(number(shown.is) - number(shown.was), 6);
      }),
      { numRuns: 300 },
    );
  });

  it('is not shown where it differs by less than half a shown digit', () => {
    expect(isShown(outcome(80, 80.04, 'angle'))).toBe(false);
    expect(isShown(outcome(80, 80.06, 'angle'))).toBe(true);
    expect(isShown(outcome(0.8, 0.8004, 'number', true))).toBe(false);
    const { outcomes } = compareTexts(BASE, edited(['open: 68 deg', 'open: 67.97 deg']));
    expect(outcomes.some(({ part, key }) => part === 'shaft' && key === 'opening.full')).toBe(true);
    expect(figureRows({ outcomes }).filter(({ part, label }) => part === 'shaft' && /opening at full|full opening/.test(label))).toEqual(
      [],
    );
  });

  it('is told once, though a pedal that is a cable and the cable have it both', () => {
    const rows = figureRows(compareTexts(BASE, edited(['pull: 32 mm', 'pull: 31 mm'])));
    expect(rows.filter(({ was, is }) => was === '32 mm' && is === '31 mm').map(({ part, label }) => [part, label])).toEqual([
      ['pedal', 'pull'],
    ]);
  });

  it('has a label that says what it is of', () => {
    const rows = figureRows(compareTexts(BASE, edited(['reach: 30 mm', 'reach: 31 mm'], ['rate: 2.4', 'rate: 3'])));
    const labels = rows.map(({ label }) => label);
    expect(labels).toContain('least drive angle');
    expect(labels).toContain('greatest closing torque');
    for (const lone of ['greatest', 'and close by', 'at full pedal', 'opens', 'closing at rest', 'drive least'])
      expect(labels).not.toContain(lone);
  });
});

it('turns the hyphen of a figure into a minus sign, and no other', () => {
  expect(withMinus('-3° to -4 mm, a-1, 3-4, (-.5), +0.2/-0.1, `x -3`, 2026-01-02')).toBe(
    '−3° to −4 mm, a-1, 3-4, (−.5), +0.2/−0.1, `x -3`, 2026-01-02',
  );
});
