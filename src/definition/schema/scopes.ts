/**
 * What formulas of one file may speak of, as far as the file has been read.
 */
import { COLUMNS, isColumnOwner, type Column } from '../columns.ts';
import type { Let } from '../definition.ts';
import { goodName, NAME_PATTERN } from '../names.ts';
import type { RequirementScope, ScopeLet } from '../formula/scope.ts';
import { PART_BLOCKS, type Declared } from './declared.ts';

/** Names of `let`, moved from `later` to `lets` or `broken` as they are read. */
export interface LetScope extends RequirementScope {
  /** Those of `lets`, each as it was read. */
  readonly entries: readonly Let[];
  add(read: Let): void;
  fail(name: string): void;
}

/**
 * @param names usable names in `let`
 * @param pedalIsCable whether ratios are per length of cable
 */
export function makeScope(declared: Declared, names: ReadonlySet<string>, pedalIsCable: boolean): LetScope {
  const lets: ScopeLet[] = [];
  const entries: Let[] = [];
  const broken = new Set<string>();
  const later = new Set(names);
  const columnsFor = (owner: string): Readonly<Record<string, Column>> => {
    // Of a name that is used twice, the part that has columns is meant.
    const kind = Object.values(PART_BLOCKS).find((part) => isColumnOwner(part) && declared.parts[part].has(owner));
    const own = kind !== undefined && isColumnOwner(kind) ? COLUMNS[kind] : {};
    return owner === 'pedal' ? { ...own, ...COLUMNS.pedal } : own;
  };
  const owners = ['pedal', ...Object.entries(declared.parts).flatMap(([kind, parts]) => (isColumnOwner(kind) ? [...parts.keys()] : []))];
  return {
    lets,
    entries,
    broken,
    later,
    owners: [...new Set(owners)],
    columnsOf: (owner) => Object.keys(columnsFor(owner)),
    columnDimension(owner, column) {
      const columns = columnsFor(owner);
      if (!Object.hasOwn(columns, column)) return undefined;
      if (column === 'ratio' && pedalIsCable) return 'angle-per-length';
      return columns[column]?.dimension;
    },
    add(read) {
      const { name, kind, value } = read;
      later.delete(name);
      // Of a name that is told to be wrong, a formula may have the right one already.
      const right = NAME_PATTERN.test(name) ? name : goodName(name);
      if (right !== name && !names.has(right)) broken.add(right);
      entries.push(read);
      lets.push({ name, kind, nominal: value.nominal, ...(value.tolerance && { tolerance: value.tolerance }) });
    },
    fail(name) {
      later.delete(name);
      broken.add(name);
    },
  };
}
