/**
 * What a formula may speak of: the `let` values before it and, in `require`, the columns of the table.
 */
import type { Tolerance } from '../definition.ts';
import type { Dimension } from '../dimensions.ts';
import { reservedAs } from '../names.ts';
import type { Kind } from './kind.ts';

/** The names of a file, asked one by one. */
export interface Vocabulary {
  has(word: string): boolean;
}

/** A `let` whose value is known. */
export interface ScopeLet {
  readonly name: string;
  readonly kind: Kind;
  /** SI. */
  readonly nominal: number;
  readonly tolerance?: Tolerance;
}

/** What any formula may speak of. */
export interface Scope {
  /** In file order; an index into this list is what formulas keep. */
  readonly lets: readonly ScopeLet[];
  /** Names in `let` whose own value could not be read. A formula that uses one has no value, and that is said once, there. */
  readonly broken?: ReadonlySet<string>;
  /** Names in `let` that stand further down. */
  readonly later?: ReadonlySet<string>;
}

/**
 * Place of a `let` in its list, which may still grow: names are indexed once, however often they are asked for.
 * @returns undefined for a name that is not in the list, or that the formula language has taken for itself
 */
export function indexOfLet(lets: readonly ScopeLet[], name: string): number | undefined {
  const known = indices.get(lets) ?? { read: 0, byName: new Map<string, number>() };
  indices.set(lets, known);
  for (; known.read < lets.length; known.read++) {
    const next = lets[known.read];
    if (next !== undefined && reservedAs(next.name) === undefined && !known.byName.has(next.name)) known.byName.set(next.name, known.read);
  }
  return known.byName.get(name);
}

const indices = new WeakMap<readonly ScopeLet[], { read: number; readonly byName: Map<string, number> }>();

/** What a line of `require` may speak of besides. */
export interface RequirementScope extends Scope {
  /**
   * What a column of the table is; percent columns are fractions, so `number`. `unreadable` where the part is named in
   * the file but broken, so that nothing can be said of its columns. Undefined for a column that does not exist.
   */
  columnDimension(owner: string, column: string): Dimension | 'unreadable' | undefined;
  /** Every part that has columns, for the nearest right word. */
  readonly owners: readonly string[];
  /** Columns of one part; empty for a part that does not exist. */
  columnsOf(owner: string): readonly string[];
}
