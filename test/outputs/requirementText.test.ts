import { describe, expect, it } from 'vitest';
import { demandAsWritten } from '../../src/outputs/demandAsWritten.ts';
import { plain } from '../../src/outputs/paint.ts';
import { comparedText, requirementSection } from '../../src/outputs/requirementText.ts';
import { checkRequirements, decide } from '../support/checkRequirements.ts';

describe('a requirement in words', () => {
  it('has as many digits as it takes to tell what is from what is demanded', () => {
    checkRequirements(`
      a: max(shaft.opening) <= 79.9996 deg
      # failed: 80°, not ≤ 79.9996° (0.0004° too much, at 100 %)
      b: max(shaft.opening) >= 80.04 deg
      # failed: 80°, not ≥ 80.04° (0.04° short, at 100 %)
      c: max(shaft.opening) / 80 deg <= 99.996 %
      # failed: 100 %, not ≤ 99.996 % (0.004 % too much, at 100 %)
      d: max(shaft.opening) == 80 deg
      # passed: 80° = 80° (at 100 %)
      e: max(shaft.opening) != 79.9996 deg
      # passed: 80° ≠ 79.9996° (0.0004° apart, at 100 %)
      f: max(shaft.opening) == 79.9996 deg
      # failed: 80°, not = 79.9996° (0.0004° apart, at 100 %)
      g: max(shaft.opening) < 80 deg
      # failed: 80°, not < 80° (nothing to spare, at 100 %)
      h: max(shaft.opening) > 81 deg
      # failed: 80°, not > 81° (1° short, at 100 %)
    `);
  });

  it('tells a demand in another unit as it is written too', () => {
    checkRequirements(`
      a: max(shaft.opening) >= 1 rad
      # passed: 80° ≥ 1 rad = 57.3° (22.7° to spare, at 100 %)
      b: 1.5 rad <= max(shaft.opening)
      # failed: 80°, not ≥ 1.5 rad = 85.9° (5.94° short, at 100 %)
      c: max(shaft.opening) >= 10 °
      # passed: 80° ≥ 10° (70° to spare, at 100 %)
      d: max(shaft.opening) / 1 rad >= 20 %
      # passed: 139.6 % ≥ 20 % (119.6 % to spare, at 100 %)
    `);
    const area = (text: string, value: number): string | undefined => demandAsWritten({ text, demanded: { value, dimension: 'area' } });
    expect(area('max(bank.area) * 2 >= 2.2 inch^2', 2.2 * 0.0254 ** 2)).toBe('2.2 inch^2');
    expect(area('max(bank.area) >= 2 * 1.1 inch^2', 2.2 * 0.0254 ** 2)).toBeUndefined();
    expect(area('max(bank.area) >= 1000 mm^2', 1e-3)).toBeUndefined();
    expect(area('max(bank.area) >= -2.2 inch²', -2.2 * 0.0254 ** 2)).toBe('−2.2 inch²');
  });

  it('gives the same reason once', () => {
    checkRequirements(`
      a: shaft.opening > 3 deg and shaft.opening < 30 deg
      # not decidable: \`shaft.opening\` has a value at every pedal position; write \`at(…, shaft.opening)\`, \`min(shaft.opening)\` or \`max(shaft.opening)\`
    `);
  });

  it('shows shares in percent, small ones with two digits that say something', () => {
    const share = (value: number): string => comparedText({ value, dimension: 'number', percent: true });
    expect([0.5, 0.1234, 0.000_123_4, -0.000_012_34, 1e-13, 0].map(share)).toEqual([
      '50 %',
      '12.3 %',
      '0.012 %',
      '-0.0012 %',
      '0 %',
      '0 %',
    ]);
    expect(comparedText({ value: 0.5, dimension: 'number' })).toBe('0.5');
    expect(comparedText({ value: 12_345.678, unit: 'J' })).toBe('1.235e+4 J');
    expect(comparedText({ value: 1200, unit: 'J' })).toBe('1200 J');
    expect(comparedText({ value: 1.5, unit: 'J' })).toBe('1.5 J');
  });

  it('stands in line with the others, but for a very long name', () => {
    const long = 'n'.repeat(60);
    const answers = decide(`  a: max(shaft.opening) > 3 deg\n  ${long}: max(shaft.opening) > 3 deg`);
    const [, short = '', wide = ''] = requirementSection(answers, { paint: plain, width: 150 });
    expect(short).toBe(`  a${' '.repeat(39)}  passed  80° > 3° (77° to spare, at 100 %)`);
    expect(wide).toBe(`  ${long}  passed  80° > 3° (77° to spare, at 100 %)`);
    expect(requirementSection([], { paint: plain, width: 150 })).toEqual([]);
  });
});
