/**
 * Texts of values, `let` entries and requirements -> what they mean. The doors of this folder.
 */
import type { Tolerance } from '../definition.ts';
import type { Dimension } from '../dimensions.ts';
import type { Problem } from '../problem.ts';
import { toProblem } from '../quantity/fault.ts';
import type { Fault, Origin } from '../quantity/fault.ts';
import { fittingUnits, readQuantity } from '../quantity/quantity.ts';
import { asKind, checkDimensions, describeChecked, written } from './checkDimensions.ts';
import type { CheckContext, Checked } from './checkDimensions.ts';
import { compile } from './compile.ts';
import { differentiate } from './differentiate.ts';
import type { Expression, Formula } from './formula.ts';
import { describeDimension, dimensionOfKind, isPlain, kindFits, kindOf } from './kind.ts';
import type { Kind } from './kind.ts';
import { keptByText } from './keptByText.ts';
import { parseFormula } from './parse.ts';
import { indexOfLet } from './scope.ts';
import type { RequirementScope, Scope, ScopeLet, Vocabulary } from './scope.ts';

/** What became of the text of a formula. */
export interface FormulaReading {
  /** Both absent where the formula could not be used; then a problem says why, here or at a `let` that it uses. */
  readonly formula?: Formula;
  /** SI. */
  readonly nominal?: number;
  /** What the result is a quantity of. */
  readonly kind?: Kind;
  readonly problems: readonly Problem[];
}

/** A value that may be a plain quantity or a formula. */
export interface ValueReading extends FormulaReading {
  /** As written, the place's own where none was written, empty for a formula. */
  readonly unit: string;
  readonly tolerance?: Tolerance;
}

/** What became of an entry of `let`. */
export interface LetReading extends ValueReading {
  /** The dimension that `kind` is, or undefined where no place of the file knows it. */
  readonly dimension?: Dimension;
}

/** A value at a place that expects a dimension. */
export function readValue(text: string, at: Origin, expected: Dimension, scope: Scope): ValueReading {
  return readEither(text, at, expected, scope);
}

/** An entry of `let`: any kind of quantity; without a unit, a plain number. @param scope with the entries before it */
export function readLet(text: string, at: Origin, scope: Scope): LetReading {
  const reading = readEither(text, at, undefined, scope);
  const dimension = reading.kind === undefined ? undefined : dimensionOfKind(reading.kind);
  return { ...reading, ...(dimension !== undefined && { dimension }) };
}

/** @param expected undefined where any kind will do */
export function readFormula(text: string, at: Origin, expected: Dimension | undefined, scope: Scope): FormulaReading {
  const checked = check(text, { origin: at, scope });
  const { faults } = checked;
  if (checked.whole === undefined) return { problems: problemsOf(faults, at) };
  const { whole, context } = checked;
  const kind = asKind(whole.kind);
  const misfit = faults.length === 0 ? resultFault(whole, kind, expected, context) : undefined;
  if (misfit !== undefined) faults.push(misfit);
  if (faults.length > 0 || kind === undefined || whole.kind === 'unknown') return { problems: problemsOf(faults, at) };
  const settled = expected === undefined ? kind : kindOf(expected);
  const values = valuesOf(scope.lets);
  const formula = makeFormula(text, whole.expression);
  const nominal = formula.evaluate(values);
  if (!Number.isNaN(nominal)) return { formula, nominal, kind: settled, problems: [] };
  // A let without a value has been complained of at its own place.
  if (formula.uses.some((index) => Number.isNaN(values[index] ?? NaN))) return { problems: [] };
  return { problems: problemsOf([noValue(whole, values, context)], at) };
}

/** What became of a line of `require`. */
export interface RequirementReading {
  /** Absent where it could not be understood. A condition: comparisons joined by `and`, `or`, `not`. */
  readonly expression?: Expression;
  readonly problems: readonly Problem[];
}

/** A condition on columns and `let` values. */
export function readRequirement(text: string, at: Origin, scope: RequirementScope): RequirementReading {
  if (LINE_BREAK.test(text.trim())) {
    const fault: Fault = {
      code: 'formula-syntax',
      start: 0,
      end: text.length,
      message: 'The requirement runs over several lines',
      cure: 'Write it on one line',
    };
    return { problems: problemsOf([fault], at) };
  }
  const { whole, context, faults } = check(text, { origin: at, scope, columns: scope });
  if (whole !== undefined && faults.length === 0 && whole.kind !== 'condition' && whole.kind !== 'unknown') {
    const message = `\`${written(context, whole.syntax)}\` is ${describeChecked(whole.kind)}; a requirement is a condition`;
    const cure = 'Compare it with something, as in `at(100%, shaft.opening) >= 80 deg`';
    faults.push({ code: 'formula-dimension', start: whole.syntax.start, end: whole.syntax.end, message, cure });
  }
  if (whole?.kind !== 'condition' || faults.length > 0) return { problems: problemsOf(faults, at) };
  return { expression: whole.expression, problems: [] };
}

const LINE_BREAK = /[\n\r\u2028\u2029\u0085]/;

function problemsOf(faults: readonly Fault[], at: Origin): Problem[] {
  return faults.map((fault) => toProblem(fault, at));
}

function readEither(text: string, at: Origin, expected: Dimension | undefined, scope: Scope): ValueReading {
  const reading = readQuantity(text, at, expected, namesOf(scope));
  if (reading.form === 'formula') return { ...readFormula(text, at, expected, scope), unit: '' };
  const { quantity, problems } = reading;
  if (quantity === undefined) return { unit: '', problems };
  const { nominal, unit, kind, tolerance } = quantity;
  return { nominal, unit, kind, problems, ...(tolerance !== undefined && { tolerance }) };
}

/** Asked word by word: most values are plain quantities, for which no list of names need be made. */
function namesOf({ lets, broken, later }: Scope): Vocabulary {
  return { has: (word) => indexOfLet(lets, word) !== undefined || broken?.has(word) === true || later?.has(word) === true };
}

/** SI values of a list of `let` values that may still grow, kept from one formula to the next; what lies beyond the list is NaN. */
function valuesOf(lets: readonly ScopeLet[]): Float64Array {
  let known = valuesByList.get(lets) ?? { read: 0, values: new Float64Array(0) };
  if (known.values.length < lets.length) {
    const values = new Float64Array(Math.max(16, 2 * lets.length)).fill(NaN);
    values.set(known.values.subarray(0, known.read));
    known = { read: known.read, values };
  }
  for (; known.read < lets.length; known.read++) known.values[known.read] = lets[known.read]?.nominal ?? NaN;
  valuesByList.set(lets, known);
  return known.values;
}

const valuesByList = new WeakMap<readonly ScopeLet[], { read: number; readonly values: Float64Array }>();

interface Examined {
  /** Absent where the text could not even be parsed. */
  readonly whole?: Checked;
  readonly context: CheckContext;
  readonly faults: Fault[];
}

const parsedAs = keptByText(parseFormula);

function check(text: string, given: Pick<CheckContext, 'origin' | 'scope'> & { readonly columns?: RequirementScope }): Examined {
  const parsed = parsedAs(text, namesOf(given.scope));
  const faults = [...parsed.faults];
  const context: CheckContext = { ...given, text, faults };
  if (parsed.syntax === undefined) return { context, faults };
  return { whole: checkDimensions(parsed.syntax, context), context, faults };
}

function resultFault(whole: Checked, kind: Kind | undefined, expected: Dimension | undefined, context: CheckContext): Fault | undefined {
  if (whole.kind === 'unknown' || whole.kind === 'zero') return undefined;
  const { syntax } = whole;
  const quoted = written(context, syntax);
  const where = { start: syntax.start, end: syntax.end };
  if (kind === undefined) {
    return {
      code: 'formula-dimension',
      ...where,
      message: `\`${quoted}\` is a condition (yes or no), not a quantity`,
      cure: 'Conditions belong in `require`',
    };
  }
  if (expected === undefined || kindFits(kind, expected)) return undefined;
  const message = `\`${quoted}\` is ${describeChecked(whole.kind)}, but ${describeDimension(expected)} is wanted here`;
  const cure = isPlain(kind)
    ? `Only a single bare number takes the unit of its place: give a figure in the formula its unit (${fittingUnits(expected)})`
    : `Make the result ${describeDimension(expected)} (${fittingUnits(expected)})`;
  return { code: 'formula-dimension', ...where, message, cure };
}

function makeFormula(text: string, expression: Expression): Formula {
  const uses = [...usesOf(expression, new Set())].sort((a, b) => a - b);
  const value = compile(expression);
  // Asked for by searches and tolerances, and not while a person types.
  let derivatives: readonly ReturnType<typeof compile>[] | undefined;
  return {
    text,
    uses,
    evaluate(lets) {
      const result = value(lets);
      return Number.isFinite(result) ? result : NaN;
    },
    gradient(lets, into) {
      derivatives ??= uses.map((index) => compile(differentiate(expression, index)));
      for (let k = 0; k < derivatives.length; k++) into[k] = derivatives[k]?.(lets) ?? NaN;
    },
  };
}

function usesOf(expression: Expression, into: Set<number>): Set<number> {
  switch (expression.kind) {
    case 'number':
    case 'column':
      break;
    case 'let':
      into.add(expression.index);
      break;
    case 'unary':
      usesOf(expression.operand, into);
      break;
    case 'binary':
      usesOf(expression.left, into);
      usesOf(expression.right, into);
      break;
    case 'call':
      for (const argument of expression.arguments) usesOf(argument, into);
  }
  return into;
}

/** The innermost part that has no value though its own parts have. */
function noValue(whole: Checked, lets: Float64Array, context: CheckContext): Fault {
  const span = culprit(whole.expression, lets).span;
  const { origin } = context;
  // Only from a plain offset can a place in the file be brought back to the text.
  const stretch = typeof origin === 'number' ? { start: span.start - origin, end: span.end - origin } : whole.syntax;
  const quoted = context.text.slice(stretch.start, stretch.end);
  const cure = 'Check for a division by zero, the root of a negative value, or a sine or cosine beyond 1';
  return {
    code: 'formula-no-value',
    start: stretch.start,
    end: stretch.end,
    message: `\`${quoted}\` has no real value with the file's figures`,
    cure,
  };
}

function culprit(expression: Expression, lets: Float64Array): Expression {
  for (const part of partsOf(expression)) if (!Number.isFinite(compile(part)(lets))) return culprit(part, lets);
  return expression;
}

function partsOf(expression: Expression): readonly Expression[] {
  switch (expression.kind) {
    case 'number':
    case 'let':
    case 'column':
      return [];
    case 'unary':
      return [expression.operand];
    case 'binary':
      return [expression.left, expression.right];
    case 'call':
      return expression.arguments;
  }
}
