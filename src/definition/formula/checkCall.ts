/**
 * Dimension rules of the functions.
 */
import type { Span } from '../span.ts';
import { nearestWord } from '../names.ts';
import type { Fault } from '../quantity/fault.ts';
import { replaceFault } from '../quantity/fault.ts';
import { asKind, checkDimensions, commonOf, describeChecked, dimensionFault, isQuantity, unknownPart, written } from './checkDimensions.ts';
import type { CheckContext, Checked, CheckedKind } from './checkDimensions.ts';
import type { Expression } from './formula.ts';
import { FUNCTIONS } from './functions.ts';
import { RELATIVE_TOLERANCE } from './compare.ts';
import { constantValue } from './kindOfExpression.ts';
import type { FormulaFunction } from './functions.ts';
import { PLAIN, isPlain, kindFits, kindOf, powerOfKind } from './kind.ts';
import type { Syntax } from './parse.ts';

/** Settles the kind of a function call; `unknown` where it or an argument is at fault, which the context then holds. */
export function checkCall(syntax: Syntax & { readonly kind: 'call' }, span: Span, context: CheckContext): Checked {
  const name = syntax.name.text;
  const rule = FUNCTIONS.get(name);
  const refused = rule === undefined ? unknownFunction(syntax, context) : callFault(syntax, rule, context);
  if (refused !== undefined) context.faults.push(refused);
  const operands = syntax.arguments.map((argument) => checkDimensions(argument, context));
  if (rule === undefined || refused !== undefined) return unknownPart(syntax, span);
  const kind = kindOfCall(syntax, rule, operands, context);
  if (kind === undefined) return unknownPart(syntax, span);
  const expression: Expression = { kind: 'call', name, arguments: operands.map((operand) => operand.expression), span };
  return { expression, kind, syntax };
}

function unknownFunction(syntax: Syntax & { readonly kind: 'call' }, context: CheckContext): Fault {
  const { name } = syntax;
  const where = { start: name.start, end: name.end };
  const message = `\`${name.text}\` is not a function of formulas`;
  const candidates = [...FUNCTIONS].filter(([, rule]) => context.columns !== undefined || !rule.requireOnly).map(([word]) => word);
  const nearest = nearestWord(name.text, candidates);
  if (nearest !== undefined) return replaceFault('unknown-name', where, message, nearest);
  return { code: 'formula-not-allowed', ...where, message, cure: `Functions are ${candidates.join(', ')}` };
}

function callFault(syntax: Syntax & { readonly kind: 'call' }, rule: FormulaFunction, context: CheckContext): Fault | undefined {
  const { name } = syntax;
  if (rule.requireOnly && context.columns === undefined) {
    const message = `\`${name.text}\` speaks of the travel and is used in \`require\` only`;
    return { code: 'formula-not-allowed', start: name.start, end: name.end, message, cure: 'Use values of `let` here' };
  }
  const count = syntax.arguments.length;
  if (count >= rule.least && count <= rule.most) return undefined;
  const wanted = rule.least === rule.most ? `${rule.least}` : `${rule.least} or more`;
  const message = `\`${name.text}\` takes ${wanted} argument${wanted === '1' ? '' : 's'}, not ${count}`;
  return { code: 'formula-syntax', start: syntax.start, end: syntax.end, message, cure: `${name.text}: ${rule.summary}` };
}

/** Undefined where a part is at fault. */
function kindOfCall(
  syntax: Syntax & { readonly kind: 'call' },
  rule: FormulaFunction,
  operands: readonly Checked[],
  context: CheckContext,
): CheckedKind | undefined {
  const name = syntax.name.text;
  if (rule.rule === 'at') return kindOfAt(operands, context);
  if (rule.rule === 'where') return kindOfWhere(operands, context);
  if (operands.map((operand) => isQuantity(operand, context)).includes(false)) return undefined;
  const [first] = operands;
  if (first === undefined) return undefined;
  const kind = asKind(first.kind);
  if (kind === undefined) return undefined;
  switch (rule.rule) {
    case 'angle-to-number':
      if (first.kind === 'zero' || kindFits(kind, 'angle')) return PLAIN;
      return report(context, notAnAngle(name, first, context));
    case 'number-to-angle':
      if (isPlain(kind)) return kindOf('angle');
      return report(context, notPlain(name, first, 'Divide it by a quantity of its own kind', context));
    case 'number': {
      if (isPlain(kind)) return first.kind;
      const cure = `What a whole figure is depends on the unit: write for instance \`${name}(x / 1 mm) * 1 mm\``;
      return report(context, notPlain(name, first, cure, context));
    }
    case 'root':
      return powerOfKind(kind, 1 / 2);
    case 'same-to-angle':
      return commonOf(operands, `\`${name}\` takes two of one kind`, context) === 'unknown' ? undefined : kindOf('angle');
    case 'same': {
      if (
        context.columns !== undefined &&
        operands.length === 1 &&
        (name === 'min' || name === 'max') &&
        first.expression.kind !== 'column'
      ) {
        const message = `\`${name}\` of one argument goes over the travel and takes one column, not \`${written(context, first.syntax)}\``;
        const cure = `Write it with a column such as \`${name}(shaft.opening)\`, or with several arguments`;
        return report(context, { code: 'formula-not-allowed', start: first.syntax.start, end: first.syntax.end, message, cure });
      }
      const common = commonOf(operands, `\`${name}\` takes arguments of one kind`, context);
      return common === 'unknown' ? undefined : common;
    }
  }
}

function report(context: CheckContext, fault: Fault): undefined {
  context.faults.push(fault);
  return undefined;
}

function notAnAngle(name: string, operand: Checked, context: CheckContext): Fault {
  const quoted = written(context, operand.syntax);
  const message = `\`${name}\` takes an angle, and \`${quoted}\` is ${describeChecked(operand.kind)}`;
  const kind = asKind(operand.kind);
  if (kind === undefined || !isPlain(kind)) return dimensionFault(operand.syntax, message, 'Give it an angle');
  const figure = operand.syntax.kind === 'unary' ? operand.syntax.operand : operand.syntax;
  const cure =
    figure.kind === 'figure' && figure.token.unit === undefined
      ? `Write \`${quoted} deg\``
      : `Write \`(${quoted}) * 1 deg\`, or \`* 1 rad\``;
  // Degrees are the likelier meaning but not the certain one, so nothing is replaced unasked.
  return { code: 'missing-unit', start: operand.syntax.start, end: operand.syntax.end, message, cure };
}

function notPlain(name: string, operand: Checked, cure: string, context: CheckContext): Fault {
  const message = `\`${name}\` takes a plain number, and \`${written(context, operand.syntax)}\` is ${describeChecked(operand.kind)}`;
  return dimensionFault(operand.syntax, message, cure);
}

function kindOfAt(operands: readonly Checked[], context: CheckContext): CheckedKind | undefined {
  const [position, value] = operands;
  if (position === undefined || value === undefined || !isQuantity(position, context) || value.kind === 'unknown') return undefined;
  const kind = asKind(position.kind);
  if (kind === undefined) return undefined;
  if (!isPlain(kind)) {
    const message = `\`at\` takes a pedal position, and \`${written(context, position.syntax)}\` is ${describeChecked(position.kind)}`;
    return report(context, dimensionFault(position.syntax, message, 'Write a share of the travel, such as `25 %`'));
  }
  const place = constantValue(position.expression);
  if (place < 0 || place > 1 + RELATIVE_TOLERANCE) {
    const message = `\`${written(context, position.syntax)}\` is beyond the pedal's travel, which goes from 0 to 1 or 100 %`;
    const cure =
      position.syntax.kind === 'figure' && position.syntax.token.unit === undefined && place <= 100
        ? `Write \`${written(context, position.syntax)} %\``
        : 'Write a position from 0 to 100 %';
    return report(context, { code: 'out-of-range', start: position.syntax.start, end: position.syntax.end, message, cure });
  }
  return value.kind;
}

function kindOfWhere(operands: readonly Checked[], context: CheckContext): CheckedKind | undefined {
  const [condition] = operands;
  if (condition === undefined || condition.kind === 'unknown') return undefined;
  if (condition.kind === 'condition') return PLAIN;
  const message = `\`where\` takes a condition, and \`${written(context, condition.syntax)}\` is ${describeChecked(condition.kind)}`;
  return report(context, dimensionFault(condition.syntax, message, 'Write a comparison, such as `where(shaft.opening >= 10 deg)`'));
}
