import { describe, expect, it } from 'vitest';
import { PLACE_UNIT, PLACE_UNIT_SI } from '../../../src/definition/dimensions.ts';
import type { Dimension } from '../../../src/definition/dimensions.ts';
import { kindFits } from '../../../src/definition/formula/kind.ts';
import { FITTING_UNITS, UNITS, UNIT_MISSPELLINGS, fromSi, parseUnit, toSi } from '../../../src/definition/quantity/units.ts';

const si = (value: number, text: string): number => {
  const unit = parseUnit(text);
  if (unit === undefined) throw new Error(`${text} is not a unit`);
  return toSi(value, unit);
};

describe('conversion', () => {
  // Definitions from memory, as in NIST SP 811; each written out as decimal digits of the exact value.
  it.each([
    [1, 'inch', 0.0254],
    [1, 'in', 0.0254],
    [1, 'ft', 0.3048],
    [38, 'mm', 0.038],
    [71.5, 'mm', 0.0715],
    [3, 'cm', 0.03],
    [25, 'um', 0.000025],
    [25, 'µm', 0.000025],
    [25, 'μm', 0.000025],
    [1, 'lbf', 4.4482216152605],
    [1, 'kgf', 9.80665],
    [2, 'kN', 2000],
    [1, 'lb', 0.45359237],
    [95, 'g', 0.095],
    [500, 'mV', 0.5],
    [1, 'bar', 100000],
    [70, 'kPa', 70000],
    [35, '%', 0.35],
    [180, 'deg', Math.PI],
    [180, '°', Math.PI],
    [2, 'rad', 2],
    [400, 'N*mm', 0.4],
    [95, 'kg*mm^2', 0.000095],
    [50, 'N/mm', 50000],
  ])('takes %d %s for exactly %d in SI', (value, unit, wanted) => {
    expect(si(value, unit)).toBe(wanted);
  });

  it('agrees with the definitions of compound imperial units to the last digits', () => {
    // lbf = 0.45359237 kg × 9.80665 m/s²; psi = lbf/inch²: 6894.757293168361 Pa, from memory.
    expect(si(1, 'lbf')).toBeCloseTo(0.45359237 * 9.80665, 14);
    expect(si(1, 'psi') / 6894.757293168361).toBeCloseTo(1, 14);
    expect(si(1, 'psi')).toBeCloseTo(si(1, 'lbf/inch^2'), 9);
    expect(si(12, 'lbf/inch') / ((12 * 4.4482216152605) / 0.0254)).toBeCloseTo(1, 14);
    expect(si(2.2, 'N*mm/deg') / (0.0022 / (Math.PI / 180))).toBeCloseTo(1, 14);
  });

  it('reads one unit the same however it is written', () => {
    for (const text of ['N*mm', 'N·mm', 'N⋅mm', 'N * mm', 'mm*N', 'N\u00a0·\u202fmm']) expect(si(7, text), text).toBe(0.007);
    for (const text of ['kg*mm^2', 'kg·mm²', 'kg * mm ^ 2', 'kg*mm*mm']) expect(si(95, text), text).toBe(0.000095);
    for (const text of ['N/m', 'N*m^-1', 'N·m^−1', 'N/m²*m']) expect(si(3, text), text).toBe(3);
  });

  it('goes back from SI', () => {
    for (const [name, unit] of UNITS) expect(fromSi(toSi(12.5, unit), unit) / 12.5, name).toBeCloseTo(1, 14);
  });

  it('refuses what is not wholly a unit', () => {
    for (const text of [
      'mmm',
      'N*',
      '*N',
      'N//m',
      'mm^',
      'mm^0',
      'mm^1.5',
      'mm^99',
      'mm^2^2',
      'N mm',
      '5 mm',
      '%/deg',
      '%^2',
      '(N)',
      'N)',
    ]) {
      expect(parseUnit(text), text).toBeUndefined();
    }
    expect(parseUnit('')).toMatchObject({ times: 1, over: 1 });
  });
});

describe('tables', () => {
  const dimensions = Object.keys(PLACE_UNIT) as Dimension[];

  it('has for every place its unit, with the value that the rest of the program takes it for', () => {
    for (const dimension of dimensions) {
      const unit = parseUnit(PLACE_UNIT[dimension]);
      expect(unit && kindFits(unit.kind, dimension), dimension).toBe(true);
      expect(unit && toSi(1, unit) / PLACE_UNIT_SI[dimension], dimension).toBeCloseTo(1, 14);
    }
  });

  it('proposes only units that fit', () => {
    for (const dimension of dimensions) {
      for (const text of FITTING_UNITS[dimension]) {
        const unit = parseUnit(text);
        expect(unit && kindFits(unit.kind, dimension), `${text} for ${dimension}`).toBe(true);
      }
    }
  });

  it('corrects misspellings to units, and none that is right already', () => {
    for (const [wrong, right] of UNIT_MISSPELLINGS) {
      expect(UNITS.has(wrong), wrong).toBe(false);
      expect(parseUnit(right), right).toBeDefined();
    }
  });
});
