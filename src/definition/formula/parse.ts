/**
 * Text of a formula -> syntax tree with places. The grammar is mathjs's: each figure with its unit, each name and
 * each column is put before mathjs's parser as one symbol, and the tree that comes back is matched with the tokens,
 * which know where they stand. What the language does not have is refused before or while doing so.
 */
import type { Vocabulary } from './scope.ts';
import { create, parseDependencies } from 'mathjs/number';
import type { Fault } from '../quantity/fault.ts';
import type { Span } from '../span.ts';
import type { BinaryOperator } from './formula.ts';
import { MOST_FAULTS, lex } from './lex.ts';
import { endsValue, isPrefix, structureFaults } from './structure.ts';
import type { ColumnToken, FigureToken, NameToken, Token } from './lex.ts';

/** Characters. */
export const LONGEST_FORMULA = 500;
/** Levels of parentheses, prefixes and powers within each other. */
export const DEEPEST_FORMULA = 50;

/** Spans count from the start of the text; a parenthesised part includes its parentheses. */
export type Syntax = Span &
  (
    | { readonly kind: 'figure'; readonly token: FigureToken }
    | { readonly kind: 'name'; readonly token: NameToken }
    | { readonly kind: 'column'; readonly token: ColumnToken }
    | { readonly kind: 'unary'; readonly operator: '-' | '+' | 'not'; readonly operand: Syntax }
    | { readonly kind: 'binary'; readonly operator: BinaryOperator; readonly left: Syntax; readonly right: Syntax }
    | { readonly kind: 'call'; readonly name: NameToken; readonly arguments: readonly Syntax[] }
  );

/** A formula taken apart, or what is wrong with it. */
export interface Parsed {
  /** Absent where there are faults. */
  readonly syntax?: Syntax;
  readonly faults: readonly Fault[];
}

/** @param names words that are names of the file */
export function parseFormula(text: string, names: Vocabulary): Parsed {
  const start = text.length - text.trimStart().length;
  const whole = { start: Math.min(start, text.length), end: Math.max(start, text.trimEnd().length) };
  const length = whole.end - whole.start;
  if (length === 0) return one({ code: 'formula-syntax', ...whole, message: 'There is no formula', cure: 'Write an expression' });
  if (length > LONGEST_FORMULA) {
    const cure = `Split it: name its parts in \`let\``;
    return one({
      code: 'formula-too-long',
      ...whole,
      message: `The formula has ${length} characters; ${LONGEST_FORMULA} are the most`,
      cure,
    });
  }
  const { tokens, faults } = lex(text, names);
  const deep = tooDeep(tokens);
  if (deep !== undefined) return one(deep);
  const found = [...faults, ...structureFaults(text, tokens, names)].sort((a, b) => a.start - b.start);
  if (found.length > 0) return { faults: found.slice(0, MOST_FAULTS) };
  return build(text, tokens);
}

function one(fault: Fault): Parsed {
  return { faults: [fault] };
}

function deepFault(where: Span): Fault {
  const message = `The formula is nested more than ${DEEPEST_FORMULA} deep`;
  return { code: 'formula-too-long', start: where.start, end: where.end, message, cure: 'Split it: name its parts in `let`' };
}

/** Before anything recursive sees the text: its parentheses, and in each its running prefix operators and powers. */
function tooDeep(tokens: readonly Token[]): Fault | undefined {
  const chains = [0];
  for (const [i, token] of tokens.entries()) {
    if (token.type !== 'sign') continue;
    const top = chains.length - 1;
    if (token.text === '(') chains.push(0);
    else if (token.text === ')') {
      if (top > 0) chains.pop();
    } else if (token.text === '^' || isPrefix(tokens, i)) chains[top] = (chains[top] ?? 0) + 1;
    else chains[top] = 0;
    const depth = chains.reduce((sum, chain) => sum + chain, chains.length - 1);
    if (depth > DEEPEST_FORMULA) return deepFault(token);
  }
  return undefined;
}

/** mathjs's nodes, as far as they are looked at. */
interface Node {
  readonly type: string;
  readonly name?: unknown;
  readonly fn?: unknown;
  readonly op?: unknown;
  readonly args?: unknown;
  readonly content?: unknown;
  readonly params?: unknown;
  readonly conditionals?: unknown;
}

/** A part of the tree with the first and last token that it is made of. */
interface Part {
  readonly syntax: Syntax;
  readonly first: number;
  readonly last: number;
}

class Refusal extends Error {
  readonly fault: Fault;
  constructor(fault: Fault) {
    super(fault.message);
    this.fault = fault;
  }
}

let parser: ((expression: string) => unknown) | undefined;

/** mathjs's parser without the rest of mathjs, made when the first formula is met: a file of plain figures never pays for it. */
function parseExpression(source: string): unknown {
  parser ??= create({ ...parseDependencies }, {}).parse;
  return parser(source);
}

function build(text: string, tokens: readonly Token[]): Parsed {
  const starts: number[] = [];
  let source = '';
  tokens.forEach((token, i) => {
    starts.push(source.length);
    source += `${token.type === 'sign' ? token.text : `t${i}`} `;
  });
  try {
    return { syntax: convert(parseExpression(source), { text, tokens }).syntax, faults: [] };
  } catch (error) {
    if (error instanceof Refusal) return one(error.fault);
    return one(syntaxFault(text, tokens, starts, error));
  }
}

function syntaxFault(text: string, tokens: readonly Token[], starts: readonly number[], error: unknown): Fault {
  const character =
    typeof error === 'object' && error !== null && 'char' in error && typeof error.char === 'number' ? error.char - 1 : Infinity;
  let index = tokens.length;
  while (index > 0 && (starts[index - 1] ?? 0) >= character) index--;
  if ((starts[index] ?? Infinity) > character && index > 0) index--;
  const token = tokens[index];
  const last = tokens.at(-1);
  if (token === undefined || character >= (starts.at(-1) ?? 0) + 1) {
    const where = { start: last?.start ?? 0, end: last?.end ?? text.length };
    if (endsValue(last))
      return { code: 'formula-syntax', ...where, message: 'The formula cannot be read up to its end', cure: 'Check the operators' };
    const written = text.slice(where.start, where.end);
    return {
      code: 'formula-syntax',
      ...where,
      message: `Nothing follows \`${written}\``,
      cure: 'Write the missing value, or leave the operator out',
    };
  }
  const written = text.slice(token.start, token.end);
  return {
    code: 'formula-syntax',
    start: token.start,
    end: token.end,
    message: `A value is missing before \`${written}\``,
    cure: 'Write a number or a name there',
  };
}

interface Context {
  readonly text: string;
  readonly tokens: readonly Token[];
}

const BINARY: ReadonlyMap<string, BinaryOperator> = new Map<string, BinaryOperator>([
  ['add', '+'],
  ['subtract', '-'],
  ['multiply', '*'],
  ['divide', '/'],
  ['pow', '^'],
  ['smaller', '<'],
  ['smallerEq', '<='],
  ['larger', '>'],
  ['largerEq', '>='],
  ['equal', '=='],
  ['unequal', '!='],
  ['and', 'and'],
  ['or', 'or'],
]);
const UNARY: ReadonlyMap<string, '-' | '+' | 'not'> = new Map<string, '-' | '+' | 'not'>([
  ['unaryMinus', '-'],
  ['unaryPlus', '+'],
  ['not', 'not'],
]);

function convert(value: unknown, context: Context): Part {
  const node = value as Node;
  switch (node.type) {
    case 'SymbolNode':
      return leaf(node, context);
    case 'ParenthesisNode': {
      const inner = convert(node.content, context);
      return part(context, inner.first - 1, inner.last + 1, (span) => ({ ...inner.syntax, ...span }));
    }
    case 'OperatorNode':
      return operation(node, context);
    case 'RelationalNode':
      return chain(node, context);
    case 'FunctionNode':
      return call(node, context);
    default:
      throw refusal(context, 'This is not part of formulas');
  }
}

function refusal(context: Context, message: string): Refusal {
  return new Refusal({
    code: 'formula-not-allowed',
    start: 0,
    end: context.text.length,
    message,
    cure: 'Use numbers with units, names, parentheses, operators and functions only',
  });
}

function part(context: Context, first: number, last: number, make: (span: Span) => Syntax): Part {
  const start = context.tokens[first]?.start ?? 0;
  const end = context.tokens[last]?.end ?? context.text.length;
  return { syntax: make({ start, end }), first, last };
}

function tokenIndex(node: Node): number {
  return typeof node.name === 'string' ? Number(node.name.slice(1)) : -1;
}

function leaf(node: Node, context: Context): Part {
  const index = tokenIndex(node);
  const token = context.tokens[index];
  switch (token?.type) {
    case 'figure':
      return part(context, index, index, (span) => ({ kind: 'figure', token, ...span }));
    case 'name':
      return part(context, index, index, (span) => ({ kind: 'name', token, ...span }));
    case 'column':
      return part(context, index, index, (span) => ({ kind: 'column', token, ...span }));
    default:
      throw refusal(context, 'This is not part of formulas');
  }
}

function operation(node: Node, context: Context): Part {
  const operands = list(node.args);
  const name = typeof node.fn === 'string' ? node.fn : '';
  const prefix = UNARY.get(name);
  if (prefix !== undefined && operands.length === 1) {
    const operand = convert(operands[0], context);
    return part(context, operand.first - 1, operand.last, (span) => ({
      kind: 'unary',
      operator: prefix,
      operand: operand.syntax,
      ...span,
    }));
  }
  const operator = BINARY.get(name);
  if (operator === undefined || operands.length !== 2) throw refusal(context, 'This operator is not part of formulas');
  return binary(operator, convert(operands[0], context), convert(operands[1], context), context);
}

function binary(operator: BinaryOperator, left: Part, right: Part, context: Context): Part {
  return part(context, left.first, right.last, (span) => ({ kind: 'binary', operator, left: left.syntax, right: right.syntax, ...span }));
}

/** `a < b <= c` is `a < b and b <= c`. */
function chain(node: Node, context: Context): Part {
  const parts = list(node.params).map((operand) => convert(operand, context));
  // The middle stands in two comparisons. One that held comparisons itself would double with every level.
  const middle = parts.slice(1, -1).find((part) => holdsComparison(part.syntax));
  if (middle !== undefined) {
    const { start, end } = middle.syntax;
    const cure = 'Write two comparisons joined by `and`';
    throw new Refusal({
      code: 'formula-not-allowed',
      start,
      end,
      message: 'The middle of a chained comparison may not hold comparisons itself',
      cure,
    });
  }
  let whole: Part | undefined;
  list(node.conditionals).forEach((name, i) => {
    const operator = typeof name === 'string' ? BINARY.get(name) : undefined;
    const [left, right] = [parts[i], parts[i + 1]];
    if (operator === undefined || left === undefined || right === undefined)
      throw refusal(context, 'This comparison is not part of formulas');
    const comparison = binary(operator, left, right, context);
    whole = whole === undefined ? comparison : binary('and', whole, comparison, context);
  });
  if (whole === undefined) throw refusal(context, 'This comparison is not part of formulas');
  return whole;
}

function holdsComparison(syntax: Syntax): boolean {
  switch (syntax.kind) {
    case 'figure':
    case 'name':
    case 'column':
      return false;
    case 'unary':
      return holdsComparison(syntax.operand);
    case 'binary':
      return !'+-*/^'.includes(syntax.operator) || holdsComparison(syntax.left) || holdsComparison(syntax.right);
    case 'call':
      return syntax.arguments.some(holdsComparison);
  }
}

function call(node: Node, context: Context): Part {
  const index = tokenIndex(node.fn as Node);
  const name = context.tokens[index];
  if (name?.type !== 'name') throw refusal(context, 'Only functions are called');
  const operands = list(node.args).map((operand) => convert(operand, context));
  const last = (operands.at(-1)?.last ?? index + 1) + 1;
  return part(context, index, last, (span) => ({ kind: 'call', name, arguments: operands.map((operand) => operand.syntax), ...span }));
}

function list(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? (value as readonly unknown[]) : [];
}
