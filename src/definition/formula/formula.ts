/**
 * What the rest of the program knows of a compiled formula.
 */
import type { Dimension } from '../dimensions.ts';
import type { Named } from '../definition.ts';
import type { Span } from '../span.ts';
import type { Kind } from './kind.ts';

/** An expression over `let` values, parsed, dimension-checked and compiled; SI in, SI out. */
export interface Formula {
  /** The expression as written. */
  readonly text: string;
  /** Indices into `Definition.lets` that the value depends on directly, rising. */
  readonly uses: readonly number[];
  /** @param lets SI value of every `let`, in file order. NaN where the formula has no real value there. */
  evaluate(lets: Float64Array): number;
  /**
   * Partial derivatives by the `let` values it uses directly.
   * @param into receives ∂/∂lets[uses[k]] at index k; SI per SI. At a kink (`abs`, `min`, `max`, `round` …) one-sided, from above.
   */
  gradient(lets: Float64Array, into: Float64Array): void;
}

/** One line of `require`. */
export interface Requirement extends Named {
  /** The expression as written. */
  readonly text: string;
  /** Place of the expression. */
  readonly expressionSpan: Span;
  /** Absent where the expression could not be understood; a problem then says why. */
  readonly expression?: Expression;
}

/** A checked expression tree. Spans are places in the file. */
export type Expression =
  /** SI; `dimension` is the exponents of its unit, absent for a plain number. */
  | { readonly kind: 'number'; readonly value: number; readonly dimension?: Kind; readonly span: Span }
  | { readonly kind: 'let'; readonly index: number; readonly name: string; readonly span: Span }
  /** A column of the table, e.g. `shaft.opening`; only in `require`. */
  | { readonly kind: 'column'; readonly owner: string; readonly column: string; readonly dimension: Dimension; readonly span: Span }
  | { readonly kind: 'unary'; readonly operator: '-' | '+' | 'not'; readonly operand: Expression; readonly span: Span }
  | {
      readonly kind: 'binary';
      readonly operator: BinaryOperator;
      readonly left: Expression;
      readonly right: Expression;
      /** Only on comparisons, SI: two sides closer than this count as equal however small they are. */
      readonly floor?: number;
      readonly span: Span;
    }
  | { readonly kind: 'call'; readonly name: string; readonly arguments: readonly Expression[]; readonly span: Span };

/** Operators between two values or conditions. */
export type BinaryOperator = '+' | '-' | '*' | '/' | '^' | '<' | '<=' | '>' | '>=' | '==' | '!=' | 'and' | 'or';
