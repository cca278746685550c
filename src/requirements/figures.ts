/** What kind of figure the two sides of a comparison are, for showing them. */
import type { Expression } from '../definition/formula/formula.ts';
import { ENERGY, PLAIN, baseUnits, commonKind, dimensionOfKind, isPlain, type Kind } from '../definition/formula/kind.ts';
import { kindOfExpression } from '../definition/formula/kindOfExpression.ts';
import type { ComparedFigure } from './requirement.ts';
import type { Sheet } from './sheet.ts';

/** @param lets kinds by index. @returns makes a figure of an SI value in the unit of the comparison */
export function figuresOf(left: Expression, right: Expression, lets: readonly Kind[], sheet: Sheet): (value: number) => ComparedFigure {
  const kind = sharedKind(kindOfExpression(left, lets) ?? PLAIN, kindOfExpression(right, lets) ?? PLAIN);
  const dimension = dimensionOfKind(kind);
  if (dimension === undefined) {
    const unit = commonKind(kind, ENERGY) === undefined ? baseUnits(kind) : 'J';
    return (value) => ({ value, unit });
  }
  const percent = dimension === 'number' && (isShare(left, sheet) || isShare(right, sheet));
  return (value) => ({ value, dimension, ...(percent && { percent }) });
}

/** The two are of one kind, but for a bare 0, which is 0 of anything. */
function sharedKind(left: Kind, right: Kind): Kind {
  return commonKind(left, right) ?? (isPlain(left) ? right : left);
}

/** Whether a plain number is meant in percent: written so, a percent column, a pedal position, or a sum of such. */
function isShare(expression: Expression, sheet: Sheet): boolean {
  const ask = (part: Expression): boolean => isShare(part, sheet);
  switch (expression.kind) {
    case 'number':
      // Of the plain numbers only percents have a unit.
      return expression.dimension !== undefined;
    case 'let':
      return false;
    case 'column':
      return sheet.column(`${expression.owner}.${expression.column}`)?.percent === true;
    case 'unary':
      return ask(expression.operand);
    case 'binary':
      return (expression.operator === '+' || expression.operator === '-') && (ask(expression.left) || ask(expression.right));
    case 'call': {
      const [one, two] = expression.arguments;
      switch (expression.name) {
        case 'where':
          return true;
        case 'at':
          return two !== undefined && ask(two);
        case 'abs':
          return one !== undefined && ask(one);
        case 'min':
        case 'max':
          return expression.arguments.some(ask);
        default:
          return false;
      }
    }
  }
}
