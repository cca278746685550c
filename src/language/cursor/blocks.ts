/** Lines of the loose outline: keys by their column, lists by their dashes. */
import { scanFlow } from './flow.ts';
import type { LooseTree } from './looseTree.ts';
import type { BlockInMaking, EntryInMaking, PlacedInMaking, ValueInMaking } from './making.ts';
import { isBlank, isComment, isLineEnd, lineEndFrom, nextLine, scanPlain, scanQuoted, skipBlanks, type Scan } from './scalars.ts';

interface OpenBlock {
  readonly block: BlockInMaking;
  readonly path: readonly string[];
  readonly above: PlacedInMaking | undefined;
}

interface Lines extends Scan {
  readonly placed: PlacedInMaking[];
  /** Blocks around the line that is read, the root first. */
  readonly open: OpenBlock[];
}

export function scanBlocks(text: string): LooseTree {
  const root = blockOf(0, 0, false);
  const lines: Lines = { text, comments: [], placed: [], open: [{ block: root, path: [], above: undefined }] };
  let at = text.startsWith('\ufeff') ? 1 : 0;
  while (at < text.length) {
    let start = at;
    while (isBlank(text, start)) start++;
    const end = readLine(lines, start, start - at, undefined);
    at = nextLine(text, lineEndFrom(text, end));
  }
  return { text, root: flowRoot(root) ?? root, placed: lines.placed, comments: lines.comments };
}

/** A file that is one pair of brackets. */
function flowRoot(root: BlockInMaking): BlockInMaking | undefined {
  const [only] = root.entries;
  return only?.isItem === true && !root.list && only.value.kind === 'block' ? only.value : undefined;
}

/**
 * @param start behind the blanks
 * @param column of `start`
 * @param item the dash before it
 * @returns an offset on the last line that was read
 */
function readLine(lines: Lines, start: number, column: number, item: PlacedInMaking | undefined): number {
  const { text } = lines;
  if (start >= text.length || isLineEnd(text, start)) return start;
  if (isComment(text, start)) return readComment(lines, start);
  if (column === 0 && /^(?:---|\.\.\.)(?:\s|$)/.test(text.slice(start, start + 4))) return lineEndFrom(text, start);
  const dash = text[start] === '-' && (start + 1 >= text.length || isBlank(text, start + 1) || isLineEnd(text, start + 1));
  if (dash && lines.open.length < MOST_DEPTH) {
    const held = blockAt(lines, column, start, true);
    const place = { start, end: start + 1 };
    const placed = put(lines, held, {
      key: String(held.block.entries.length),
      keySpan: { start: place.end, end: place.end },
      colon: undefined,
      isItem: true,
      value: { kind: 'nothing' },
      region: place,
    });
    const next = skipBlanks(text, start + 1);
    placed.end = lineEndFrom(text, start);
    return readLine(lines, next, column + next - start, placed);
  }
  const key = keyAt(text, start);
  if (key === undefined) {
    const holder = item ?? openEntry(lines, column);
    const character = text[start]!;
    // A word without a colon is a key that is still being written, but for an item of a list.
    if (holder !== undefined && (item !== undefined || '{["\'*|>'.includes(character))) return readValue(lines, holder, start, column);
    if (holder === undefined && lines.placed.length === 0 && (character === '{' || character === '[')) {
      const root = lines.open[0]!;
      return readValue(lines, put(lines, root, { ...bareKey('0', start, start), isItem: true }), start, -1);
    }
    const { scalar, end } = scanPlain(text, start, () => false);
    const held = blockAt(lines, column, start, false);
    const name = text.slice(scalar.span.start, scalar.span.end);
    put(lines, held, bareKey(name, scalar.span.start, scalar.span.end)).end = end;
    return readTail(lines, end);
  }
  const held = blockAt(lines, column, start, false);
  const placed = put(lines, held, {
    key: key.name,
    keySpan: { start, end: key.end },
    colon: key.colon,
    isItem: false,
    value: { kind: 'nothing' },
    region: { start, end: key.colon },
  });
  return readValue(lines, placed, key.colon + 1, column);
}

/** Deeper dashes are read as text: the format has no list of lists of lines. */
const MOST_DEPTH = 60;

/** Reads what stands behind a colon or a dash; nothing where the line ends there. */
function readValue(lines: Lines, placed: PlacedInMaking, from: number, column: number): number {
  const { text } = lines;
  const start = skipBlanks(text, from);
  const character = text[start] ?? '';
  let end = start;
  if (character === '{' || character === '[') {
    const block = scanFlow(lines, start, column);
    placed.entry.value = block;
    end = block.span.end;
  } else if (character === '|' || character === '>') {
    end = endOfBlockText(text, start, column);
    placed.entry.value = { kind: 'scalar', span: { start, end }, style: 'block', closed: true };
  } else if (character === '"' || character === "'") {
    const quoted = scanQuoted(text, start);
    placed.entry.value = quoted.scalar;
    end = quoted.end;
  } else if (start < text.length && !isLineEnd(text, start) && !isComment(text, start)) {
    const plain = scanPlain(text, start, () => false);
    placed.entry.value = plain.scalar;
    end = plain.end;
  }
  const tail = readTail(lines, end);
  placed.end = isUnclosed(placed.entry.value) ? Math.max(end, placed.end) : lineEndFrom(text, tail);
  return tail;
}

function isUnclosed(value: ValueInMaking): boolean {
  return value.kind === 'block' && !value.closed;
}

/** What follows on the line: a comment, or nothing that can be understood. */
function readTail(lines: Lines, from: number): number {
  const { text } = lines;
  let i = from;
  while (i < text.length && !isLineEnd(text, i) && !isComment(text, i)) i++;
  return isComment(text, i) ? readComment(lines, i) : i;
}

function readComment(lines: Lines, start: number): number {
  const end = lineEndFrom(lines.text, start);
  lines.comments.push({ start, end });
  return end;
}

function keyAt(text: string, start: number): { readonly name: string; readonly end: number; readonly colon: number } | undefined {
  const character = text[start]!;
  const ends = (at: number): boolean => text[at] === ':' && (at + 1 >= text.length || isBlank(text, at + 1) || isLineEnd(text, at + 1));
  if ('{[*|>'.includes(character)) return undefined;
  const quoted = character === '"' || character === "'";
  const { scalar, end } = quoted ? scanQuoted(text, start) : scanPlain(text, start, ends);
  const colon = skipBlanks(text, end);
  if (!ends(colon)) return undefined;
  return { name: text.slice(scalar.span.start, scalar.span.end), end: quoted ? end : scalar.span.end, colon };
}

/** The block to which a line at this column belongs; opened where it is a new one. */
function blockAt({ open }: Lines, column: number, start: number, list: boolean): OpenBlock {
  const root = open[0]!;
  if (root.block.entries.length === 0) {
    root.block.indent = column;
    root.block.list = list;
    root.block.span = { start, end: start };
    return root;
  }
  while (
    open.length > 1 &&
    (open.at(-1)!.block.indent > column || (!list && open.at(-1)!.block.list && open.at(-1)!.block.indent >= column))
  )
    open.pop();
  const top = open.at(-1)!;
  const last = top.block.entries.at(-1);
  if (last === undefined || (list && top.block.list && top.block.indent === column)) return top;
  const deeper = column > top.block.indent;
  const path = [...top.path, last.key];
  const opensOne = last.value.kind === 'nothing' && (last.colon !== undefined || last.isItem) && (deeper || list);
  if (opensOne) {
    const block = blockOf(column, start, list);
    last.value = block;
    open.push({ block, path, above: entryPlaces.get(last) });
  } else if (deeper && last.value.kind === 'block' && !last.value.flow && last.value.list === list) {
    open.push({ block: last.value, path, above: entryPlaces.get(last) });
  }
  return open.at(-1)!;
}

const entryPlaces = new WeakMap<EntryInMaking, PlacedInMaking>();

/** The entry above that has no value yet, where a line at this column would be its value. */
function openEntry({ placed }: Lines, column: number): PlacedInMaking | undefined {
  const last = placed.at(-1);
  if (last?.entry.value.kind !== 'nothing' || last.entry.colon === undefined) return undefined;
  return column > last.block.indent ? last : undefined;
}

function put(lines: Lines, { block, path, above }: OpenBlock, entry: EntryInMaking): PlacedInMaking {
  block.entries.push(entry);
  const placed: PlacedInMaking = { entry, block, path, above, start: entry.region.start, end: entry.region.end };
  entryPlaces.set(entry, placed);
  lines.placed.push(placed);
  return placed;
}

/** Its lines stand deeper than the key, or are empty. */
function endOfBlockText(text: string, start: number, column: number): number {
  let end = lineEndFrom(text, start);
  for (let line = nextLine(text, end); line < text.length;) {
    let i = line;
    while (isBlank(text, i)) i++;
    const lineEnd = lineEndFrom(text, i);
    if (lineEnd > i) {
      if (i - line <= column) break;
      end = lineEnd;
    }
    line = lineEnd >= text.length ? text.length : nextLine(text, lineEnd);
  }
  return end;
}

function bareKey(key: string, start: number, end: number): EntryInMaking {
  return { key, keySpan: { start, end }, colon: undefined, isItem: false, value: { kind: 'nothing' }, region: { start, end } };
}

function blockOf(indent: number, start: number, list: boolean): BlockInMaking {
  return { kind: 'block', list, flow: false, span: { start, end: start }, closed: true, indent, entries: [] };
}
