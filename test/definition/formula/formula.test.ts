import { describe, expect, it } from 'vitest';
import type { Dimension } from '../../../src/definition/dimensions.ts';
import { readFormula, readValue } from '../../../src/definition/formula/readFormula.ts';
import { AT, SCOPE, checkLet, checkMended, checkNoEdit, checkRequirement, checkValue } from '../../support/checkFormula.ts';

const nominal = (expected: Dimension, text: string): number | undefined => checkValue(expected, text).nominal;

describe('a formula', () => {
  it('computes with lets in SI', () => {
    const reading = checkValue('length', '2 * reach + 5 mm');
    expect(reading.nominal).toBeCloseTo(0.081, 15);
    expect(reading.unit).toBe('');
    expect(reading.formula?.uses).toEqual([0]);
    expect(reading.formula?.text).toBe('2 * reach + 5 mm');
    expect(reading.formula?.evaluate(Float64Array.of(0.05, 0, 0))).toBeCloseTo(0.105, 15);
    expect(checkValue('length', 'reach * sin(lead) / n').formula?.uses).toEqual([0, 1, 2]);
  });

  it('has the precedence of mathjs', () => {
    expect(nominal('number', '-2^2')).toBe(-4);
    expect(nominal('number', '2^-1')).toBe(0.5);
    expect(nominal('number', '2^3^2')).toBe(512);
    expect(nominal('number', '8/n/2')).toBe(2);
    expect(nominal('number', 'n - 4 - 2')).toBe(-4);
    expect(nominal('number', '1 + 2 * 3')).toBe(7);
    expect(nominal('number', '(1 + 2) * 3')).toBe(9);
    expect(nominal('number', '- - 3')).toBe(3);
    expect(nominal('number', 'n^2 / n')).toBe(2);
    expect(nominal('area', '2 mm^2 * 3')).toBe(0.000006);
    expect(nominal('area', '(2 mm)^2')).toBeCloseTo(4e-6, 20);
  });

  it('has its functions and pi', () => {
    expect(nominal('number', 'sin(30 deg)')).toBeCloseTo(0.5, 15);
    expect(nominal('number', 'cos(60°) + tan(45 deg)')).toBeCloseTo(1.5, 14);
    expect(nominal('angle', 'asin(0.5)')).toBeCloseTo(Math.PI / 6, 15);
    expect(nominal('angle', 'acos(0.5)')).toBeCloseTo(Math.PI / 3, 15);
    expect(nominal('angle', 'atan(1)')).toBeCloseTo(Math.PI / 4, 15);
    expect(nominal('angle', 'atan2(-1 mm, -1 mm)')).toBeCloseTo((-3 * Math.PI) / 4, 15);
    expect(nominal('length', 'hypot(3 mm, 4 mm, 12 mm)')).toBeCloseTo(0.013, 15);
    expect(nominal('length', 'sqrt(reach * reach)')).toBeCloseTo(0.038, 15);
    expect(nominal('length', 'abs(-3 mm)')).toBe(0.003);
    expect(nominal('length', 'min(reach, 3 mm, 4 mm)')).toBe(0.003);
    expect(nominal('length', 'max(reach, 3 mm, 4 mm)')).toBe(0.038);
    expect(nominal('number', 'round(2.5) + round(-2.5) + round(2.4)')).toBe(2);
    expect(nominal('number', 'floor(-2.5) + ceil(2.2)')).toBe(0);
    expect(nominal('number', 'floor(0.3 / 0.1)')).toBe(3);
    expect(nominal('number', 'ceil(3 * 1.1 / 1.1)')).toBe(3);
    expect(nominal('number', '2 * pi')).toBe(2 * Math.PI);
    expect(nominal('length', 'reach*pi/pi')).toBeCloseTo(0.038, 15);
  });

  it('takes `in` for inches and `%` for a hundredth', () => {
    expect(nominal('length', '1.5 in + 2 in')).toBeCloseTo(0.0889, 15);
    expect(nominal('length', '2 in * n')).toBeCloseTo(0.1016, 15);
    expect(nominal('length', '35 % * reach')).toBeCloseTo(0.0133, 15);
    // mathjs itself would take ten percent of the left side here.
    expect(nominal('number', '1 + 10 %')).toBeCloseTo(1.1, 15);
    expect(nominal('number', '10 % - 2')).toBeCloseTo(-1.9, 15);
    checkValue('number', '35 % 2\n   ^ formula-not-allowed: remainder');
    checkValue('number', '35 % n\n   ^ formula-not-allowed: remainder');
    checkValue('number', '35 % (2)\n   ^ formula-not-allowed: remainder');
    checkValue('number', 'n % 2\n  ^ formula-not-allowed: remainder');
    checkValue('number', '(35) %\n     ^ formula-not-allowed: remainder');
    checkValue('number', '35 %%\n    ^ formula-not-allowed');
    checkValue('number', 'n mod 2\n  ^^^ formula-not-allowed: remainder');
  });

  it('has units right after numbers only', () => {
    checkValue('length', 'reach mm\n      ^^ formula-not-allowed: carries its own unit');
    checkMended('length', '(2) mm', '(2) * 1 mm');
    checkValue('length', 'reach + in\n        ^^ formula-not-allowed: as in `1 in`');
    checkValue('length', 'reach°\n     ^ formula-not-allowed');
    checkValue('length', 'reach in inch\n      ^^ formula-not-allowed');
    checkValue('length', 'reach to mm\n      ^^ formula-not-allowed: converted on their own');
    checkValue('length', '2 N*mmm / 1 N\n    ^^^ unknown-unit: Write `mm`');
  });

  it('takes a constant after a figure for a forgotten sign, not for a unit', () => {
    checkMended('number', '2 pi', '2 * pi');
    checkMended('number', '2pi', '2 * pi');
  });

  it('has the argument of a function in parentheses', () => {
    checkMended('number', 'sin 30 deg', 'sin(30 deg)');
    checkMended('number', '2 * sin lead', '2 * sin(lead)');
    checkMended('number', '√(2)', 'sqrt(2)');
    checkValue('number', '√2\n^ formula-not-allowed: in parentheses');
    checkNoEdit('number', '√2');
  });

  it('tells an unknown function as such, whatever its commas', () => {
    checkValue('number', 'sum(1,2)\n^^^ formula-not-allowed: is not a function');
    checkValue('number', 'if(1,2,3)\n^^ formula-not-allowed: is not a function');
    checkValue('number', 'n * (1,5)\n     ^^^ bad-quantity: decimal comma');
  });

  it('tells a choice once', () => {
    checkValue('number', 'n ? 1 : 2\n  ^ formula-not-allowed: choices');
  });

  it('does not guess at what can be read two ways', () => {
    checkValue('length', 'reach + 1/2 inch\n        ^^^^^^^^ formula-not-allowed: (1/2) * 1 inch');
    checkValue('length', '2 reach\n  ^^^^^ formula-not-allowed: Write `2 * reach`');
    checkMended('length', '2 reach', '2 * reach');
    checkMended('length', '2 mm (3)', '2 mm * (3)');
    checkMended('length', '(reach) (n)', '(reach) * (n)');
    checkMended('length', 'n (reach)', 'n * (reach)');
    checkValue('length', 'reach +- 0.1 mm\n      ^^ bad-tolerance: at the value in `let`');
  });

  it('has no tolerance of its own', () => {
    checkValue('length', 'reach ± 0.1 mm\n      ^ bad-tolerance: in `let`');
    checkValue('length', 'reach +/- 0.1 mm\n      ^^^ bad-tolerance: in `let`');
    checkValue('length', '2 * 3 mm ± 0.1\n         ^ bad-tolerance: in `let`');
  });

  it.each([
    ['x = 3', 2, 1],
    ['"abc"', 0, 5],
    ["reach'", 5, 1],
    ['[1 mm, 2 mm]', 0, 12],
    ['{a: 1}', 0, 6],
    ['n ? 1 mm : 2 mm', 2, 1],
    ['1 mm : 3 mm', 5, 1],
    ['reach .* 2', 6, 2],
    ['reach .^ 2', 6, 2],
    ['n!', 1, 1],
    ['n & 1', 2, 1],
    ['n | 1', 2, 1],
    ['~n', 0, 1],
    ['n << 1', 2, 2],
    ['n xor 1', 2, 3],
    ['reach ?? 1 mm', 6, 2],
    ['reach; n', 5, 1],
    ['reach # long', 6, 1],
    ['e * 1 mm', 0, 1],
    ['true', 0, 4],
    ['Infinity * n', 0, 8],
    ['import(n)', 0, 6],
    ['shaft.opening', 0, 13],
    ['at(1, reach)', 0, 2],
    ['where(n > 1)', 0, 5],
    ['a.b.c', 0, 5],
    ['reach\u{1f600}', 5, 2],
  ])('refuses `%s`', (text, start, length) => {
    const { problems, nominal: value } = readValue(text, AT, 'length', SCOPE);
    expect(value).toBeUndefined();
    expect(problems[0]).toMatchObject({ code: 'formula-not-allowed', span: { start: AT + start, end: AT + start + length } });
    for (const problem of problems) expect(problem.cure).toBeTruthy();
  });

  it('says what is meant where another sign was written', () => {
    checkMended('length', 'reach × 2', 'reach * 2');
    checkMended('length', 'reach · 2', 'reach * 2');
    checkMended('length', 'reach ÷ 2', 'reach / 2');
    checkMended('length', 'reach – 2 mm', 'reach - 2 mm');
    checkMended('area', 'reach²', 'reach^2');
    checkMended('area', 'reach**2', 'reach^2');
    expect(nominal('length', 'reach − 2 mm')).toBeCloseTo(0.036, 15);
  });

  it('points at broken syntax', () => {
    checkValue('length', 'reach +\n      ^ formula-syntax: Write the missing value');
    checkValue('length', '* reach\n^ formula-syntax: before `*`');
    checkValue('length', 'reach + * n\n        ^ formula-syntax: before `*`');
    checkValue('length', '(reach\n^ formula-syntax: missing `)`');
    checkMended('length', 'reach)', 'reach');
    checkValue('length', 'max(reach, )\n           ^ formula-syntax: before `)`');
    checkValue('length', 'reach * ()\n         ^ formula-syntax: before `)`');
    checkValue('length', '(1 mm, 2 mm)\n     ^ formula-syntax: arguments of a function');
    checkValue('length', 'reach * 1,5\n        ^^^ bad-quantity: Write `1.5`');
    checkValue('length', 'sin\n^^^ formula-syntax: sin(…)');
    checkValue('length', 'reach + sin * 2 mm\n        ^^^ formula-syntax: sin(…)');
    checkValue('length', 'min()\n^^^^^ formula-syntax: takes 1 or more');
    checkValue('angle', 'atan2(1 mm)\n^^^^^^^^^^^ formula-syntax: takes 2 arguments');
    checkValue('length', 'round(2.345, 2)\n^^^^^^^^^^^^^^^ formula-syntax: takes 1 argument,');
  });

  it('points at unknown names', () => {
    checkMended('length', 'reech', 'reach');
    checkMended('number', 'sine(lead)', 'sin(lead)');
    checkValue('length', 'reach + whatever\n        ^^^^^^^^ unknown-name: one of reach, lead, n');
    checkValue('length', 'below\n^^^^^ unknown-name: further down');
    checkValue('length', 'frobnicate(reach)\n^^^^^^^^^^ formula-not-allowed: Functions are sin');
  });

  it('says nothing of what follows from a let that is broken itself', () => {
    const reading = checkValue('length', 'spoilt + reach');
    expect(reading.formula).toBeUndefined();
    expect(reading.nominal).toBeUndefined();
    checkValue('length', 'sin(spoilt) * spoilt^spoilt');
    // … but of what is wrong besides
    checkValue('length', 'spoilt + reech\n         ^^^^^ unknown-name');
  });

  it('has 500 characters at most, and is nested 50 deep at most', () => {
    const sum = (terms: number): string => Array.from({ length: terms }, () => 'reach').join('+');
    expect(nominal('length', sum(83))).toBeCloseTo(83 * 0.038, 12);
    const long = `${sum(83)}+reach`;
    checkValue('length', `${long}\n${'^'.repeat(long.length)} formula-too-long: 503 characters`);
    const nested = (levels: number): string => `${'('.repeat(levels)}reach${')'.repeat(levels)}`;
    expect(nominal('length', nested(50))).toBe(0.038);
    checkValue('length', `${nested(51)}\n${' '.repeat(50)}^ formula-too-long: 50 deep`);
    checkValue('number', `${'-'.repeat(51)}n\n${' '.repeat(50)}^ formula-too-long: 50 deep`);
    checkValue('number', `${'1^'.repeat(51)}n\n${' '.repeat(101)}^ formula-too-long: 50 deep`);
    expect(nominal('number', `${'1^'.repeat(50)}n`)).toBe(1);
    expect(nominal('number', Array.from({ length: 60 }, () => '-n').join(' '))).toBe(-120);
  });

  it('is an error where it has no real value', () => {
    checkValue('number', '1 + sqrt(-1)\n    ^^^^^^^^ formula-no-value: no real value');
    checkValue('number', 'n + 2/0\n    ^^^ formula-no-value');
    checkValue('number', '1/(1/0)\n  ^^^^^ formula-no-value');
    checkValue('number', '(-8)^(1/3)\n^^^^^^^^^^ formula-no-value');
    checkValue('angle', 'asin(n)\n^^^^^^^ formula-no-value');
    checkValue('number', '0/0\n^^^ formula-no-value');
    checkValue('number', '10^300 * 10^300\n^^^^^^^^^^^^^^^ formula-no-value');
    checkValue('number', '(0/0)^0\n^^^^^ formula-no-value');
    const formula = checkValue('number', 'sqrt(n - 1)').formula;
    expect(formula?.evaluate(Float64Array.of(0, 0, 5))).toBe(2);
    expect(formula?.evaluate(Float64Array.of(0, 0, 0))).toBeNaN();
  });

  it('finds its place in a text that is not the file letter by letter', () => {
    const whole = { start: 40, end: 60 };
    const [problem] = readFormula('reach + 3', whole, 'length', SCOPE).problems;
    expect(problem).toMatchObject({ code: 'formula-dimension', span: whole });
    expect(readFormula('reech', whole, 'length', SCOPE).problems[0]?.replacements).toBeUndefined();
    expect(readFormula('1 mm/0', (offset) => 3 * offset, 'length', SCOPE).problems[0]?.span).toEqual({ start: 0, end: 18 });
  });
});

describe('dimensions', () => {
  it('follow the algebra of the trade', () => {
    expect(nominal('torque', '12 N * reach')).toBeCloseTo(0.456, 15);
    expect(nominal('torque', '2 N*mm/deg * 10 deg')).toBeCloseTo(0.02, 15);
    expect(nominal('force', '2 N/mm * 3 mm')).toBeCloseTo(6, 14);
    expect(nominal('torque', '2 N/mm * 3 mm * reach')).toBeCloseTo(0.228, 15);
    expect(nominal('torsional-rate', '2 N/mm * reach^2 / 1 rad')).toBeCloseTo(2.888, 12);
    expect(nominal('force', '70 kPa * 5 cm^2')).toBeCloseTo(35, 12);
    expect(nominal('inertia', '200 g * reach^2')).toBeCloseTo(0.2 * 0.038 ** 2, 15);
    expect(nominal('number', '30 deg / 10 deg')).toBeCloseTo(3, 14);
    expect(nominal('angle', '2 * lead + 5 deg')).toBeCloseTo(1 + (5 * Math.PI) / 180, 15);
    expect(nominal('linear-rate', '10 N / 4 mm')).toBeCloseTo(2500, 11);
  });

  it('make an arc a length, and find its angle again', () => {
    expect(nominal('length', 'reach * lead')).toBeCloseTo(0.019, 15);
    expect(nominal('length', 'reach * lead + 1 mm')).toBeCloseTo(0.02, 15);
    expect(nominal('length', 'reach * lead / lead')).toBeCloseTo(0.038, 15);
    expect(nominal('angle', 'reach * lead / reach')).toBeCloseTo(0.5, 15);
    expect(nominal('number', 'reach * lead / reach')).toBeCloseTo(0.5, 15);
    expect(nominal('area', 'reach^2 * lead / 2')).toBeCloseTo(0.038 ** 2 / 4, 15);
    expect(nominal('force', '2 N/mm * (reach * lead)')).toBeCloseTo(38, 11);
    expect(nominal('torque', 'reach * (2 N/mm * (reach * lead))')).toBeCloseTo(38 * 0.038, 11);
    checkValue('angle', 'reach / reach\n^^^^^^^^^^^^^ formula-dimension');
  });

  it('keep torque and energy apart', () => {
    checkValue('torque', '1 N*m * 1 rad\n^^^^^^^^^^^^^ formula-dimension: is an energy');
    checkLet('1 N*m + 1 J\n        ^^^ formula-dimension: is an energy');
    expect(checkLet('1 N*m * 1 rad + 1 J').nominal).toBe(2);
    expect(checkLet('1 N*m * 1 rad').dimension).toBeUndefined();
    expect(nominal('torque', '2 J / 4 rad')).toBe(0.5);
  });

  it('are checked in sums, comparisons and functions', () => {
    checkValue('length', 'reach + 3\n        ^ formula-dimension: Write the unit after `3`');
    checkValue('length', '3 + reach\n^ formula-dimension: Write the unit after `3`');
    checkValue('length', 'reach - lead\n        ^^^^ formula-dimension: is an angle');
    checkValue('length', 'max(reach, lead)\n           ^^^^ formula-dimension: arguments of one kind');
    checkValue('angle', 'atan2(reach, 3)\n             ^ formula-dimension: Write the unit');
    checkValue('length', 'round(reach)\n      ^^^^^ formula-dimension: round(x / 1 mm) * 1 mm');
    checkValue('angle', 'asin(reach)\n     ^^^^^ formula-dimension: takes a plain number');
    checkValue('number', 'sin(reach)\n    ^^^^^ formula-dimension: takes an angle');
    checkValue('number', '2^reach\n  ^^^^^ formula-dimension: exponent');
    checkValue('length', 'reach^n\n      ^ formula-dimension: whole or half');
    checkValue('length', 'reach^0.3\n      ^^^ formula-dimension: whole or half');
    expect(nominal('length', 'reach^(1/2) * sqrt(reach)')).toBeCloseTo(0.038, 15);
    expect(nominal('number', 'n^n')).toBe(4);
    checkValue('length', '(reach > 3 mm) * reach\n^^^^^^^^^^^^^^ formula-dimension: a condition');
    checkValue('length', 'reach > 3 mm\n^^^^^^^^^^^^ formula-dimension: `require`');
    checkValue('number', 'not n\n    ^ formula-dimension: parentheses');
  });

  it('want an angle where trigonometry does, and say which is likely', () => {
    checkValue('number', 'sin(30)\n    ^^ missing-unit: Write `30 deg`');
    checkValue('number', 'sin(-30)\n    ^^^ missing-unit: Write `-30 deg`');
    checkValue('number', 'cos(n * 30)\n    ^^^^^^ missing-unit: Write `(n * 30) * 1 deg`');
    checkNoEdit('number', 'sin(30)');
    expect(nominal('number', 'cos(0)')).toBe(1);
  });

  it('let a bare 0 be 0 of anything', () => {
    expect(nominal('length', 'max(0, reach - 1 m)')).toBe(0);
    expect(nominal('length', 'reach + 0')).toBe(0.038);
    expect(nominal('length', '-(0)')).toBe(-0);
    expect(checkRequirement('shaft.opening > 0').expression).toBeDefined();
  });

  it('must fit the place; only a single bare number takes its unit', () => {
    checkValue('length', '2 * 19\n^^^^^^ formula-dimension: Only a single bare number');
    checkValue('length', 'n\n^ formula-dimension: a plain number');
    checkValue('length', 'lead\n^^^^ formula-dimension: is an angle');
    checkValue('number', 'reach\n^^^^^ formula-dimension');
    expect(nominal('length', 'reach')).toBe(0.038);
  });

  it('of a let may be any', () => {
    expect(checkLet('2 N/mm * reach')).toMatchObject({ dimension: 'force' });
    expect(checkLet('reach^3').kind).toMatchObject({ length: 3 });
    expect(checkLet('reach^3').dimension).toBeUndefined();
    expect(checkLet('38 mm ± 0.1 mm')).toMatchObject({ dimension: 'length', tolerance: { plus: 0.0001 } });
    expect(checkLet('reach * lead').dimension).toBe('length');
    expect(checkLet('2 * n')).toMatchObject({ nominal: 4, dimension: 'number' });
  });
});
