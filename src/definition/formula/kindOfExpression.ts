/**
 * What kind of quantity a checked expression is, found again from the expression alone.
 */
import { compile } from './compile.ts';
import type { Expression } from './formula.ts';
import { FUNCTIONS } from './functions.ts';
import { PLAIN, commonKind, divideKinds, isPlain, kindOf, multiplyKinds, powerOfKind } from './kind.ts';
import type { Kind } from './kind.ts';

/** @param lets kinds by index. @returns undefined for a condition */
export function kindOfExpression(expression: Expression, lets: readonly Kind[]): Kind | undefined {
  const ask = (part: Expression | undefined): Kind | undefined => (part === undefined ? undefined : kindOfExpression(part, lets));
  switch (expression.kind) {
    case 'number':
      return expression.dimension ?? PLAIN;
    case 'let':
      return lets[expression.index];
    case 'column':
      return kindOf(expression.dimension);
    case 'unary':
      return expression.operator === 'not' ? undefined : ask(expression.operand);
    case 'binary':
      return kindOfBinary(expression, ask);
    case 'call': {
      const rule = FUNCTIONS.get(expression.name)?.rule;
      if (rule === 'number-to-angle' || rule === 'same-to-angle') return { ...PLAIN, angle: 1 };
      if (rule === 'angle-to-number' || rule === 'number' || rule === 'where') return PLAIN;
      if (rule === 'at') return ask(expression.arguments[1]);
      const of = ask(expression.arguments.find((argument) => !isBareZero(argument)) ?? expression.arguments[0]);
      return rule === 'root' && of !== undefined ? powerOfKind(of, 1 / 2) : of;
    }
  }
}

function kindOfBinary(expression: Expression & { readonly kind: 'binary' }, ask: (part: Expression) => Kind | undefined): Kind | undefined {
  const { operator, left, right } = expression;
  switch (operator) {
    case '+':
    case '-': {
      const a = ask(left);
      const b = ask(right);
      if (isBareZero(left)) return b;
      return a === undefined || b === undefined || isBareZero(right) ? a : (commonKind(a, b) ?? a);
    }
    case '*':
    case '/': {
      const a = ask(left);
      const b = ask(right);
      if (a === undefined || b === undefined) return undefined;
      return operator === '*' ? multiplyKinds(a, b) : divideKinds(a, b);
    }
    case '^': {
      const base = ask(left);
      if (base === undefined || isPlain(base)) return base;
      return powerOfKind(base, constantValue(right));
    }
    default:
      return undefined;
  }
}

function isBareZero(expression: Expression): boolean {
  if (expression.kind === 'unary') return isBareZero(expression.operand);
  return expression.kind === 'number' && expression.value === 0 && expression.dimension === undefined;
}

/** NaN where the value is not the same for every file. */
export function constantValue(expression: Expression): number {
  return dependsOnNames(expression) ? NaN : compile(expression)(NO_LETS);
}

const NO_LETS = new Float64Array(0);

function dependsOnNames(expression: Expression): boolean {
  switch (expression.kind) {
    case 'number':
      return false;
    case 'let':
    case 'column':
      return true;
    case 'unary':
      return dependsOnNames(expression.operand);
    case 'binary':
      return dependsOnNames(expression.left) || dependsOnNames(expression.right);
    case 'call':
      return expression.arguments.some(dependsOnNames);
  }
}
