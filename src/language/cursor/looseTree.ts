/**
 * The outline of a file as its indentation and brackets show it: keys, values and their places, whatever is broken in between.
 *
 * Completion is asked for exactly where a file is half typed and no parser of YAML makes sense of it, so this reads on where such a
 * parser stops: a key may lack its colon, a bracket or quote its end. A bracket that is never closed ends before the first line that
 * stands no deeper than the line that opened it; an unclosed quote ends with its line.
 */
import type { Span } from '../../definition/span.ts';
import { scanBlocks } from './blocks.ts';

/** A key with its value, or an item of a list, whose key is its number. */
export interface LooseEntry {
  /** Without quotes; empty where nothing is written yet. */
  readonly key: string;
  /** With quotes; of no length for an item. */
  readonly keySpan: Span;
  /** Offset of the colon; undefined where there is none (yet), and for items. */
  readonly colon: number | undefined;
  readonly isItem: boolean;
  readonly value: LooseValue;
  /** From where the entry may begin to where the next one may, ends included. */
  readonly region: Span;
}

export interface LooseScalar {
  readonly kind: 'scalar';
  /** Without quotes. */
  readonly span: Span;
  readonly style: 'plain' | 'single' | 'double' | 'block';
  /** False for a quote without its end. */
  readonly closed: boolean;
}

export interface LooseBlock {
  readonly kind: 'block';
  /** Whether its entries are items. */
  readonly list: boolean;
  readonly flow: boolean;
  /** With its brackets; of a block of lines from its first key on. */
  readonly span: Span;
  /** False for a bracket without its end. */
  readonly closed: boolean;
  /** Column of its keys; −1 in brackets. */
  readonly indent: number;
  readonly entries: readonly LooseEntry[];
}

export type LooseValue = { readonly kind: 'nothing' } | LooseScalar | LooseBlock;

/** An entry of a block of lines, in the order of the text. */
export interface PlacedEntry {
  readonly entry: LooseEntry;
  readonly block: LooseBlock;
  /** Of the block. */
  readonly path: readonly string[];
  /** Entries that hold this one, the outermost first, each with its block. */
  readonly above: PlacedEntry | undefined;
  readonly start: number;
  /** End of the last line that its value takes, without the line's end; that of its own line where the value is a block of lines. */
  readonly end: number;
}

export interface LooseTree {
  readonly text: string;
  readonly root: LooseBlock;
  readonly placed: readonly PlacedEntry[];
  /** From `#` to the end of the line, rising. */
  readonly comments: readonly Span[];
}

/** Never throws; takes a time proportional to the text. The last text's tree is kept. */
export function readLoosely(text: string): LooseTree {
  if (last?.text !== text) last = scanBlocks(text);
  return last;
}

/** Several questions are asked of one text. */
let last: LooseTree | undefined;

/** The value that stands at a path; undefined where there is none. */
export function looseAt(tree: LooseTree, path: readonly string[]): LooseValue | undefined {
  let value: LooseValue = tree.root;
  for (const step of path) {
    const found: LooseEntry | undefined = value.kind === 'block' ? value.entries.find(({ key }) => key === step) : undefined;
    if (found === undefined) return undefined;
    value = found.value;
  }
  return value;
}

/** The entries of the block at a path; none where there is no block. */
export function entriesAt(tree: LooseTree, path: readonly string[]): readonly LooseEntry[] {
  const value = looseAt(tree, path);
  return value?.kind === 'block' ? value.entries.filter(({ key }) => key !== '') : [];
}

/** The text of the scalar at a path; undefined where there is none. */
export function scalarAt(tree: LooseTree, path: readonly string[]): string | undefined {
  const value = looseAt(tree, path);
  return value?.kind === 'scalar' ? tree.text.slice(value.span.start, value.span.end) : undefined;
}
