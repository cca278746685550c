/**
 * Expression tree -> closure over the `let` values, SI in, SI out, allocating nothing when called.
 *
 * Every operation gives NaN where it has no real value (1/0, √−1, asin 2), so that no later one can hide it.
 */
import type { Expression } from './formula.ts';

/** SI values of all `let` in, the SI value out; NaN where there is no real one. */
export type Evaluate = (lets: Float64Array) => number;

/**
 * Arithmetic only: conditions, columns, `at` and `where` are decided on the table and give NaN here.
 * Besides the language's functions it knows those that derivatives need: see `differentiate.ts`.
 */
export function compile(expression: Expression): Evaluate {
  return compileShared(expression, new Map());
}

/** A derivative holds some parts many times over; each is compiled once. */
function compileShared(expression: Expression, known: Map<Expression, Evaluate>): Evaluate {
  const before = known.get(expression);
  if (before !== undefined) return before;
  const made = compileOne(expression, (part) => compileShared(part, known));
  known.set(expression, made);
  return made;
}

function compileOne(expression: Expression, compilePart: (part: Expression) => Evaluate): Evaluate {
  switch (expression.kind) {
    case 'number': {
      const { value } = expression;
      return () => value;
    }
    case 'let': {
      const { index } = expression;
      return (lets) => lets[index] ?? NaN;
    }
    case 'column':
      return noValue;
    case 'unary': {
      const operand = compilePart(expression.operand);
      if (expression.operator === '-') return (lets) => -operand(lets);
      return expression.operator === '+' ? operand : noValue;
    }
    case 'binary':
      return compileBinary(expression.operator, compilePart(expression.left), compilePart(expression.right));
    case 'call':
      return compileCall(expression.name, expression.arguments.map(compilePart));
  }
}

/** Powers as mathjs's numbers have them, with NaN in place of a complex or infinite value. */
export function realPower(base: number, exponent: number): number {
  // By IEEE 754 anything to the power of 0 is 1, NaN included.
  return Number.isNaN(base) ? NaN : real(base ** exponent);
}

/** Nearest whole number, halves away from zero, as mathjs rounds. */
export function roundHalfAway(value: number): number {
  return value < 0 ? -Math.round(-value) : Math.round(value);
}

/** `0.3 / 0.1` is meant to be 3 and is a hair less: like mathjs's, `floor` and `ceil` take it for 3 (within 1e-12 of it, 1e-15 at 0). */
function wholeNear(x: number): number | undefined {
  const whole = Math.round(x);
  return Math.abs(x - whole) <= Math.max(1e-12 * Math.abs(x), 1e-15) ? whole : undefined;
}

const noValue: Evaluate = () => NaN;

function real(value: number): number {
  return Number.isFinite(value) ? value : NaN;
}

function compileBinary(operator: string, left: Evaluate, right: Evaluate): Evaluate {
  switch (operator) {
    case '+':
      return (lets) => left(lets) + right(lets);
    case '-':
      return (lets) => left(lets) - right(lets);
    case '*':
      return (lets) => left(lets) * right(lets);
    case '/':
      return (lets) => real(left(lets) / right(lets));
    case '^':
      return (lets) => realPower(left(lets), right(lets));
    default:
      return noValue;
  }
}

const ONE_ARGUMENT: ReadonlyMap<string, (x: number) => number> = new Map<string, (x: number) => number>([
  ['sin', Math.sin],
  ['cos', Math.cos],
  ['tan', Math.tan],
  ['asin', Math.asin],
  ['acos', Math.acos],
  ['atan', Math.atan],
  ['sqrt', Math.sqrt],
  ['abs', Math.abs],
  ['round', roundHalfAway],
  ['floor', (x) => wholeNear(x) ?? Math.floor(x)],
  ['ceil', (x) => wholeNear(x) ?? Math.ceil(x)],
  ['ln', Math.log],
]);

function compileCall(name: string, args: readonly Evaluate[]): Evaluate {
  const [a = noValue, b = noValue, c = noValue, d = noValue] = args;
  const simple = ONE_ARGUMENT.get(name);
  if (simple !== undefined) return (lets) => simple(a(lets));
  switch (name) {
    case 'atan2':
      return (lets) => Math.atan2(a(lets), b(lets));
    case 'hypot':
      return args.slice(1).reduce<Evaluate>(
        (sum, next) => (lets) => Math.hypot(sum(lets), next(lets)),
        (lets) => Math.abs(a(lets)),
      );
    case 'min':
      return args.slice(1).reduce<Evaluate>((least, next) => (lets) => Math.min(least(lets), next(lets)), a);
    case 'max':
      return args.slice(1).reduce<Evaluate>((most, next) => (lets) => Math.max(most(lets), next(lets)), a);
    case 'whereAbove':
      return (lets) => {
        const left = a(lets);
        const right = b(lets);
        return left > right ? c(lets) : left < right ? d(lets) : left === right ? (args[4] ?? noValue)(lets) : NaN;
      };
    default:
      return noValue;
  }
}
