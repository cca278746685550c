import { describe, expect, it } from 'vitest';
import type { Dimension } from '../../../src/definition/dimensions.ts';
import { readQuantity } from '../../../src/definition/quantity/quantity.ts';
import { AT, checkLet, checkMended, checkNoEdit, checkValue } from '../../support/checkFormula.ts';

const nominal = (expected: Dimension, text: string): number | undefined => checkValue(expected, text).nominal;

describe('a plain quantity', () => {
  it('is a number with a unit', () => {
    expect(nominal('length', '38 mm')).toBe(0.038);
    expect(nominal('length', '1.5 in')).toBe(0.0381);
    expect(nominal('length', '1.5inch')).toBe(0.0381);
    expect(nominal('length', '38\u00a0mm')).toBe(0.038);
    expect(nominal('length', '38\u202fmm')).toBe(0.038);
    expect(nominal('angle', '180°')).toBe(Math.PI);
    expect(nominal('number', '35 %')).toBe(0.35);
    expect(nominal('number', '35%')).toBe(0.35);
    expect(nominal('torque', '0.4 N·m')).toBe(0.4);
    expect(nominal('inertia', '95 kg·mm²')).toBe(0.000095);
    expect(nominal('length', '1e3 mm')).toBe(1);
    expect(nominal('length', '  .5 mm ')).toBe(0.0005);
  });

  it('takes the unit of its place where it has none, and keeps the unit as written', () => {
    expect(checkValue('length', '38')).toMatchObject({ nominal: 0.038, unit: 'mm' });
    expect(checkValue('angle', '180')).toMatchObject({ nominal: Math.PI, unit: 'deg' });
    expect(checkValue('pressure', '70')).toMatchObject({ nominal: 70000, unit: 'kPa' });
    expect(checkValue('number', '0.15')).toMatchObject({ nominal: 0.15, unit: '' });
    expect(checkValue('torsional-rate', '2.2 N*mm/deg')).toMatchObject({ unit: 'N*mm/deg' });
    expect(checkLet('38')).toMatchObject({ nominal: 38, unit: '', dimension: 'number' });
    expect(checkLet('2 J')).toMatchObject({ nominal: 2, unit: 'J' });
    expect(checkLet('2 J').dimension).toBeUndefined();
  });

  it('has one sign at most, typographic minus included', () => {
    expect(nominal('length', '-3 mm')).toBe(-0.003);
    expect(nominal('length', '−3 mm')).toBe(-0.003);
    expect(nominal('length', '+3 mm')).toBe(0.003);
  });

  it('is refused where another country, program or age would have written it', () => {
    checkValue('length', '1,5 mm\n^^^ bad-quantity: Write `1.5`');
    checkMended('length', '1,5 mm', '1.5 mm');
    checkNoEdit('length', '1,000 mm');
    checkValue('length', '1.234,5 mm\n^^^^^^^ bad-quantity: one decimal point');
    checkMended('length', '012', '12');
    checkMended('length', '-012 mm', '-12 mm');
    checkMended('length', '0x1F mm', '31 mm');
    checkMended('length', '0o17', '15');
    checkMended('length', '0b101', '5');
    checkMended('length', '1_000 mm', '1000 mm');
    checkMended('length', '1 000 mm', '1000 mm');
    checkMended('length', '1/2 inch', '0.5 inch');
    checkMended('length', '1 1/2 inch', '1.5 inch');
    checkMended('length', '7"', '7 inch');
    checkValue('length', '1.2.3\n^^^^^ bad-quantity: not one number');
    for (const text of ['.inf', '.Inf', '-.inf', '.nan', '.NaN', 'NaN', 'Infinity', '-Infinity']) {
      checkValue('length', `${text}\n${'^'.repeat(text.length)} bad-quantity: is not a quantity`);
    }
    checkValue('length', '1e400 mm\n^^^^^ bad-quantity: too large');
    checkValue('length', '1e-400 mm\n^^^^^^ bad-quantity: too small');
    checkValue('force', '1e308 kN\n^^^^^^^^ bad-quantity: too large');
    checkValue('length', '0e5 mm');
    checkValue('length', '38 mm long\n      ^^^^ bad-quantity: comment');
    checkValue('length', 'mm\n^^ bad-quantity: as in `1 mm`');
    checkValue('length', '2 mm 3 mm\n     ^^^^ bad-quantity: A second number');
  });

  it('has one unit, and one problem where a word stands before it', () => {
    checkValue('length', '42x mm\n  ^ unknown-unit: `x` stands between the number and its unit | Leave it out');
    checkMended('length', '42x mm', '42 mm');
    checkMended('length', '42 x mm', '42 mm');
    checkMended('force', '5 about N', '5 N');
    // What is a unit, or nearly one, is told as that, and once.
    checkValue('length', '5 kn mm\n  ^^ unknown-unit: Write');
    checkValue('torque', '5 newtons mm\n  ^^^^^^^ unknown-unit: Write `N`');
  });

  it('is mended where it was written by a word processor or another keyboard', () => {
    checkMended('length', '“42 mm”', '42 mm');
    checkMended('length', '‘42’', '42');
    checkMended('length', '1 5/8"', '1.625 inch');
    checkMended('length', '5/8”', '0.625 inch');
    checkMended('length', '7”', '7 inch');
    checkMended('angle', '60º', '60°');
    checkValue('length', '2 x 42 mm\n  ^ unknown-unit: `x` is not a unit');
    const digits = '4'.repeat(400);
    checkValue(
      'length',
      `${digits}\n${'^'.repeat(400)} bad-quantity: …\` is too large to be computed with | Write a figure of fewer digits`,
    );
  });

  it('takes no unit that does not fit the place for what a wrong one was meant to be', () => {
    checkValue('length', '42 Hg\n   ^^ unknown-unit: `Hg` is not a unit | Write mm, cm, m');
    checkValue('pressure', '42 kPo\n   ^^^ unknown-unit: Write `kPa`');
    checkValue('force', '42 lbg\n   ^^^ unknown-unit: Write `lbf`');
    expect(checkLet('42 kg').kind).toBeDefined();
  });

  it('is refused where it is empty or runs over lines', () => {
    const problems = (text: string): readonly unknown[] => {
      const reading = readQuantity(text, AT, 'length');
      return reading.form === 'quantity' ? reading.problems.map(({ code, span }) => [code, span.start - AT, span.end - AT]) : [];
    };
    expect(problems('')).toEqual([['bad-quantity', 0, 0]]);
    expect(problems('  ')).toEqual([['bad-quantity', 2, 2]]);
    expect(problems('38\nmm')).toEqual([['bad-quantity', 0, 5]]);
    expect(problems('reach +\r\n2 mm')).toEqual([['bad-quantity', 0, 13]]);
  });

  it('names what is wrong with its unit', () => {
    checkValue('length', '38 N\n   ^ wrong-unit: Write mm, cm, m, um, inch, in or ft');
    checkValue('angle', '25 mm\n   ^^ wrong-unit: Write deg, ° or rad');
    checkValue('torque', '2 J\n  ^ wrong-unit: an energy');
    checkValue('number', '3 mm\n  ^^ wrong-unit: without a unit');
    checkValue('length', '10 %\n   ^ wrong-unit');
    checkMended('linear-rate', '12 lb/inch', '12 lbf/inch');
    checkMended('length', '38 mmm', '38 mm');
    checkMended('length', '38 MM', '38 mm');
    checkMended('angle', '25 degrees', '25 deg');
    checkMended('torque', '25 Nmm', '25 N*mm');
    checkMended('torque', '25 N mm', '25 N*mm');
    checkMended('torque', '12 lbf-inch', '12 lbf*inch');
    checkMended('torsional-rate', '2 Nmm/deg', '2 N*mm/deg');
    checkMended('area', '38 mm2', '38 mm^2');
    checkMended('length', '3 mm mm', '3 mm');
    checkValue('length', '38 foo\n   ^^^ unknown-unit: `foo` is not a unit | Write mm, cm');
    checkValue('area', '2 mm^2^2\n    ^^^^ unknown-unit: one whole exponent');
    checkValue('area', '2 mm^0.5\n    ^^^^ unknown-unit: one whole exponent');
  });
});

describe('a tolerance', () => {
  const tolerance = (expected: Dimension, text: string): unknown => {
    const { plus = NaN, minus = NaN } = checkValue(expected, text).tolerance ?? {};
    return [plus, minus];
  };

  it('follows a plain quantity', () => {
    for (const text of ['38 mm ± 0.1 mm', '38 mm ± 0.1', '38 mm±0.1mm', '38 mm +/- 0.1 mm', '38 ± 0.1', '38 ± 0.1 mm', '38 mm ± 100 um']) {
      expect(tolerance('length', text), text).toEqual([0.0001, 0.0001]);
      expect(nominal('length', text), text).toBe(0.038);
    }
    for (const text of ['38 mm +0.2/-0.1 mm', '38 mm +0.2/-0.1', '38 mm -0.1/+0.2 mm', '38 mm +0.2 mm/-0.1 mm', '38 mm + 0.2 / − 0.1 mm']) {
      expect(tolerance('length', text), text).toEqual([0.0002, 0.0001]);
    }
    expect(tolerance('length', '38 mm +0.2/0')).toEqual([0.0002, 0]);
    expect(tolerance('length', '38 mm +0.2/-0')).toEqual([0.0002, 0]);
    expect(tolerance('length', '38 mm -0.1/0')).toEqual([0, 0.0001]);
    expect(tolerance('length', '38 mm +0/-0.1')).toEqual([0, 0.0001]);
    expect(tolerance('number', '12 % ± 1')).toEqual([0.01, 0.01]);
    expect(tolerance('length', '1.5 inch ± 0.1')).toEqual([0.00254, 0.00254]);
  });

  it('tells its place', () => {
    expect(checkValue('length', '38 mm ± 0.1 mm').tolerance?.span).toEqual({ start: AT + 6, end: AT + 14 });
  });

  it('is never arithmetic where two signed terms follow without a slash', () => {
    checkValue('length', '38 mm +0.2 -0.1 mm\n      ^^^^^^^^^^^^ bad-tolerance: Write `+0.2/-0.1 mm`');
    checkMended('length', '38 mm +0.2 -0.1 mm', '38 mm +0.2/-0.1 mm');
    checkMended('length', '38 +0.2 -0.1', '38 +0.2/-0.1');
    checkNoEdit('length', '38 mm + 2 mm + 1 mm');
    expect(nominal('length', '(38 mm + 2 mm) - 1 mm')).toBeCloseTo(0.039, 15);
    expect(nominal('length', '38 mm + 2 mm')).toBeCloseTo(0.04, 15);
  });

  it('leaves the figure usable where it is wrong itself', () => {
    expect(checkValue('length', '38 mm ± 0.1 N\n        ^^^^^ bad-tolerance: Write the deviation in mm').nominal).toBe(0.038);
    checkMended('length', '38 mm +- 0.1 mm', '38 mm ± 0.1 mm');
    checkMended('length', '38 mm ± -0.1', '38 mm ± 0.1');
    checkValue('length', '38 mm ± 5 %\n        ^^^ bad-tolerance: a share');
    checkValue('length', '38 mm ±\n      ^ bad-tolerance: one deviation');
    checkValue('length', '38 mm +0.2/+0.1\n      ^^^^^^^^^ bad-tolerance: Both deviations go up');
    checkValue('length', '38 mm +0.2/-0.1 N\n            ^^^^^ bad-tolerance: is a force');
  });

  it('wants the unit after the quantity too, where the bare one would be in another', () => {
    checkMended('length', '1.5 ± 0.1 inch', '1.5 inch ± 0.1 inch');
  });

  it('does not take a share of a plain number for its unit', () => {
    expect(checkValue('number', '0.15 ± 10 %\n       ^^^^ bad-tolerance: is a share').nominal).toBe(0.15);
    checkNoEdit('number', '0.15 ± 10 %');
  });
});
