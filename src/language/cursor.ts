/**
 * What stands at an offset of a throttle file: key or value, of what, and how much of it is written. Told by indentation and brackets,
 * so that it is known in a half-typed file too.
 */
import type { Span } from '../definition/span.ts';
import { describePath, type Described } from '../definition/schema/walk.ts';
import { readLoosely, type LooseBlock, type LooseEntry, type LooseTree, type PlacedEntry } from './cursor/looseTree.ts';
import { isBlank, isLineEnd } from './cursor/scalars.ts';

export interface Cursor {
  readonly tree: LooseTree;
  readonly offset: number;
  /** `none` in comments, behind finished values and where nothing can stand. */
  readonly role: 'key' | 'value' | 'none';
  /** Of a key, the block in which it stands; of a value, its own. Keys and list places from the file's root. */
  readonly path: readonly string[];
  /** The key or value, without quotes; up to the cursor at least. */
  readonly span: Span;
  readonly text: string;
  /** What of the text stands before the cursor. */
  readonly prefix: string;
  readonly style: 'plain' | 'single' | 'double' | 'block';
  /** For a key, whether it stands in brackets; for a value, whether commas and brackets would end it. */
  readonly flow: boolean;
  readonly inComment: boolean;
  /** Keys that the block has besides this one. */
  readonly siblings: readonly string[];
  /** Whether a key has its colon already. */
  readonly hasColon: boolean;
  /** Whether the value needs a blank before it: it would touch its colon. */
  readonly touching: boolean;
  /** Whether what is written here may be the value of `path` as well as a key in it: nothing else stands in the block. */
  readonly mayBeValue: boolean;
}

/** @param offset in UTF-16 code units; held to the ends of the text */
export function cursorAt(text: string, offset: number): Cursor {
  const tree = readLoosely(text);
  const at = Number.isFinite(offset) ? Math.min(Math.max(0, Math.trunc(offset)), text.length) : 0;
  if (tree.comments.some(({ start, end }) => start < at && at <= end)) return { ...nothing(tree, at), inComment: true };
  if (tree.root.flow) return inFlow(tree, at, tree.root, []) ?? nothing(tree, at);
  const placed = lastBefore(tree, at);
  if (placed !== undefined && at <= placed.end) return inEntry(tree, at, placed);
  return onBlankLine(tree, at, placed);
}

/** What the format says of the value at a place: of a value its own, of a key the block's. */
export function describedAt(cursor: Cursor): readonly Described[] {
  return describePath(cursor.path);
}

function nothing(tree: LooseTree, offset: number): Cursor {
  return {
    tree,
    offset,
    role: 'none',
    path: [],
    ...written(tree, offset, { start: offset, end: offset }),
    style: 'plain',
    flow: false,
    inComment: false,
    siblings: [],
    hasColon: false,
    touching: false,
    mayBeValue: false,
  };
}

function written({ text }: LooseTree, offset: number, span: Span): Pick<Cursor, 'span' | 'text' | 'prefix'> {
  return { span, text: text.slice(span.start, span.end), prefix: text.slice(span.start, Math.max(span.start, offset)) };
}

/** Of several entries on a line, the innermost. */
function lastBefore({ placed }: LooseTree, offset: number): PlacedEntry | undefined {
  let low = 0;
  let high = placed.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (placed[middle]!.start <= offset) low = middle + 1;
    else high = middle;
  }
  return placed[low - 1];
}

function inEntry(tree: LooseTree, offset: number, { entry, block, path }: PlacedEntry): Cursor {
  if (!entry.isItem && (entry.colon === undefined || offset <= entry.colon)) return atKey(tree, offset, entry, block, path);
  return atValue(tree, offset, entry, [...path, entry.key], false);
}

function atKey(tree: LooseTree, offset: number, entry: LooseEntry, block: LooseBlock, path: readonly string[]): Cursor {
  const { text } = tree;
  const quote = text[entry.keySpan.start];
  const quoted = (quote === '"' || quote === "'") && entry.keySpan.end > entry.keySpan.start;
  // Behind a finished key and before its colon nothing can be written.
  if (offset > entry.keySpan.end && entry.key !== '') return nothing(tree, offset);
  const span = entry.key === '' ? { start: offset, end: offset } : entry.keySpan;
  const inner = quoted ? { start: span.start + 1, end: Math.max(span.start + 1, span.end - 1) } : span;
  if (quoted && offset < inner.start) return nothing(tree, offset);
  return {
    ...nothing(tree, offset),
    role: 'key',
    path,
    ...written(tree, offset, { start: inner.start, end: Math.max(inner.end, Math.min(offset, span.end)) }),
    style: quoted ? (quote === '"' ? 'double' : 'single') : 'plain',
    flow: block.flow,
    siblings: siblingsOf(block, entry),
    hasColon: entry.colon !== undefined,
    mayBeValue: !block.flow && entry.colon === undefined && block.entries.length === 1 && path.length > 0,
  };
}

function siblingsOf(block: LooseBlock, entry: LooseEntry | undefined): readonly string[] {
  return block.entries.filter((each) => each !== entry && each.key !== '').map(({ key }) => key);
}

/** @param flow whether the value stands in brackets */
function atValue(tree: LooseTree, offset: number, entry: LooseEntry, path: readonly string[], flow: boolean): Cursor {
  const { text } = tree;
  const { value } = entry;
  const base = { ...nothing(tree, offset), role: 'value', path, flow } as const;
  const touching = entry.colon !== undefined ? offset === entry.colon + 1 : text[offset - 1] === '-' && entry.isItem && !flow;
  if (value.kind === 'nothing') return { ...base, touching };
  if (value.kind === 'block') {
    if (!value.flow) return nothing(tree, offset);
    if (offset <= value.span.start) return nothing(tree, offset);
    return inFlow(tree, offset, value, path) ?? nothing(tree, offset);
  }
  const { span, style, closed } = value;
  if (style === 'block') return offset <= span.start ? nothing(tree, offset) : { ...base, style, ...written(tree, offset, span) };
  if (style !== 'plain') {
    if (offset < span.start || (closed && offset > span.end)) return nothing(tree, offset);
    return { ...base, style, flow: false, ...written(tree, offset, { start: span.start, end: Math.max(span.end, offset) }) };
  }
  if (offset < span.start) return { ...nothing(tree, offset), path };
  return { ...base, ...written(tree, offset, { start: span.start, end: Math.max(span.end, offset) }) };
}

/** Undefined outside the brackets. */
function inFlow(tree: LooseTree, offset: number, block: LooseBlock, path: readonly string[]): Cursor | undefined {
  const { span, closed } = block;
  if (offset <= span.start || (closed && offset >= span.end)) return undefined;
  const entry = block.entries.findLast((each) => each.region.start <= offset) ?? block.entries[0];
  if (entry === undefined) return undefined;
  if (block.list) return atValue(tree, offset, entry, [...path, entry.key], true);
  if (entry.colon === undefined || offset <= entry.colon) {
    if (entry.key !== '' && offset < entry.keySpan.start) {
      return { ...nothing(tree, offset), role: 'key', path, flow: true, siblings: siblingsOf(block, undefined) };
    }
    return atKey(tree, offset, entry, block, path);
  }
  return atValue(tree, offset, entry, [...path, entry.key], true);
}

/** By its column, an empty line belongs to one of the blocks that are open above it. */
function onBlankLine(tree: LooseTree, offset: number, before: PlacedEntry | undefined): Cursor {
  const { text } = tree;
  let lineStart = offset;
  while (lineStart > 0 && !isLineEnd(text, lineStart - 1)) lineStart--;
  if (lineStart === 0 && text.startsWith('\ufeff')) lineStart = Math.min(1, offset);
  for (let i = lineStart; i < offset; i++) if (!isBlank(text, i)) return nothing(tree, offset);
  let rest = offset;
  while (rest < text.length && isBlank(text, rest)) rest++;
  if (rest < text.length && !isLineEnd(text, rest) && text[rest] !== '#') return nothing(tree, offset);
  const column = offset - lineStart;
  const key = (path: readonly string[], block: LooseBlock | undefined): Cursor => ({
    ...nothing(tree, offset),
    role: 'key',
    path,
    siblings: block === undefined ? [] : siblingsOf(block, undefined),
    mayBeValue: path.length > 0 && (block === undefined || block.entries.length === 0),
  });
  if (before === undefined) return key([], tree.root);
  const { entry, block, path } = before;
  if (entry.value.kind === 'block' && entry.value.flow && !entry.value.closed && column > block.indent) {
    return inFlow(tree, offset, entry.value, [...path, entry.key]) ?? nothing(tree, offset);
  }
  if (entry.value.kind === 'nothing' && (entry.colon !== undefined || entry.isItem) && column > block.indent) {
    return key([...path, entry.key], undefined);
  }
  for (let level: PlacedEntry | undefined = before; level !== undefined; level = level.above) {
    if (level.block.indent === column) return level.block.list ? nothing(tree, offset) : key(level.path, level.block);
    if (level.block.indent > column) continue;
    const child = level.entry.value;
    const isParent = child.kind === 'block' && !child.flow && !child.list;
    return isParent ? key([...level.path, level.entry.key], child) : nothing(tree, offset);
  }
  return nothing(tree, offset);
}
