/**
 * Symbolic derivative of an expression by one `let`, as an expression again.
 *
 * The usual rules; at kinks the one-sided derivative for a growing `let`: d|u| = |du| where u = 0,
 * d max(u, v) = max(du, dv) where u = v, d √(u² + v²) = √(du² + dv²) where both are 0; steps (`round`, `floor`,
 * `ceil`) count as flat. The result may call two functions that the language lacks:
 * `ln(x)`, and `whereAbove(u, v, x, y, z)`: x where u > v, y where u < v, z where they are equal.
 */
import type { Expression } from './formula.ts';

/** ∂expression/∂lets[index]. Conditions and columns have none and give 0. */
export function differentiate(expression: Expression, index: number): Expression {
  switch (expression.kind) {
    case 'number':
    case 'column':
      return number(0, expression);
    case 'let':
      return number(expression.index === index ? 1 : 0, expression);
    case 'unary': {
      const derivative = differentiate(expression.operand, index);
      return expression.operator === '-' ? negate(derivative) : derivative;
    }
    case 'binary':
      return ofBinary(expression, index);
    case 'call':
      return ofCall(expression, index);
  }
}

function ofBinary(expression: Expression & { readonly kind: 'binary' }, index: number): Expression {
  const { left: u, right: v } = expression;
  const du = differentiate(u, index);
  const dv = differentiate(v, index);
  switch (expression.operator) {
    case '+':
      return add(du, dv);
    case '-':
      return subtract(du, dv);
    case '*':
      return add(multiply(du, v), multiply(u, dv));
    case '/':
      return subtract(divide(du, v), multiply(divide(expression, v), dv));
    case '^':
      return ofPower(expression, u, v, du, dv);
    default:
      return number(0, expression);
  }
}

/** d uᵛ = v uᵛ⁻¹ du + uᵛ ln u dv. */
function ofPower(power: Expression, u: Expression, v: Expression, du: Expression, dv: Expression): Expression {
  const byBase = isNumber(du, 0) || isNumber(v, 0) ? number(0, power) : multiply(multiply(v, raise(u, subtract(v, number(1, v)))), du);
  // Powers of 0 stay 0, though the logarithm has no value there.
  const rise = multiply(multiply(power, call('ln', u)), dv);
  const byExponent = isNumber(dv, 0) ? number(0, power) : call('whereAbove', u, number(0, u), rise, rise, number(0, u));
  return add(byBase, byExponent);
}

function ofCall(expression: Expression & { readonly kind: 'call' }, index: number): Expression {
  const [u, v] = expression.arguments;
  if (u === undefined) return number(0, expression);
  const derivatives = expression.arguments.map((argument) => differentiate(argument, index));
  const [du = number(0, u), dv = number(0, u)] = derivatives;
  if (derivatives.every((derivative) => isNumber(derivative, 0))) return number(0, expression);
  const one = number(1, expression);
  switch (expression.name) {
    case 'sin':
      return multiply(call('cos', u), du);
    case 'cos':
      return negate(multiply(call('sin', u), du));
    case 'tan':
      return multiply(add(one, multiply(expression, expression)), du);
    case 'asin':
      return divide(du, call('sqrt', subtract(one, multiply(u, u))));
    case 'acos':
      return negate(divide(du, call('sqrt', subtract(one, multiply(u, u)))));
    case 'atan':
      return divide(du, add(one, multiply(u, u)));
    case 'atan2':
      return v === undefined ? number(0, expression) : ofAtan2(u, v, du, dv);
    case 'sqrt':
      return divide(du, multiply(number(2, u), expression));
    case 'abs':
      return call('whereAbove', u, number(0, u), du, negate(du), call('abs', du));
    case 'hypot':
      return ofHypot(expression, derivatives);
    case 'min':
    case 'max':
      return ofExtreme(expression.name, expression.arguments, derivatives);
    default:
      return number(0, expression);
  }
}

/** d atan2(y, x) = (x dy − y dx)/(x² + y²), both divided by the distance once so that small lengths do not underflow. */
function ofAtan2(y: Expression, x: Expression, dy: Expression, dx: Expression): Expression {
  const distance = call('hypot', x, y);
  return divide(subtract(multiply(divide(x, distance), dy), multiply(divide(y, distance), dx)), distance);
}

function ofHypot(hypot: Expression & { readonly kind: 'call' }, derivatives: readonly Expression[]): Expression {
  const terms = hypot.arguments.map((u, i) => multiply(divide(u, hypot), derivatives[i] ?? number(0, u)));
  const away = terms.reduce(add);
  return call('whereAbove', hypot, number(0, hypot), away, away, call('hypot', ...derivatives));
}

function ofExtreme(name: 'min' | 'max', operands: readonly Expression[], derivatives: readonly Expression[]): Expression {
  let value = operands[0];
  let derivative = derivatives[0];
  if (value === undefined || derivative === undefined) return zero(operands[0]);
  for (let i = 1; i < operands.length; i++) {
    const operand = operands[i];
    const next = derivatives[i];
    if (operand === undefined || next === undefined) break;
    const [above, below]: readonly [Expression, Expression] = name === 'max' ? [derivative, next] : [next, derivative];
    derivative = call('whereAbove', value, operand, above, below, call(name, derivative, next));
    value = call(name, value, operand);
  }
  return derivative;
}

const NOWHERE = { start: 0, end: 0 };

function zero(near: Expression | undefined): Expression {
  return { kind: 'number', value: 0, span: near?.span ?? NOWHERE };
}

function number(value: number, near: Expression): Expression {
  return { kind: 'number', value, span: near.span };
}

function isNumber(expression: Expression, value: number): boolean {
  return expression.kind === 'number' && expression.value === value;
}

function call(name: string, ...operands: readonly Expression[]): Expression {
  return { kind: 'call', name, arguments: operands, span: operands[0]?.span ?? NOWHERE };
}

function negate(operand: Expression): Expression {
  return operand.kind === 'number' ? number(-operand.value, operand) : { kind: 'unary', operator: '-', operand, span: operand.span };
}

function add(left: Expression, right: Expression): Expression {
  if (isNumber(left, 0)) return right;
  if (isNumber(right, 0)) return left;
  return binary('+', left, right);
}

function subtract(left: Expression, right: Expression): Expression {
  if (isNumber(right, 0)) return left;
  if (isNumber(left, 0)) return negate(right);
  if (left.kind === 'number' && right.kind === 'number') return number(left.value - right.value, left);
  return binary('-', left, right);
}

function multiply(left: Expression, right: Expression): Expression {
  if (isNumber(left, 0) || isNumber(right, 1)) return left;
  if (isNumber(right, 0) || isNumber(left, 1)) return right;
  return binary('*', left, right);
}

function divide(left: Expression, right: Expression): Expression {
  return isNumber(left, 0) || isNumber(right, 1) ? left : binary('/', left, right);
}

function raise(base: Expression, exponent: Expression): Expression {
  if (isNumber(exponent, 0)) return number(1, base);
  return isNumber(exponent, 1) ? base : binary('^', base, exponent);
}

function binary(operator: '+' | '-' | '*' | '/' | '^', left: Expression, right: Expression): Expression {
  return { kind: 'binary', operator, left, right, span: left.span };
}
