/**
 * The names that a file declares, right or wrong, each with its place.
 */
import { COLUMNS, isColumnOwner } from '../../definition/columns.ts';
import { reservedAs } from '../../definition/names.ts';
import { PART_BLOCKS, type PartKind } from '../../definition/schema/declared.ts';
import { child, entryOf, type SourceEntry, type SourceNode } from '../../definition/source/tree.ts';
import type { Span } from '../../definition/span.ts';
import type { DeclaredName, NameKind } from '../names.ts';

/** Blocks of the file whose keys are names. */
export const NAME_BLOCKS = {
  ...PART_BLOCKS,
  points: 'point',
  keep_out: 'obstacle',
  movements: 'movement',
  require: 'requirement',
} as const satisfies Readonly<Record<string, NameKind>>;

/** Names of one kind, or parts of one lever. */
export type NameTable = ReadonlyMap<string, DeclaredName>;

/** The names of a file, to be asked. */
export interface DeclaredNames {
  /** In the order of the text. */
  readonly all: readonly DeclaredName[];
  readonly byKind: Readonly<Record<(typeof NAME_BLOCKS)[keyof typeof NAME_BLOCKS], NameTable>>;
  /** Arms and drums by lever. */
  readonly parts: ReadonlyMap<string, { readonly arms: NameTable; readonly drums: NameTable }>;
  /** The block `pedal`. */
  readonly drive: DeclaredName | undefined;
  /** Names of `let` that a formula can speak of. */
  readonly lets: ReadonlySet<string>;
}

export function declareNames(root: SourceNode | undefined, text: string): DeclaredNames {
  // A block that is used again by an alias declares its names once, at one place.
  const atPlace = new Map<number, DeclaredName>();
  const declare = (entry: SourceEntry, kind: NameKind, lever?: string): DeclaredName => {
    const { key, keySpan } = entry;
    const known = atPlace.get(keySpan.start);
    if (known !== undefined) return known;
    const made: DeclaredName = {
      name: key,
      kind,
      ...(lever === undefined ? {} : { lever }),
      span: withoutQuotes(keySpan, text),
      keySpan,
      entrySpan: entry.span,
    };
    atPlace.set(keySpan.start, made);
    return made;
  };
  const tableOf = (block: SourceNode | undefined, kind: NameKind, lever?: string): NameTable =>
    new Map(entriesOf(block).map((entry) => [entry.key, declare(entry, kind, lever)]));

  const tables = Object.entries(NAME_BLOCKS).map(([block, kind]) => [kind, tableOf(child(root, block), kind)] as const);
  const byKind = Object.fromEntries(tables) as DeclaredNames['byKind'];
  const parts = new Map(
    entriesOf(child(root, 'levers')).map(({ key, value }) => [
      key,
      { arms: tableOf(child(value, 'arms'), 'arm', key), drums: tableOf(child(value, 'drums'), 'drum', key) },
    ]),
  );
  const pedal = entryOf(root, 'pedal');
  const drive = pedal === undefined ? undefined : declare(pedal, 'drive');
  return {
    all: [...atPlace.values()].sort((a, b) => a.span.start - b.span.start),
    byKind,
    parts,
    drive,
    lets: new Set([...byKind.let.keys()].filter((name) => reservedAs(name) === undefined)),
  };
}

/** The part of that name; of a name that is used twice the first in the order of the blocks, among the kinds that are wanted. */
export function partNamed(
  declared: DeclaredNames,
  name: string,
  wanted: (kind: PartKind) => boolean = () => true,
): DeclaredName | undefined {
  for (const kind of Object.values(PART_BLOCKS)) {
    const found = wanted(kind) ? declared.byKind[kind].get(name) : undefined;
    if (found !== undefined) return found;
  }
  return undefined;
}

/** Of a name that is used twice, the part that has columns is meant; else whatever is called so. */
export function ownerOf(
  { owner, column }: { readonly owner: string; readonly column: string },
  declared: DeclaredNames,
): DeclaredName | undefined {
  if (owner === 'pedal' && Object.hasOwn(COLUMNS.pedal, column)) return declared.drive;
  return partNamed(declared, owner, isColumnOwner) ?? (owner === 'pedal' ? declared.drive : undefined) ?? partNamed(declared, owner);
}

/** Whether names of the kind are each used once in the file, whatever the kind of the others. */
export function isPartKind(kind: NameKind): kind is PartKind {
  return Object.values(PART_BLOCKS).some((part) => part === kind);
}

function entriesOf(node: SourceNode | undefined): readonly SourceEntry[] {
  // `<<` is no name but a merge key, which the format does not have.
  return node?.kind === 'map' ? node.entries.filter((entry) => entry.key !== '<<') : [];
}

/** A key or a text without the quotes around it. */
export function withoutQuotes(span: Span, text: string): Span {
  const quote = text[span.start];
  const quoted = (quote === '"' || quote === "'") && span.end - span.start >= 2 && text[span.end - 1] === quote;
  return quoted ? { start: span.start + 1, end: span.end - 1 } : span;
}
