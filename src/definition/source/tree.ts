/**
 * The text of a throttle file as a tree of plain nodes, each with its place: what the schema reads.
 *
 * The tree is independent of the YAML library, so that everything after `parse.ts` deals with maps, lists
 * and text only. Aliases share the node of their anchor, so one node may stand at several places of the tree.
 */
import type { Span } from '../span.ts';

/** A text, with or without quotes. */
export interface SourceScalar {
  readonly kind: 'scalar';
  /** With its quotes. */
  readonly span: Span;
  readonly text: string;
  /** Where `text` begins in the file. */
  readonly textStart: number;
  /** Whether `text` stands in the file letter by letter: no escapes, no folded lines. */
  readonly exact: boolean;
  /** File offset of each character of `text` and of its end; only for quoted text with escapes on one line. */
  readonly offsets?: readonly number[];
  readonly style: 'plain' | 'single' | 'double' | 'block';
  readonly multiline: boolean;
  /** Inside `{}` or `[]`, where `, [ ] { }` end a plain text. */
  readonly inFlow: boolean;
}

/** A key without a value, or a value that a reported mistake has made unreadable. */
export interface SourceEmpty {
  readonly kind: 'empty';
  readonly span: Span;
  /** Whether a problem has been reported for it already. */
  readonly damaged: boolean;
}

/** `[…]`, or lines that begin with `-`. */
export interface SourceList {
  readonly kind: 'list';
  readonly span: Span;
  readonly flow: boolean;
  readonly items: readonly SourceNode[];
  /** Whether a reported mistake may have cut items off. */
  readonly damaged: boolean;
}

/** A key with its value. */
export interface SourceEntry {
  readonly key: string;
  readonly keySpan: Span;
  /** From the key to the end of the value. */
  readonly span: Span;
  readonly value: SourceNode;
}

/** `{…}`, or lines of keys. */
export interface SourceMap {
  readonly kind: 'map';
  readonly span: Span;
  readonly flow: boolean;
  /** Of equal keys only the first. */
  readonly entries: readonly SourceEntry[];
  /** Whether a reported mistake may have cut entries off. */
  readonly damaged: boolean;
}

/** A place of the tree. */
export type SourceNode = SourceScalar | SourceEmpty | SourceList | SourceMap;

/** The value of a key; undefined where the node is no map or has no such key. */
export function child(node: SourceNode | undefined, key: string): SourceNode | undefined {
  return entryOf(node, key)?.value;
}

/** The entry of a key; undefined where the node is no map or has no such key. */
export function entryOf(node: SourceNode | undefined, key: string): SourceEntry | undefined {
  if (node?.kind === 'map') for (const entry of node.entries) if (entry.key === key) return entry;
  return undefined;
}

/** The text of a scalar; undefined for everything else. */
export function textOf(node: SourceNode | undefined): string | undefined {
  return node?.kind === 'scalar' ? node.text : undefined;
}
