/**
 * Expression tree of a requirement -> closures over the pedal position.
 *
 * Whatever speaks of the travel (a column, `at`, `where`, `min` and `max` of one column) is worked out here; the arithmetic about it
 * is compiled as everywhere else, with those parts put in as if they were further `let` values. NaN is a value that there is not.
 * Conditions are true, false or undefined, joined by Kleene's three-valued logic: a part that cannot be decided matters only where
 * the outcome depends on it. `not` is carried down to the comparisons, so that each is told the way it is demanded.
 */
import { compile } from '../definition/formula/compile.ts';
import { holds } from '../definition/formula/compare.ts';
import type { Expression } from '../definition/formula/formula.ts';
import type { Span } from '../definition/span.ts';
import { firstHolding, type FirstHolding } from './firstHolding.ts';
import type { ComparisonOperator } from './requirement.ts';
import type { Sheet, SheetColumn } from './sheet.ts';

/** Undefined where it cannot be decided. */
export type Truth = boolean | undefined;

/** What stands at no pedal position: a column there has no value. */
export const NOWHERE = NaN;

export interface Value {
  readonly expression: Expression;
  /** Its outermost parts that speak of the travel. */
  readonly atoms: readonly Atom[];
  /** Whether it depends on the pedal position at which it is asked for. */
  readonly contextual: boolean;
  /** SI; NaN where it has none. @param travel pedal position, or `NOWHERE` */
  run(travel: number): number;
  /** The condition of a `where` in it that never holds, so that the value does not exist. */
  never(): Expression | undefined;
}

export type Atom = Pick<Value, 'run' | 'never' | 'contextual'> &
  (
    | { readonly kind: 'column'; readonly name: string; readonly column: SheetColumn | undefined }
    | { readonly kind: 'extreme'; readonly which: 'min' | 'max'; readonly name: string; readonly column: SheetColumn | undefined }
    | { readonly kind: 'at'; readonly position: Value; readonly inner: Value }
    | { readonly kind: 'where'; readonly condition: Condition; first(): FirstHolding }
  );

export type Condition = ComparisonNode | JoinedNode | AtNode;

interface Decided {
  readonly contextual: boolean;
  run(travel: number): Truth;
}

export interface ComparisonNode extends Decided {
  readonly kind: 'comparison';
  readonly span: Span;
  readonly operator: ComparisonOperator;
  readonly floor: number;
  readonly left: Value;
  readonly right: Value;
}

interface JoinedNode extends Decided {
  readonly kind: 'all' | 'any';
  readonly parts: readonly Condition[];
}

interface AtNode extends Decided {
  readonly kind: 'at';
  readonly position: Value;
  readonly inner: Condition;
}

export interface Evaluator {
  /** Undefined for what is no condition. */
  condition(expression: Expression): Condition | undefined;
}

/** @param lets SI value of every `let`, in file order */
export function createEvaluator(sheet: Sheet, lets: Float64Array): Evaluator {
  return { condition: (expression) => makeCondition(expression, false, { sheet, lets }) };
}

/** Holds a position to the travel; NaN where it lies beyond. */
export function withinTravel(position: number): number {
  if (!(position >= -SLOP && position <= 1 + SLOP)) return NaN;
  return Math.min(1, Math.max(0, position));
}

/** Of the travel; a position that was worked out may miss an end by rounding. */
const SLOP = 1e-9;

interface Workshop {
  readonly sheet: Sheet;
  readonly lets: Float64Array;
}

function makeCondition(expression: Expression, negated: boolean, shop: Workshop): Condition | undefined {
  if (expression.kind === 'unary') return expression.operator === 'not' ? makeCondition(expression.operand, !negated, shop) : undefined;
  if (expression.kind === 'call') return expression.name === 'at' ? conditionAt(expression, negated, shop) : undefined;
  if (expression.kind !== 'binary') return undefined;
  const { operator, left, right } = expression;
  if (operator === 'and' || operator === 'or') {
    const parts = [makeCondition(left, negated, shop), makeCondition(right, negated, shop)].filter((part) => part !== undefined);
    // By De Morgan's rules.
    return parts.length < 2 ? undefined : join((operator === 'and') === negated ? 'any' : 'all', parts);
  }
  return isComparison(operator)
    ? compare(expression, negated ? OPPOSITE[operator] : operator, makeValue(left, shop), makeValue(right, shop))
    : undefined;
}

const OPPOSITE: Readonly<Record<ComparisonOperator, ComparisonOperator>> = {
  '<': '>=',
  '<=': '>',
  '>': '<=',
  '>=': '<',
  '==': '!=',
  '!=': '==',
};

function isComparison(operator: string): operator is ComparisonOperator {
  return operator in OPPOSITE;
}

function compare(
  expression: Expression & { readonly kind: 'binary' },
  operator: ComparisonOperator,
  left: Value,
  right: Value,
): ComparisonNode {
  const { span, floor = 0 } = expression;
  const run = (travel: number): Truth => {
    const a = left.run(travel);
    const b = right.run(travel);
    if (!Number.isNaN(a) && !Number.isNaN(b)) return holds(operator, a, b, floor);
    // What is never reached fails whatever is asked of it.
    return left.never() === undefined && right.never() === undefined ? undefined : false;
  };
  return { kind: 'comparison', span, operator, floor, left, right, ...constant(run, left.contextual || right.contextual) };
}

function join(kind: 'all' | 'any', parts: readonly Condition[]): JoinedNode {
  const settles = kind === 'any';
  const run = (travel: number): Truth => {
    let outcome: Truth = !settles;
    for (const part of parts) {
      const truth = part.run(travel);
      if (truth === settles) return settles;
      if (truth === undefined) outcome = undefined;
    }
    return outcome;
  };
  return {
    kind,
    parts,
    ...constant(
      run,
      parts.some(({ contextual }) => contextual),
    ),
  };
}

function conditionAt(expression: Expression & { readonly kind: 'call' }, negated: boolean, shop: Workshop): AtNode | undefined {
  const [where, what] = expression.arguments;
  const inner = what && makeCondition(what, negated, shop);
  if (where === undefined || inner === undefined) return undefined;
  const position = makeValue(where, shop);
  const run = (travel: number): Truth => {
    const place = withinTravel(position.run(travel));
    if (!Number.isNaN(place)) return inner.run(place);
    return position.never() === undefined ? undefined : false;
  };
  return { kind: 'at', position, inner, ...constant(run, position.contextual) };
}

/** What does not depend on the position is worked out once. */
function constant<T>(run: (travel: number) => T, contextual: boolean): { readonly contextual: boolean; run(travel: number): T } {
  if (contextual) return { contextual, run };
  let known: { readonly value: T } | undefined;
  return { contextual, run: () => (known ??= { value: run(NOWHERE) }).value };
}

function makeValue(expression: Expression, shop: Workshop): Value {
  const atoms: Atom[] = [];
  const { lets } = shop;
  const evaluate = compile(putIn(expression, lets.length, atoms, shop));
  const slots = new Float64Array(lets.length + atoms.length);
  slots.set(lets);
  const run = (travel: number): number => {
    for (let i = 0; i < atoms.length; i++) slots[lets.length + i] = atoms[i]!.run(travel);
    const value = evaluate(slots);
    return Number.isFinite(value) ? value : NaN;
  };
  const contextual = atoms.some((atom) => atom.contextual);
  return { expression, atoms, never: () => firstOf(atoms, (atom) => atom.never()), ...constant(run, contextual) };
}

function firstOf<T, R>(list: readonly T[], ask: (item: T) => R | undefined): R | undefined {
  for (const item of list) {
    const answer = ask(item);
    if (answer !== undefined) return answer;
  }
  return undefined;
}

/** The expression with each part that speaks of the travel replaced by a further `let`. */
function putIn(expression: Expression, first: number, atoms: Atom[], shop: Workshop): Expression {
  const atom = makeAtom(expression, shop);
  if (atom !== undefined) {
    atoms.push(atom);
    return { kind: 'let', index: first + atoms.length - 1, name: '', span: expression.span };
  }
  const inside = (part: Expression): Expression => putIn(part, first, atoms, shop);
  switch (expression.kind) {
    case 'unary':
      return { ...expression, operand: inside(expression.operand) };
    case 'binary':
      return { ...expression, left: inside(expression.left), right: inside(expression.right) };
    case 'call':
      return { ...expression, arguments: expression.arguments.map(inside) };
    default:
      return expression;
  }
}

const noNever = (): undefined => undefined;

function makeAtom(expression: Expression, shop: Workshop): Atom | undefined {
  const { sheet } = shop;
  if (expression.kind === 'column') {
    const name = nameOf(expression);
    const column = sheet.column(name);
    const run = (travel: number): number => (column === undefined || Number.isNaN(travel) ? NaN : column.at(travel));
    return { kind: 'column', name, column, contextual: true, run, never: noNever };
  }
  if (expression.kind !== 'call') return undefined;
  const [one, two] = expression.arguments;
  if (one === undefined) return undefined;
  switch (expression.name) {
    case 'min':
    case 'max': {
      if (one.kind !== 'column' || two !== undefined) return undefined;
      const which = expression.name;
      const name = nameOf(one);
      const column = sheet.column(name);
      sheet.expect(name);
      return { kind: 'extreme', which, name, column, never: noNever, ...constant(() => column?.extreme(which)?.value ?? NaN, false) };
    }
    case 'at': {
      if (two === undefined) return undefined;
      const position = makeValue(one, shop);
      const inner = makeValue(two, shop);
      const run = (travel: number): number => {
        const place = withinTravel(position.run(travel));
        return Number.isNaN(place) ? NaN : inner.run(place);
      };
      return { kind: 'at', position, inner, never: () => position.never() ?? inner.never(), ...constant(run, position.contextual) };
    }
    case 'where': {
      const condition = makeCondition(one, false, shop);
      if (condition === undefined) return undefined;
      expectColumns(condition, sheet);
      let found: FirstHolding | undefined;
      const first = (): FirstHolding => (found ??= firstHolding(condition, sheet));
      const run = (): number => {
        const holding = first();
        return holding.kind === 'found' ? holding.travel : NaN;
      };
      return { kind: 'where', condition, first, contextual: false, run, never: () => (first().kind === 'never' ? one : undefined) };
    }
    default:
      return undefined;
  }
}

export function nameOf({ owner, column }: Expression & { readonly kind: 'column' }): string {
  return `${owner}.${column}`;
}

/** Columns that a condition asks for at every position. */
function expectColumns(condition: Condition, sheet: Sheet): void {
  switch (condition.kind) {
    case 'comparison':
      for (const atom of [...condition.left.atoms, ...condition.right.atoms]) if (atom.kind === 'column') sheet.expect(atom.name);
      break;
    case 'at':
      break;
    default:
      for (const part of condition.parts) expectColumns(part, sheet);
  }
}
