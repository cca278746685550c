/**
 * Every name of a file: where it is declared and every place that refers to it. Definition, references, highlights and
 * rename all read this one index; it is made from the text alone, so that it stands while the file is half-typed.
 */
import { LARGEST_FILE } from '../definition/read.ts';
import type { SourceNode } from '../definition/source/tree.ts';
import type { Span } from '../definition/span.ts';
import { parseSource } from '../definition/source/parse.ts';
import { declareNames } from './names/declare.ts';
import { findUses } from './names/uses.ts';

/**
 * What a name is the name of. `drive` is the block `pedal`, of which `pedal.travel`, `.effort` and `.release` always speak,
 * even where a lever is called `pedal`.
 */
export type NameKind =
  | 'let'
  | 'point'
  | 'lever'
  | 'arm'
  | 'drum'
  | 'cable'
  | 'rod'
  | 'slot'
  | 'coupling'
  | 'plates'
  | 'sensor'
  | 'spring'
  | 'obstacle'
  | 'movement'
  | 'requirement'
  | 'drive';

/** A name that the file declares. */
export interface DeclaredName {
  readonly name: string;
  readonly kind: NameKind;
  /** The lever of an arm or drum. */
  readonly lever?: string;
  /** The name where it is declared, without quotes. */
  readonly span: Span;
  /** The same with its quotes, where it has any. */
  readonly keySpan: Span;
  /** The whole entry, from its name to the end of its value. */
  readonly entrySpan: Span;
}

/** A place where a name stands. */
export interface NamePlace {
  /** The name alone: of `shaft.arm` the lever or the part, without quotes. */
  readonly span: Span;
  readonly declared: DeclaredName;
  readonly isDeclaration: boolean;
  /** False where the name is written so that its own letters cannot be told; `span` is then the whole text around it. */
  readonly exact: boolean;
  /** The whole text with its quotes, where a name that may need them is all of it. */
  readonly written?: Span;
}

/** All names of one text. */
export interface NameIndex {
  readonly text: string;
  /** The tree that the names were found in; undefined where nothing of the text can be read. */
  readonly root: SourceNode | undefined;
  /** In the order of their declarations. */
  readonly names: readonly DeclaredName[];
  /** Declarations and uses in the order of the text; none overlap. A use of a name that is not declared is not among them. */
  readonly places: readonly NamePlace[];
}

/** Reads the names of a text. Never throws; of a file that is too large to be read it knows none. */
export function indexNames(text: string): NameIndex {
  // A file is held to bytes, of which it has no fewer than characters.
  if (text.length > LARGEST_FILE) return { text, root: undefined, names: [], places: [] };
  const { root } = parseSource(text);
  const declared = declareNames(root, text);
  const places = [
    ...declared.all.map((name): NamePlace => ({ span: name.span, declared: name, isDeclaration: true, exact: true })),
    ...findUses(root, text, declared),
  ];
  return { text, root, names: declared.all, places: inOrder(places) };
}

/** The name at an offset, also where the cursor stands right behind it. */
export function nameAt(index: NameIndex, offset: number): NamePlace | undefined {
  const { places } = index;
  let low = 0;
  let high = places.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((places[middle]?.span.start ?? Infinity) <= offset) low = middle;
    else high = middle - 1;
  }
  const found = places[low];
  return found !== undefined && found.span.start <= offset && offset <= found.span.end ? found : undefined;
}

/** Every place of a name, its declaration among them, in the order of the text. */
export function placesOf(index: NameIndex, declared: DeclaredName): readonly NamePlace[] {
  return index.places.filter((place) => place.declared === declared);
}

/** Sorted; of places that meet, as an anchored name and its alias, the first told. */
function inOrder(places: readonly NamePlace[]): readonly NamePlace[] {
  const sorted = places
    .map((place, index) => ({ place, index }))
    .sort((a, b) => a.place.span.start - b.place.span.start || a.index - b.index);
  const kept: NamePlace[] = [];
  for (const { place } of sorted) {
    const last = kept.at(-1);
    if (last === undefined || place.span.start >= last.span.end) kept.push(place);
  }
  return kept;
}
