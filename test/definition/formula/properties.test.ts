import fc from 'fast-check';
import { evaluate } from 'mathjs/number';
import { describe, expect, it } from 'vitest';
import { kindOf } from '../../../src/definition/formula/kind.ts';
import { readFormula, readLet, readRequirement, readValue } from '../../../src/definition/formula/readFormula.ts';
import type { Scope } from '../../../src/definition/formula/scope.ts';
import { SCOPE } from '../../support/checkFormula.ts';
import { cpuTime } from '../../support/cpuTime.ts';

const VALUES = { a: 1.7, b: -0.6, c: 0.35 };
const NUMBERS: Scope = { lets: Object.entries(VALUES).map(([name, nominal]) => ({ name, kind: kindOf('number'), nominal })) };

/** Expressions over plain numbers, so that any operation goes with any other; angles by `* 1 rad`, which is 1 in SI. */
const { expression } = fc.letrec<{ expression: string; leaf: string }>((tie) => ({
  leaf: fc.oneof(fc.constantFrom('a', 'b', 'c'), fc.constantFrom('2', '0.5', '3', '35 %', 'pi')),
  expression: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    tie('leaf'),
    fc.tuple(tie('expression'), fc.constantFrom('+', '-', '*', '/'), tie('expression')).map(([l, o, r]) => `(${l}) ${o} (${r})`),
    fc.tuple(tie('expression'), fc.constantFrom('+', '-', '*', '/', '^'), tie('leaf')).map(([l, o, r]) => `${l} ${o} ${r}`),
    fc.tuple(tie('expression'), fc.constantFrom('2', '3', '-1', '0.5', 'c')).map(([l, r]) => `(${l})^${r}`),
    tie('expression').map((x) => `-${x}`),
    fc.tuple(fc.constantFrom('sin', 'cos', 'tan'), tie('expression')).map(([f, x]) => `${f}((${x}) * 1 rad)`),
    fc.tuple(fc.constantFrom('asin', 'acos', 'atan'), tie('expression')).map(([f, x]) => `(${f}(${x}) / 1 rad)`),
    fc.tuple(fc.constantFrom('sqrt', 'abs', 'round', 'floor', 'ceil'), tie('expression')).map(([f, x]) => `${f}(${x})`),
    fc.tuple(tie('expression'), tie('expression')).map(([y, x]) => `(atan2(${y}, ${x}) / 1 rad)`),
    fc.tuple(fc.constantFrom('hypot', 'min', 'max'), tie('expression'), tie('expression')).map(([f, x, y]) => `${f}(${x}, ${y})`),
  ),
}));

describe('any formula', () => {
  it('has the value that mathjs itself computes', () => {
    let compared = 0;
    fc.assert(
      fc.property(expression, (text) => {
        if (text.length > 500) return;
        const { nominal, problems } = readFormula(text, 0, 'number', NUMBERS);
        // A bare fraction line between figures never meets a unit here; percent and rad are written out for mathjs.
        const plain = text.replaceAll('35 %', '(0.35)').replaceAll('1 rad', '1');
        // mathjs 15's own hypot(2, hypot(1e-16, 1.7)) is NaN, and its floor and ceil take what lies within 1e-12 of a whole number for it.
        const theirs: unknown = evaluate(plain, { ...VALUES, hypot: Math.hypot, floor: Math.floor, ceil: Math.ceil });
        if (nominal === undefined) {
          // Ours ends at the first value that is not real; only those without one may end there.
          expect(
            problems.map((problem) => problem.code),
            text,
          ).toEqual(['formula-no-value']);
          return;
        }
        compared++;
        if (typeof theirs !== 'number') throw new Error(`${text} is no number to mathjs`);
        expect(Math.abs(nominal - theirs), text).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(theirs)));
      }),
      { numRuns: 3000 },
    );
    expect(compared).toBeGreaterThan(1500);
  });

  it('has the derivatives that differences give', () => {
    let compared = 0;
    let undecided = 0;
    fc.assert(
      fc.property(expression, fc.tuple(thousandths(200, 2000), thousandths(-2000, 2000), thousandths(100, 900)), (text, values) => {
        // sin(π) is not 0 but a rounding error, of which differences see nothing.
        if (text.length > 500 || text.includes('pi')) return;
        const { formula } = readFormula(text, 0, 'number', {
          lets: NUMBERS.lets.map((entry, i) => ({ ...entry, nominal: values[i] ?? 0 })),
        });
        if (formula === undefined) return;
        const at = Float64Array.from(values);
        const gradient = new Float64Array(formula.uses.length);
        formula.gradient(at, gradient);
        formula.uses.forEach((index, k) => {
          const slope = smoothSlope((x) => {
            const moved = Float64Array.from(at);
            moved[index] = x;
            return formula.evaluate(moved);
          }, at[index] ?? 0);
          if (slope === undefined) return;
          compared++;
          // At the root, power or direction of 0 the rules give 0/0: not known, which is not wrong, but must stay rare.
          if (Number.isNaN(gradient[k])) {
            undecided++;
            return;
          }
          expect(
            Math.abs((gradient[k] ?? NaN) - slope.value),
            `∂(${text})/∂${'abc'[index] ?? ''} at ${values.join(', ')}: ${gradient[k] ?? NaN}, ${slope.value}`,
          ).toBeLessThanOrEqual(slope.error);
        });
      }),
      { numRuns: 3000 },
    );
    expect(undecided).toBeLessThan(0.02 * compared);
    expect(compared).toBeGreaterThan(1500);
  });

  it('never throws and never takes long, whatever is written', () => {
    const token = fc.constantFrom(
      'reach', 'lead', 'n', 'spoilt', 'below', 'shaft.opening', 'pedal.travel', 'mm', 'in', 'deg', '%', '°', 'N', '*', '/', '^', '+', '-', '−', '(', '(', ')', ')', ',', '±', '+/-',
      '0', '1', '2', '012', '1,5', '0x1', '1e400', '.5', '3 mm', '4 deg', '35 %', 'sin(', 'max(', 'abs(', 'min(', 'hypot(', 'sqrt(', 'at(', 'where(', 'not', 'and', 'or', '<', '<=', '==', '=', '!', '?', ':', ';', '#',
      '[', ']', '{', '}', '"', "'", '.', '..', '·', '²', 'mod', 'to', 'xor', 'e', 'pi', 'true', 'constructor', '__proto__', '\n', '\u00a0', '\ud800', '\u{1d4b3}', '_', '$', '\\', '`', ' ', ' ', ' ',
    ); // prettier-ignore
    const text = fc.oneof(
      fc.array(token, { maxLength: 200 }).map((tokens) => tokens.join('').slice(0, 600)),
      fc.array(token, { maxLength: 12 }).map((tokens) => tokens.join(' ')),
      fc.string({ unit: 'binary', maxLength: 600 }),
    );
    let slowest = 0;
    fc.assert(
      fc.property(text, (written) => {
        const start = cpuTime();
        const readings = [readValue(written, 0, 'length', SCOPE), readLet(written, 0, SCOPE), readRequirement(written, 0, SCOPE)];
        slowest = Math.max(slowest, cpuTime() - start);
        for (const { problems } of readings) {
          for (const { span, message, cure } of problems) {
            expect(span.start).toBeGreaterThanOrEqual(0);
            expect(span.end).toBeGreaterThanOrEqual(span.start);
            expect(span.end).toBeLessThanOrEqual(written.length);
            expect(message).not.toBe('');
            expect(cure).toBeTruthy();
          }
          expect(problems.length).toBeLessThanOrEqual(500);
        }
      }),
      { numRuns: 1500 },
    );
    // Typically well under 1 ms; the rest is for a busy machine.
    expect(slowest).toBeLessThan(200);
  }, 30_000);

  it.each([
    ['parentheses', '('.repeat(249) + 'n' + ')'.repeat(249)],
    ['minus signs', `${'-'.repeat(499)}n`],
    ['powers', `${'n^'.repeat(249)}n`],
    ['remainders', '%('.repeat(249)],
    ['nested extremes', `${'max(n,'.repeat(49)}n${')'.repeat(49)}`],
    ['nested absolute values', `${'abs('.repeat(49)}n${')'.repeat(49)}`],
    ['nested distances', `${'hypot('.repeat(49)}n${')'.repeat(49)}`],
    ['nested roots', `${'sqrt('.repeat(49)}n${')'.repeat(49)}`],
    ['products', Array.from({ length: 125 }, () => 'n').join(' * ')],
    ['quotients', Array.from({ length: 125 }, () => 'n').join(' / ')],
    ['nested chains', `${'1<where('.repeat(40)}n>1${')<2'.repeat(40)}`],
    ['a long scalar', 'reach + '.repeat(30000)],
    ['a long number', '1'.repeat(250000)],
    ['many dots', '1.'.repeat(100000)],
    ['a long word', 'x'.repeat(250000)],
    ['many spaces', `1${' '.repeat(250000)}mm`],
  ])('takes no time over %s', (_, text) => {
    const start = cpuTime();
    const reading = readValue(text, 0, 'number', SCOPE);
    readRequirement(text, 0, SCOPE);
    reading.formula?.gradient(Float64Array.of(1, 1, 1.5), new Float64Array(3));
    expect(cpuTime() - start).toBeLessThan(500);
    if (reading.formula === undefined) expect(reading.problems.length).toBeGreaterThan(0);
  });
});

/** Values on a grid, so that none is so near 0 that differences say nothing of it. */
function thousandths(min: number, max: number): fc.Arbitrary<number> {
  return fc.integer({ min, max }).map((n) => (n + 0.5) / 1000);
}

/** Slope by central differences, and how far it can be off; undefined at kinks, poles and where differences say nothing. */
function smoothSlope(f: (x: number) => number, x: number): { readonly value: number; readonly error: number } | undefined {
  const slope = (h: number): number => (f(x + h) - f(x - h)) / (2 * h);
  const [wide, fine] = [slope(2e-4), slope(1e-4)];
  const [left, right] = [(f(x) - f(x - 1e-4)) / 1e-4, (f(x + 1e-4) - f(x)) / 1e-4];
  const scale = Math.max(1, Math.abs(fine), Math.abs(f(x)));
  if (![wide, fine, left, right].every(Number.isFinite) || scale > 1e4) return undefined;
  // Smooth functions change slope little over so short a way; kinks and poles nearby do not pass.
  // A flight of steps as even as the differences looks smooth to them, but not to finer ones.
  if (Math.abs(slope(1e-6) - fine) > 1e-3 * scale) return undefined;
  if (Math.abs(left - right) > 1e-2 * scale || Math.abs(wide - fine) > 1e-5 * scale) return undefined;
  return { value: fine + (fine - wide) / 3, error: 1e-5 * scale };
}
