/**
 * What the format says of a place in a half-typed file: as `describePath`, but of several forms only those that the keys beside leave
 * open. A spring with a `lever` has a torsional rate, one with `from` a linear one.
 */
import type { About, KeyAbout } from '../definition/schema/shape.ts';
import { describePath, type Described } from '../definition/schema/walk.ts';
import { entriesAt, type LooseTree } from './cursor/looseTree.ts';

export type RecordAbout = Extract<About, { readonly kind: 'record' }>;

/** Forms of a shape, each by itself. */
export function formsOf(shape: About): readonly About[] {
  return shape.kind === 'either' ? shape.forms.flatMap(formsOf) : [shape];
}

/** Blocks of fixed keys that may stand at a path, given the keys that stand there; none where there is no such block. */
export function recordsAt(tree: LooseTree, path: readonly string[], present?: readonly string[]): readonly RecordAbout[] {
  const records = describePath(path).flatMap(({ shape }) => formsOf(shape).filter((form): form is RecordAbout => form.kind === 'record'));
  if (records.length < 2) return records;
  const known = (present ?? entriesAt(tree, path).map(({ key }) => key)).filter((key) =>
    records.some(({ keys }) => Object.hasOwn(keys, key)),
  );
  const fitting = records.filter(({ keys }) => known.every((key) => Object.hasOwn(keys, key)));
  return fitting.length === 0 ? records : fitting;
}

/** Meanings of a value's place. */
export function meaningsAt(tree: LooseTree, path: readonly string[]): readonly Described[] {
  const name = path.at(-1);
  const records = name === undefined ? [] : recordsAt(tree, path.slice(0, -1));
  const own = records.flatMap(({ keys }) => (name !== undefined && Object.hasOwn(keys, name) ? [keys[name]!] : []));
  return own.length === 0 ? describePath(path) : unique(own).map((key) => ({ shape: key.shape, key }));
}

/** Keys of a block that may still be written: of several ways of giving one thing only the one that was begun. */
export function openKeys(record: RecordAbout, present: readonly string[]): ReadonlyMap<string, KeyAbout> {
  const closed = new Set(present);
  for (const { forms } of record.choices) {
    const fitting = forms.filter(({ needs, allows }) => present.some((key) => needs.includes(key) || allows.includes(key)));
    const [chosen] = fitting;
    if (chosen === undefined || fitting.length > 1) continue;
    for (const form of forms)
      for (const key of [...form.needs, ...form.allows]) if (![...chosen.needs, ...chosen.allows].includes(key)) closed.add(key);
  }
  return new Map(Object.entries(record.keys).filter(([name]) => !closed.has(name)));
}

function unique<T>(values: readonly T[]): readonly T[] {
  return [...new Set(values)];
}
