import { describe, expect, it } from 'vitest';
import { holds } from '../../../src/definition/formula/compare.ts';
import { kindOfExpression } from '../../../src/definition/formula/kindOfExpression.ts';
import { dimensionOfKind } from '../../../src/definition/formula/kind.ts';
import { SCOPE, checkRequirement } from '../../support/checkFormula.ts';

describe('a requirement', () => {
  it('is a condition on columns and lets', () => {
    const { expression } = checkRequirement('at(100%, shaft.opening) >= 80 deg');
    expect(expression).toMatchObject({
      kind: 'binary',
      operator: '>=',
      floor: 1e-9,
      span: { start: 1000, end: 1033 },
      left: {
        kind: 'call',
        name: 'at',
        span: { start: 1000, end: 1023 },
        arguments: [
          { kind: 'number', value: 1 },
          { kind: 'column', owner: 'shaft', column: 'opening', dimension: 'angle', span: { start: 1009, end: 1022 } },
        ],
      },
      right: { kind: 'number', value: (80 * Math.PI) / 180, span: { start: 1027, end: 1033 } },
    });
    for (const text of [
      'at(25%, bank_a.area) <= 12% * max(bank_a.area)',
      'max(abs(shaft.closing), 2 N*mm) > 3 N*mm and not (reach < 3 mm) or n == 2',
      'where(shaft.opening > 10 deg) < 20 %',
      'at(where(shaft.opening > 10 deg), pedal.effort) < 50 N',
      'pedal.travel <= 50 %',
      'at(50 %, shaft.opening > 10 deg and pedal.effort < 20 N)',
      'min(pedal.release) > 0 N',
      'at(0, shaft.opening) == 0',
      'reach != 3 mm',
    ]) {
      expect(checkRequirement(text).expression, text).toBeDefined();
    }
  });

  it('may chain comparisons, which is short for both', () => {
    expect(checkRequirement('10 deg < at(50 %, shaft.opening) <= 20 deg').expression).toMatchObject({
      operator: 'and',
      left: { operator: '<', left: { kind: 'number' }, right: { name: 'at' } },
      right: { operator: '<=', left: { name: 'at' }, right: { kind: 'number' } },
    });
    checkRequirement('0 < where(n > 1) < 1\n    ^^^^^^^^^^^^ formula-not-allowed: joined by `and`');
  });

  it('is nothing but a condition', () => {
    checkRequirement('shaft.opening\n^^^^^^^^^^^^^ formula-dimension: is an angle; a requirement is a condition');
    checkRequirement('at(1, shaft.opening)\n^^^^^^^^^^^^^^^^^^^^ formula-dimension: Compare it');
    checkRequirement('38 mm\n^^^^^ formula-dimension: is a length');
    checkRequirement('not shaft.opening > 3 deg\n    ^^^^^^^^^^^^^ formula-dimension: in parentheses');
    checkRequirement('reach > 3 mm and n\n                 ^ formula-dimension: on each side');
    checkRequirement('shaft.opening = 3 deg\n              ^ formula-not-allowed: Write `==`');
    checkRequirement('reach >= 3 mm ± 0.1 mm\n              ^ bad-tolerance');
  });

  it('points at names that do not exist', () => {
    checkRequirement('shat.opening > 3 deg\n^^^^ unknown-name: Write `shaft`');
    checkRequirement('shaft.openin > 3 deg\n      ^^^^^^ unknown-name: Write `opening`');
    checkRequirement('shaft.colour > 3 deg\n      ^^^^^^ unknown-name: Its columns are rotation, opening, ratio, closing');
    checkRequirement('zzz.opening > 3 deg\n^^^ unknown-name: Parts with columns are pedal, shaft, bank_a');
    checkRequirement('shaft > 3 deg\n^^^^^ unknown-name: such as `shaft.rotation`');
    checkRequirement('reech > 3 mm\n^^^^^ unknown-name: Write `reach`');
    expect(checkRequirement('unread.opening > 3 deg').expression).toBeUndefined();
    expect(checkRequirement('spoilt > 3 deg').expression).toBeUndefined();
  });

  it('checks dimensions of columns', () => {
    checkRequirement('at(1, shaft.opening) > 80\n                       ^^ formula-dimension: Write the unit after `80`');
    checkRequirement('max(shaft.opening) > 3 mm\n                     ^^^^ formula-dimension: is an angle');
    checkRequirement('at(25, shaft.opening) > 3 deg\n   ^^ out-of-range: Write `25 %`');
    checkRequirement('at(-5%, shaft.opening) > 3 deg\n   ^^^ out-of-range: from 0 to 100 %');
    checkRequirement('at(2 * 60 %, shaft.opening) > 3 deg\n   ^^^^^^^^ out-of-range: from 0 to 100 %');
    checkRequirement('at(3 * (1/3), shaft.opening) > 3 deg');
    checkRequirement('at(25 deg, shaft.opening) > 3 deg\n   ^^^^^^ formula-dimension: such as `25 %`');
    checkRequirement('where(shaft.opening) > 0.5\n      ^^^^^^^^^^^^^ formula-dimension: a comparison');
    checkRequirement('max(2 * shaft.opening) > 3 deg\n    ^^^^^^^^^^^^^^^^^ formula-not-allowed: takes one column');
    checkRequirement('max(reach) > 3 mm\n    ^^^^^ formula-not-allowed: takes one column');
  });

  it('knows afterwards what its parts are', () => {
    const lets = SCOPE.lets.map((entry) => entry.kind);
    const leftOf = (text: string): unknown => {
      const { expression } = checkRequirement(text);
      const kind = expression?.kind === 'binary' ? kindOfExpression(expression.left, lets) : undefined;
      return kind && dimensionOfKind(kind);
    };
    expect(leftOf('at(1, shaft.opening) > 3 deg')).toBe('angle');
    expect(leftOf('max(0, reach) > 3 mm')).toBe('length');
    expect(leftOf('0 + reach > 3 mm')).toBe('length');
    expect(leftOf('sqrt(bank_a.area) > 3 mm')).toBe('length');
    expect(leftOf('reach * at(1, pedal.effort) > 3 N*mm')).toBe('torque');
    expect(leftOf('reach^2 > 3 mm^2')).toBe('area');
    expect(leftOf('atan2(reach, reach) > 3 deg')).toBe('angle');
    expect(leftOf('where(n > 1) > 3 %')).toBe('number');
    expect(leftOf('sin(lead) / n > 3 %')).toBe('number');
  });
});

describe('a comparison', () => {
  it('forgives 1e-9 of the greater side, or the floor, and no more', () => {
    expect(holds('>=', 80 - 7e-8, 80, 0)).toBe(true);
    expect(holds('>=', 80 - 9e-8, 80, 0)).toBe(false);
    expect(holds('<=', 80 + 7e-8, 80, 0)).toBe(true);
    expect(holds('==', 80 + 7e-8, 80, 0)).toBe(true);
    expect(holds('!=', 80 + 7e-8, 80, 0)).toBe(false);
    expect(holds('>', 80 + 7e-8, 80, 0)).toBe(false);
    expect(holds('>', 80 + 9e-8, 80, 0)).toBe(true);
    expect(holds('<', 80 - 9e-8, 80, 0)).toBe(true);
    expect(holds('<', 80 - 7e-8, 80, 0)).toBe(false);
    expect(holds('==', 5e-10, 0, 1e-9)).toBe(true);
    expect(holds('==', 2e-9, 0, 1e-9)).toBe(false);
  });

  it('with no value never holds', () => {
    for (const operator of ['<', '<=', '>', '>=', '==', '!='] as const) {
      expect(holds(operator, NaN, 1, 1), operator).toBe(false);
      expect(holds(operator, 1, NaN, 1), operator).toBe(false);
    }
  });
});
