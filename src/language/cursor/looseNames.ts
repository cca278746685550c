/** Names that a half-typed file declares, read from its loose outline. */
import { COLUMNS, isColumnOwner, type Column } from '../../definition/columns.ts';
import { PART_BLOCKS, type PartKind } from '../../definition/schema/declared.ts';
import { entriesAt, scalarAt, type LooseTree } from './looseTree.ts';

/** Names of parts of a kind, in the order of the file, each once. */
export function looseNames(tree: LooseTree, kind: PartKind): readonly string[] {
  const block = Object.entries(PART_BLOCKS).find(([, each]) => each === kind)?.[0];
  return block === undefined ? [] : namesIn(tree, [block]);
}

/** Names of points. */
export function loosePoints(tree: LooseTree): readonly string[] {
  return namesIn(tree, ['points']);
}

/** A part of a lever. */
export interface LoosePart {
  readonly lever: string;
  readonly part: string;
  readonly kind: 'arm' | 'drum';
}

/** Arms and drums of all levers, or of one. */
export function looseParts(tree: LooseTree, kinds: readonly ('arm' | 'drum')[], lever?: string): readonly LoosePart[] {
  const levers = lever === undefined ? looseNames(tree, 'lever') : [lever];
  return levers.flatMap((name) =>
    kinds.flatMap((kind) => namesIn(tree, ['levers', name, `${kind}s`]).map((part): LoosePart => ({ lever: name, part, kind }))),
  );
}

/** The kind of part that bears a name. */
export function looseKind(tree: LooseTree, name: string): PartKind | undefined {
  return Object.values(PART_BLOCKS).find((kind) => looseNames(tree, kind).includes(name));
}

/** Every part that has columns, the pedal first; a name once. */
export function looseOwners(tree: LooseTree): readonly { readonly name: string; readonly kind: PartKind | 'pedal' }[] {
  const owners = Object.values(PART_BLOCKS).flatMap((kind) =>
    isColumnOwner(kind) ? looseNames(tree, kind).map((name) => ({ name, kind })) : [],
  );
  const first = new Map(owners.map((owner) => [owner.name, owner]).reverse() as [string, (typeof owners)[number]][]);
  first.delete('pedal');
  return [{ name: 'pedal', kind: 'pedal' }, ...owners.filter((owner) => first.get(owner.name) === owner)];
}

/** Columns of a part; those of the drive are the pedal's, whether a lever is called so or not. */
export function looseColumns(tree: LooseTree, owner: string): Readonly<Record<string, Column>> {
  const kind = looseKind(tree, owner);
  const own = kind !== undefined && isColumnOwner(kind) ? COLUMNS[kind] : {};
  return owner === 'pedal' ? { ...own, ...COLUMNS.pedal } : own;
}

/** Name of the pedal's lever. */
export function pedalLever(tree: LooseTree): string | undefined {
  return scalarAt(tree, ['pedal', 'lever']);
}

function namesIn(tree: LooseTree, path: readonly string[]): readonly string[] {
  return [
    ...new Set(
      entriesAt(tree, path)
        .filter(({ colon }) => colon !== undefined)
        .map(({ key }) => key),
    ),
  ];
}
