/**
 * Text of a formula -> syntax tree with places. The grammar is mathjs's: each figure with its unit, each name and
 * each column is put before mathjs's parser as one symbol, and the tree that comes back is matched with the tokens,
 * which know where they stand. What the language does not have is refused before or while doing so.
 */
import { parse as parseExpression } from 'mathjs/number';
import type { Fault } from '../quantity/fault.ts';
import { replaceFault } from '../quantity/fault.ts';
import type { Span } from '../span.ts';
import type { BinaryOperator } from './formula.ts';
import { lex } from './lex.ts';
import type { ColumnToken, FigureToken, NameToken, Token } from './lex.ts';

export const LONGEST_FORMULA = 500;
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

export interface Parsed {
  /** Absent where there are faults. */
  readonly syntax?: Syntax;
  readonly faults: readonly Fault[];
}

/** @param names words that are names of the file */
export function parseFormula(text: string, names: ReadonlySet<string>): Parsed {
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
  if (found.length > 0) return { faults: found };
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

function isPrefix(tokens: readonly Token[], index: number): boolean {
  const token = tokens[index];
  if (token?.type !== 'sign' || !(token.text === '+' || token.text === '-' || token.text === 'not')) return false;
  return token.text === 'not' || !endsValue(tokens[index - 1]);
}

function endsValue(token: Token | undefined): boolean {
  return token !== undefined && (token.type !== 'sign' || token.text === ')');
}

function startsValue(token: Token | undefined): boolean {
  return token !== undefined && (token.type !== 'sign' || token.text === '(' || token.text === 'not');
}

/** Faults of two neighbours, of parentheses and of commas, which mathjs would read as something else or place badly. */
function structureFaults(text: string, tokens: readonly Token[], names: ReadonlySet<string>): Fault[] {
  const faults: Fault[] = [];
  const open: { readonly token: Token; readonly call: boolean }[] = [];
  tokens.forEach((token, i) => {
    const before = tokens[i - 1];
    const callee = token.type === 'sign' && token.text === '(' && before?.type === 'name' && !names.has(before.text) ? before : undefined;
    if (endsValue(before) && startsValue(token) && before !== undefined && callee === undefined)
      faults.push(neighbours(text, before, token));
    if (token.type !== 'sign') {
      if (isBareFraction(tokens, i)) faults.push(bareFraction(text, tokens[i - 2], token));
      return;
    }
    if (token.text === '(') open.push({ token, call: callee !== undefined });
    if (token.text === ')' && open.pop() === undefined) faults.push(replaceFault('formula-syntax', token, 'This `)` closes nothing', ''));
    if (token.text === ',' && open.at(-1)?.call !== true) {
      faults.push({
        code: 'formula-syntax',
        start: token.start,
        end: token.end,
        message: 'A comma parts the arguments of a function and stands nowhere else',
        cure: 'Write a decimal point as `.`',
      });
    }
    if (token.text === '±') {
      const cure = 'Give the value a name in `let`, with its tolerance there';
      faults.push({ code: 'bad-tolerance', start: token.start, end: token.end, message: 'A formula has no tolerance of its own', cure });
    }
    const next = tokens[i + 1];
    if (
      token.text === '+' &&
      next?.type === 'sign' &&
      next.text === '-' &&
      next.start === token.end &&
      tokens.length === i + 3 &&
      i === 1
    ) {
      const cure = 'Write `-` for a difference; a tolerance stands at the value in `let`';
      faults.push({
        code: 'bad-tolerance',
        start: token.start,
        end: next.end,
        message: '`+-` is neither a tolerance nor clear arithmetic',
        cure,
      });
    }
  });
  for (const { token } of open)
    faults.push({
      code: 'formula-syntax',
      start: token.start,
      end: token.end,
      message: 'This `(` is not closed',
      cure: 'Write the missing `)`',
    });
  return faults;
}

function neighbours(text: string, before: Token, token: Token): Fault {
  const written = text.slice(token.start, token.end);
  if (before.type === 'figure' && before.unit?.text === '%') {
    const where = { start: before.unit.start, end: before.unit.end };
    const cure = 'Write an operator after `%`';
    return { code: 'formula-not-allowed', ...where, message: '`%` means a hundredth; a remainder is not part of formulas', cure };
  }
  if (before.type === 'name' && token.type === 'sign' && token.text === '(') {
    const where = { start: before.start, end: before.end };
    const edits = [{ start: before.end, end: token.end, text: ' * (' }];
    return {
      code: 'formula-not-allowed',
      ...where,
      message: `\`${before.text}\` is a value, not a function`,
      cure: `Write \`${before.text} * (…)\` for a product`,
      edits,
    };
  }
  const gap = { start: before.end, end: token.start };
  const first = text.slice(before.start, before.end);
  const message = `\`${first}\` and \`${written}\` stand side by side without an operator`;
  const cure = `Write \`${first} * ${written}${written === '(' ? '…)' : ''}\` for a product`;
  return { code: 'formula-not-allowed', start: token.start, end: token.end, message, cure, edits: [{ ...gap, text: ' * ' }] };
}

/** `1/2 inch`: by the rule of units 1 / (2 inch), by mathjs's and most people's (1/2) inch. */
function isBareFraction(tokens: readonly Token[], index: number): boolean {
  const [above, slash, below] = [tokens[index - 2], tokens[index - 1], tokens[index]];
  if (above?.type !== 'figure' || above.unit !== undefined || below?.type !== 'figure') return false;
  return slash?.type === 'sign' && slash.text === '/' && below.unit !== undefined && below.unit.text !== '%';
}

function bareFraction(text: string, above: Token | undefined, below: Token): Fault {
  const start = above?.start ?? below.start;
  const unit = below.type === 'figure' ? (below.unit?.text ?? '') : '';
  const top = text.slice(start, above?.end ?? start);
  const bottom = below.type === 'figure' ? text.slice(below.digits.start, below.digits.end) : '';
  const message = `\`${text.slice(start, below.end)}\` can be read two ways`;
  const cure = `Write \`(${top}/${bottom}) * 1 ${unit}\`, or \`${top} / (${bottom} ${unit})\``;
  return { code: 'formula-not-allowed', start, end: below.end, message, cure };
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

function build(text: string, tokens: readonly Token[]): Parsed {
  const starts: number[] = [];
  let source = '';
  tokens.forEach((token, i) => {
    starts.push(source.length);
    source += `${token.type === 'sign' ? token.text : `t${i}`} `;
  });
  try {
    const node: unknown = parseExpression(source);
    return { syntax: convert(node, { text, tokens }).syntax, faults: [] };
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
  return new Refusal({ code: 'formula-not-allowed', start: 0, end: context.text.length, message });
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
