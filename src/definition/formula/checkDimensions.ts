/**
 * Syntax tree -> checked expression tree: resolves names, converts figures to SI, and settles once what kind of
 * quantity every part is, so that nothing needs checking when it is computed.
 */
import type { Fault, Origin } from '../quantity/fault.ts';
import { placeInFile, replaceFault } from '../quantity/fault.ts';
import { UNITS, toSi } from '../quantity/units.ts';
import { nearestWord } from '../names.ts';
import type { Span } from '../span.ts';
import { checkCall } from './checkCall.ts';
import { comparisonFloor } from './compare.ts';
import { constantValue } from './kindOfExpression.ts';
import type { Expression } from './formula.ts';
import { CONSTANTS, FOREIGN_CONSTANTS, FUNCTIONS } from './functions.ts';
import { PLAIN, commonKind, describeKind, divideKinds, isPlain, kindOf, multiplyKinds, powerOfKind } from './kind.ts';
import type { Kind } from './kind.ts';
import type { Syntax } from './parse.ts';
import { indexOfLet } from './scope.ts';
import type { RequirementScope, Scope } from './scope.ts';

/** `zero`: a bare 0, which is 0 of anything. `unknown`: what follows from a part that is at fault already. */
export type CheckedKind = Kind | 'zero' | 'condition' | 'unknown';

/** A part of a formula whose kind is settled. */
export interface Checked {
  readonly expression: Expression;
  readonly kind: CheckedKind;
  /** Place in the formula's text. */
  readonly syntax: Syntax;
}

/** The formula that is checked, and where its faults are gathered. */
export interface CheckContext {
  readonly text: string;
  readonly origin: Origin;
  readonly scope: Scope;
  /** Present in `require` only. */
  readonly columns?: RequirementScope;
  readonly faults: Fault[];
}

/** Settles the kind of a part and of all parts within it; faults go to the context. */
export function checkDimensions(syntax: Syntax, context: CheckContext): Checked {
  const span = placeInFile(context.origin, syntax);
  switch (syntax.kind) {
    case 'figure': {
      const { value, unit } = syntax.token;
      if (unit === undefined) return { expression: { kind: 'number', value, span }, kind: value === 0 ? 'zero' : PLAIN, syntax };
      return { expression: { kind: 'number', value: toSi(value, unit), dimension: unit.kind, span }, kind: unit.kind, syntax };
    }
    case 'name':
      return checkName(syntax, span, context);
    case 'column':
      return checkColumn(syntax, span, context);
    case 'unary':
      return checkUnary(syntax, span, context);
    case 'binary':
      return checkBinary(syntax, span, context);
    case 'call':
      return checkCall(syntax, span, context);
  }
}

/** Where the kind of something is known and is a quantity. */
export function asKind(kind: CheckedKind): Kind | undefined {
  if (kind === 'zero') return PLAIN;
  return typeof kind === 'string' ? undefined : kind;
}

/** With its article, for messages. */
export function describeChecked(kind: CheckedKind): string {
  if (kind === 'condition') return 'a condition (yes or no)';
  return describeKind(asKind(kind) ?? PLAIN);
}

/** A part as it stands in the text, cut where it is long. */
export function written(context: CheckContext, syntax: Syntax): string {
  const text = context.text.slice(syntax.start, syntax.end);
  return text.length > LONGEST_QUOTE ? `${text.slice(0, LONGEST_QUOTE - 1)}…` : text;
}

const LONGEST_QUOTE = 40;

/** A `formula-dimension` fault of a part. */
export function dimensionFault(syntax: Syntax, message: string, cure: string): Fault {
  return { code: 'formula-dimension', start: syntax.start, end: syntax.end, message, cure };
}

/** Stands for a part that is at fault: whatever contains it is not complained of again. */
export function unknownPart(syntax: Syntax, span: Span): Checked {
  return { expression: { kind: 'number', value: NaN, span }, kind: 'unknown', syntax };
}

/** Reports a condition where a quantity is needed. @returns whether it is fit to compute with */
export function isQuantity(operand: Checked, context: CheckContext): boolean {
  if (operand.kind !== 'condition') return operand.kind !== 'unknown';
  const quoted = written(context, operand.syntax);
  context.faults.push(
    dimensionFault(operand.syntax, `\`${quoted}\` is a condition (yes or no), not a quantity`, 'Use it with `and`, `or`, `not` only'),
  );
  return false;
}

function isCondition(operand: Checked, operator: string, context: CheckContext): boolean {
  if (operand.kind === 'condition' || operand.kind === 'unknown') return operand.kind === 'condition';
  const message = `\`${operator}\` joins conditions, and \`${written(context, operand.syntax)}\` is ${describeChecked(operand.kind)}`;
  const cure =
    operator === 'not' ? 'Put the whole condition in parentheses: `not (a > b)`' : 'Write a comparison on each side, such as `a > b`';
  context.faults.push(dimensionFault(operand.syntax, message, cure));
  return false;
}

/** Kind of a sum of the parts; reports the first that does not go with those before it. */
export function commonOf(parts: readonly Checked[], what: string, context: CheckContext): CheckedKind {
  let common: CheckedKind = 'zero';
  let first = parts[0];
  for (const part of parts) {
    if (part.kind === 'unknown' || part.kind === 'condition') return 'unknown';
    if (part.kind === 'zero') continue;
    if (common === 'zero') {
      common = part.kind;
      first = part;
      continue;
    }
    const both: Kind | undefined = typeof common === 'string' ? undefined : commonKind(common, part.kind);
    if (both === undefined) {
      if (first !== undefined) context.faults.push(mismatch(first, part, what, context));
      return 'unknown';
    }
    common = both;
  }
  return common;
}

function mismatch(first: Checked, second: Checked, what: string, context: CheckContext): Fault {
  const plain = [first, second].find((part) => part.syntax.kind === 'figure' && part.syntax.token.unit === undefined);
  const at = plain ?? second;
  const other = at === second ? first : second;
  const message = `${what}: \`${written(context, first.syntax)}\` is ${describeChecked(first.kind)}, \`${written(context, second.syntax)}\` is ${describeChecked(second.kind)}`;
  const cure =
    plain === undefined
      ? 'Both must be the same kind of quantity'
      : `Write the unit after \`${written(context, at.syntax)}\`, to make it ${describeChecked(other.kind)}`;
  return dimensionFault(at.syntax, message, cure);
}

function checkName(syntax: Syntax & { readonly kind: 'name' }, span: Span, context: CheckContext): Checked {
  const { text: name } = syntax.token;
  const { scope } = context;
  const constant = CONSTANTS.get(name);
  if (constant !== undefined) return { expression: { kind: 'number', value: constant, span }, kind: PLAIN, syntax };
  const index = indexOfLet(scope.lets, name) ?? -1;
  const found = scope.lets[index];
  if (found !== undefined) return { expression: { kind: 'let', index, name, span }, kind: found.kind, syntax };
  if (scope.broken?.has(name) === true) return unknownPart(syntax, span);
  context.faults.push(unknownName(syntax, name, context));
  return unknownPart(syntax, span);
}

function unknownName(where: Span, name: string, context: CheckContext): Fault {
  const { scope, columns, text } = context;
  const stretch = { start: where.start, end: where.end };
  if (scope.later?.has(name) === true) {
    const cure = `Move \`${name}\` above, in \`let\``;
    return { code: 'unknown-name', ...stretch, message: `\`${name}\` is defined further down; a \`let\` may use earlier ones only`, cure };
  }
  if (FUNCTIONS.has(name)) {
    return {
      code: 'formula-syntax',
      ...stretch,
      message: `\`${name}\` is a function and needs its arguments`,
      cure: `Write \`${name}(…)\``,
    };
  }
  if (FOREIGN_CONSTANTS.has(name)) {
    return {
      code: 'formula-not-allowed',
      ...stretch,
      message: `\`${name}\` is not a constant of formulas: \`pi\` is the only one`,
      cure: 'Write the figure',
    };
  }
  if (columns?.owners.includes(name) === true) {
    const example = columns.columnsOf(name)[0];
    const cure = example === undefined ? `\`${name}\` has no columns` : `Write one of its columns, such as \`${name}.${example}\``;
    return { code: 'unknown-name', ...stretch, message: `\`${name}\` is a part, not a value`, cure };
  }
  const message = `\`${name}\` is not a value of \`let\``;
  // `2 N*mmm`: after a unit, a unit was meant.
  if (/[A-Za-z°]\s*[*/·]\s*$/u.test(text.slice(0, where.start))) {
    const unit = nearestWord(name, UNITS.keys());
    if (unit !== undefined && name.length > 1)
      return replaceFault('unknown-unit', stretch, `\`${name}\` is neither a unit nor a value of \`let\``, unit);
  }
  const nearest = nearestWord(name, wordsOf(scope, columns));
  if (nearest !== undefined) return replaceFault('unknown-name', stretch, message, nearest);
  const known = scope.lets.slice(0, NAMES_SHOWN).map((entry) => entry.name);
  const cure = known.length === 0 ? `Define it in \`let\`` : `Define it in \`let\`, or use one of ${known.join(', ')}`;
  return { code: 'unknown-name', ...stretch, message, cure };
}

const NAMES_SHOWN = 6;

/** Everything that a name may have been meant to be, one by one: a list of it for every wrong name would take long. */
function* wordsOf({ lets, broken }: Scope, columns: RequirementScope | undefined): Iterable<string> {
  for (const { name } of lets) yield name;
  yield* broken ?? [];
  yield* CONSTANTS.keys();
  yield* columns?.owners ?? [];
}

function checkColumn(syntax: Syntax & { readonly kind: 'column' }, span: Span, context: CheckContext): Checked {
  const { owner, column } = syntax.token;
  const { columns } = context;
  if (columns === undefined) {
    const message = `\`${owner}.${column}\` is a result; results are used in \`require\` only`;
    const cure = 'Use values of `let` here';
    context.faults.push({ code: 'formula-not-allowed', start: syntax.start, end: syntax.end, message, cure });
    return unknownPart(syntax, span);
  }
  const dimension = columns.columnDimension(owner, column);
  if (dimension === 'unreadable') return unknownPart(syntax, span);
  if (dimension !== undefined) return { expression: { kind: 'column', owner, column, dimension, span }, kind: kindOf(dimension), syntax };
  const known = columns.columnsOf(owner);
  const ownerEnd = syntax.start + owner.length;
  if (known.length === 0) {
    const where = { start: syntax.start, end: ownerEnd };
    const nearest = nearestWord(owner, columns.owners);
    const message = `No part is called \`${owner}\``;
    context.faults.push(
      nearest === undefined
        ? { code: 'unknown-name', ...where, message, cure: `Parts with columns are ${columns.owners.slice(0, 8).join(', ')}` }
        : replaceFault('unknown-name', where, message, nearest),
    );
  } else {
    const where = { start: ownerEnd + 1, end: ownerEnd + 1 + column.length };
    const nearest = nearestWord(column, known);
    const message = `\`${owner}\` has no column \`${column}\``;
    context.faults.push(
      nearest === undefined
        ? { code: 'unknown-name', ...where, message, cure: `Its columns are ${known.join(', ')}` }
        : replaceFault('unknown-name', where, message, nearest),
    );
  }
  return unknownPart(syntax, span);
}

function checkUnary(syntax: Syntax & { readonly kind: 'unary' }, span: Span, context: CheckContext): Checked {
  const { operator } = syntax;
  const operand = checkDimensions(syntax.operand, context);
  const fit = operator === 'not' ? isCondition(operand, 'not', context) : isQuantity(operand, context);
  if (!fit) return unknownPart(syntax, span);
  return { expression: { kind: 'unary', operator, operand: operand.expression, span }, kind: operand.kind, syntax };
}

function checkBinary(syntax: Syntax & { readonly kind: 'binary' }, span: Span, context: CheckContext): Checked {
  const { operator } = syntax;
  const left = checkDimensions(syntax.left, context);
  const right = checkDimensions(syntax.right, context);
  const joins = operator === 'and' || operator === 'or';
  const fits = [left, right].map((side) => (joins ? isCondition(side, operator, context) : isQuantity(side, context)));
  if (fits.includes(false)) return unknownPart(syntax, span);
  const make = (kind: CheckedKind, floor?: number): Checked => ({
    expression: { kind: 'binary', operator, left: left.expression, right: right.expression, ...(floor !== undefined && { floor }), span },
    kind,
    syntax,
  });
  const a = asKind(left.kind);
  const b = asKind(right.kind);
  switch (operator) {
    case 'and':
    case 'or':
      return make('condition');
    case '+':
    case '-': {
      const common = commonOf([left, right], operator === '+' ? 'These cannot be added' : 'These cannot be subtracted', context);
      return common === 'unknown' ? unknownPart(syntax, span) : make(common);
    }
    case '*':
      return a === undefined || b === undefined ? unknownPart(syntax, span) : make(multiplyKinds(a, b));
    case '/':
      return a === undefined || b === undefined ? unknownPart(syntax, span) : make(divideKinds(a, b));
    case '^': {
      const power = checkPower(left, right, context);
      return power === undefined ? unknownPart(syntax, span) : make(power);
    }
    default: {
      const common = commonOf([left, right], 'These cannot be compared', context);
      return common === 'unknown' ? unknownPart(syntax, span) : make('condition', comparisonFloor(asKind(common) ?? PLAIN));
    }
  }
}

function checkPower(base: Checked, exponent: Checked, context: CheckContext): Kind | undefined {
  const exponentKind = asKind(exponent.kind);
  const baseKind = asKind(base.kind);
  if (exponentKind === undefined || baseKind === undefined) return undefined;
  if (!isPlain(exponentKind)) {
    const message = `The exponent \`${written(context, exponent.syntax)}\` is ${describeChecked(exponent.kind)}`;
    context.faults.push(dimensionFault(exponent.syntax, message, 'An exponent is a plain number'));
    return undefined;
  }
  if (isPlain(baseKind)) return PLAIN;
  const value = constantValue(exponent.expression);
  if (Number.isFinite(value) && Number.isInteger(2 * value)) return powerOfKind(baseKind, value);
  const message = `\`${written(context, base.syntax)}\` is ${describeChecked(base.kind)}, which cannot be raised to \`${written(context, exponent.syntax)}\``;
  const cure = 'A quantity with a unit is raised to whole or half figures only, such as `2` or `0.5`';
  context.faults.push(dimensionFault(exponent.syntax, message, cure));
  return undefined;
}
