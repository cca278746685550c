/** The comparisons of a requirement with their figures: what is, what is demanded, and how much is to spare. */
import { forgiven } from '../definition/formula/compare.ts';
import type { Expression } from '../definition/formula/formula.ts';
import type { Kind } from '../definition/formula/kind.ts';
import type { Span } from '../definition/span.ts';
import { NOWHERE, withinTravel, type ComparisonNode, type Condition, type Value } from './evaluate.ts';
import type { Explainer } from './explain.ts';
import { figuresOf } from './figures.ts';
import type { Comparison, ComparisonOperator } from './requirement.ts';
import type { Sheet } from './sheet.ts';

export interface ComparisonTools {
  readonly sheet: Sheet;
  readonly explainer: Explainer;
  /** Kinds of the `let` values, in file order. */
  readonly kinds: readonly Kind[];
  quote(span: Span): string;
}

/** In the order of the text. @param travel pedal position at which they are made, `NOWHERE` outside an `at` */
export function comparisonsOf(condition: Condition, tools: ComparisonTools, travel: number = NOWHERE): readonly Comparison[] {
  switch (condition.kind) {
    case 'comparison':
      return [comparisonOf(condition, tools, travel)];
    case 'at': {
      const { position, inner } = condition;
      const asked = position.run(travel);
      const place = withinTravel(asked);
      const never = position.never();
      if (!Number.isNaN(place)) return comparisonsOf(inner, tools, place);
      // Where the position itself is at fault, it is what is told of every comparison there.
      const holds = never === undefined ? undefined : false;
      const reason = never === undefined ? tools.explainer.condition(condition, travel) : tools.explainer.neverReached(never);
      return comparisonsOf(inner, tools, NOWHERE).map(({ text, span, operator, demanded }) => ({
        text,
        span,
        operator,
        ...(demanded && { demanded }),
        holds,
        reason,
      }));
    }
    default:
      return condition.parts.flatMap((part) => comparisonsOf(part, tools, travel));
  }
}

function comparisonOf(node: ComparisonNode, { sheet, explainer, kinds, quote }: ComparisonTools, travel: number): Comparison {
  const { span, floor } = node;
  const turned = !speaksOfTravel(node.left.expression) && speaksOfTravel(node.right.expression);
  const [actualSide, demandedSide] = turned ? [node.right, node.left] : [node.left, node.right];
  const operator = turned ? TURNED[node.operator] : node.operator;
  const [actual, demanded] = [actualSide.run(travel), demandedSide.run(travel)];
  const figure = figuresOf(node.left.expression, node.right.expression, kinds, sheet);
  const holds = node.run(travel);
  const margin = marginOf(operator, actual, demanded, floor);
  const met = holds === undefined || Number.isNaN(actual) ? undefined : placeOf(actualSide, travel);
  const reason = whyNot(node, explainer, travel);
  return {
    text: quote(span),
    span,
    operator,
    ...(!Number.isNaN(actual) && { actual: figure(actual) }),
    ...(!Number.isNaN(demanded) && { demanded: figure(demanded) }),
    ...(!Number.isNaN(margin) && { margin: figure(margin) }),
    holds,
    ...(reason !== undefined && { reason }),
    ...(met !== undefined && { travel: met }),
  };
}

function whyNot(node: ComparisonNode, explainer: Explainer, travel: number): string | undefined {
  if (node.run(travel) === undefined) return explainer.condition(node, travel);
  // What is never reached never holds.
  const never = node.left.never() ?? node.right.never();
  return never === undefined ? undefined : explainer.neverReached(never);
}

const TURNED: Readonly<Record<ComparisonOperator, ComparisonOperator>> = {
  '<': '>',
  '<=': '>=',
  '>': '<',
  '>=': '<=',
  '==': '==',
  '!=': '!=',
};

/** NaN where a side has no value. */
function marginOf(operator: ComparisonOperator, actual: number, demanded: number, floor: number): number {
  const allowed = forgiven(actual, demanded, floor);
  const above = actual - demanded;
  const equal = Math.abs(above) <= allowed;
  switch (operator) {
    case '>':
    case '>=':
      return equal ? 0 : above;
    case '<':
    case '<=':
      return equal ? 0 : -above;
    case '==':
      return allowed - Math.abs(above);
    case '!=':
      return Math.abs(above) - allowed;
  }
}

function speaksOfTravel(expression: Expression): boolean {
  switch (expression.kind) {
    case 'column':
      return true;
    case 'number':
    case 'let':
      return false;
    case 'unary':
      return speaksOfTravel(expression.operand);
    case 'binary':
      return speaksOfTravel(expression.left) || speaksOfTravel(expression.right);
    case 'call':
      return expression.name === 'where' || expression.arguments.some(speaksOfTravel);
  }
}

/** The one pedal position from which a value's figures were taken; undefined where there are several or none. */
function placeOf(value: Value, travel: number): number | undefined {
  const places = new Set(placesOf(value, travel));
  return places.size === 1 ? [...places][0] : undefined;
}

function placesOf(value: Value, travel: number): readonly number[] {
  return value.atoms.flatMap((atom): readonly number[] => {
    switch (atom.kind) {
      case 'column':
        return [travel];
      case 'extreme': {
        const extreme = atom.column?.extreme(atom.which);
        return extreme === undefined ? [] : [extreme.travel];
      }
      case 'at':
        return placesOf(atom.inner, withinTravel(atom.position.run(travel)));
      case 'where':
        // It is a position itself.
        return [];
    }
  });
}
