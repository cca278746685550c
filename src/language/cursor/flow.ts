/** `{…}` and `[…]` of the loose outline, closed or not. */
import type { BlockInMaking, EntryInMaking, ValueInMaking } from './making.ts';
import { isBlank, isComment, isLineEnd, lineEndFrom, nextLine, scanPlain, scanQuoted, skipBlanks, type Scan } from './scalars.ts';

/**
 * @param open offset of the bracket
 * @param indent column of the line that holds it; a line that stands no deeper ends what is not closed
 */
export function scanFlow(scan: Scan, open: number, indent: number, depth = 0): BlockInMaking {
  const { text } = scan;
  const list = text[open] === '[';
  const entries: EntryInMaking[] = [];
  const block = (end: number, closed: boolean): BlockInMaking => ({
    kind: 'block',
    list,
    flow: true,
    span: { start: open, end },
    closed,
    indent: -1,
    entries,
  });
  let i = open + 1;
  for (;;) {
    const slot = i;
    const at = skipGap(scan, i, indent);
    const index = String(entries.length);
    if (at === undefined || isEnd(text, at)) {
      const end = at ?? contentEnd(text, open, i);
      entries.push(emptyEntry(list ? index : '', slot, Math.max(slot, end), list));
      if (at !== undefined && text[at] !== ',') return closeOf(text, at, list) ? block(at + 1, true) : block(at, false);
      if (at === undefined) return block(Math.max(slot, end), false);
      i = at + 1;
      continue;
    }
    const entry = list ? scanItem(scan, at, indent, depth, index) : scanEntry(scan, at, indent, depth);
    entries.push(entry);
    // What stands between a value and the next comma says nothing.
    let after: number | undefined = entry.region.end;
    while (after !== undefined && after < text.length && !isEnd(text, after)) after = skipGap(scan, after, indent, true);
    if (after === undefined || after >= text.length) {
      const end = Math.max(entry.region.end, contentEnd(text, open, after ?? entry.region.end));
      entry.region = { start: slot, end };
      return block(end, false);
    }
    entry.region = { start: slot, end: after };
    if (text[after] !== ',') return closeOf(text, after, list) ? block(after + 1, true) : block(after, false);
    i = after + 1;
  }
}

/** Deeper brackets are read as text: the format needs six levels at most. */
const MOST_DEPTH = 40;

function scanEntry(scan: Scan, start: number, indent: number, depth: number): EntryInMaking {
  const { text } = scan;
  const quoted = text[start] === '"' || text[start] === "'";
  const key = quoted ? scanQuoted(text, start) : scanPlain(text, start, (at) => ',{}[]'.includes(text[at]!) || isColon(text, at));
  const colon = skipBlanks(text, key.end);
  const keySpan = quoted ? { start, end: key.end } : key.scalar.span;
  const name = text.slice(key.scalar.span.start, key.scalar.span.end);
  if (text[colon] !== ':') {
    const region = { start, end: Math.max(key.end, start + 1) };
    return { key: name, keySpan, colon: undefined, isItem: false, value: { kind: 'nothing' }, region };
  }
  const { value, end } = scanValue(scan, colon + 1, indent, depth);
  return { key: name, keySpan, colon, isItem: false, value, region: { start, end } };
}

function scanItem(scan: Scan, start: number, indent: number, depth: number, index: string): EntryInMaking {
  const { value, end } = scanValue(scan, start, indent, depth);
  return {
    key: index,
    keySpan: { start, end: start },
    colon: undefined,
    isItem: true,
    value,
    region: { start, end: Math.max(end, start + 1) },
  };
}

function scanValue(scan: Scan, from: number, indent: number, depth: number): { readonly value: ValueInMaking; readonly end: number } {
  const { text } = scan;
  const gap = skipGap(scan, from, indent);
  const start = gap === undefined ? undefined : skipBlanks(text, gap);
  if (start === undefined || start >= text.length || isEnd(text, start)) return { value: { kind: 'nothing' }, end: gap ?? from };
  if ((text[start] === '{' || text[start] === '[') && depth < MOST_DEPTH) {
    const block = scanFlow(scan, start, indent, depth + 1);
    return { value: block, end: block.span.end };
  }
  if (text[start] === '"' || text[start] === "'") {
    const { scalar, end } = scanQuoted(text, start);
    return { value: scalar, end };
  }
  const { scalar, end } = scanPlain(text, start, endOfFormula(text, start));
  return { value: scalar, end: Math.max(end, start + (scalar.span.end > start ? 0 : 1)) };
}

/** A comma within parentheses belongs to a formula that lacks its quotes, unless a key follows it: then a parenthesis is missing. */
function endOfFormula(text: string, start: number): (at: number) => boolean {
  let open = 0;
  let seen = start;
  return (at) => {
    for (; seen < at; seen++) {
      if (text[seen] === '(') open++;
      else if (text[seen] === ')') open--;
    }
    const character = text[at]!;
    if (character === '}' || character === ']') return true;
    return character === ',' && (open <= 0 || KEY_NEXT.test(text.slice(at, at + KEY_LENGTH)));
  };
}

const KEY_NEXT = /^,\s*[a-z_]+:(?:\s|$)/;
const KEY_LENGTH = 40;

/** Behind blanks, line ends and comments; undefined where the brackets must be given up. @param past to leave one character behind */
function skipGap(scan: Scan, start: number, indent: number, past = false): number | undefined {
  const { text, comments } = scan;
  let i = start + (past ? (isLineEnd(text, start) || isBlank(text, start) || isComment(text, start) ? 0 : 1) : 0);
  while (i < text.length) {
    if (isBlank(text, i)) i++;
    else if (isComment(text, i)) {
      const end = lineEndFrom(text, i);
      comments.push({ start: i, end });
      i = end;
    } else if (isLineEnd(text, i)) {
      const line = nextLine(text, i);
      if (givenUp(text, line, indent)) return undefined;
      i = line;
    } else return i;
  }
  return undefined;
}

/** Whether a line with something on it stands no deeper than the line that opened the bracket. Empty lines and comments say nothing. */
function givenUp(text: string, line: number, indent: number): boolean {
  let i = line;
  while (isBlank(text, i)) i++;
  if (i >= text.length || isLineEnd(text, i) || text[i] === '#') return false;
  return i - line <= indent && !',]}'.includes(text[i]!);
}

function isEnd(text: string, at: number): boolean {
  return text[at] === ',' || text[at] === '}' || text[at] === ']';
}

/** The other kind of bracket ends what holds this one. */
function closeOf(text: string, at: number, list: boolean): boolean {
  return text[at] === (list ? ']' : '}');
}

function isColon(text: string, at: number): boolean {
  return text[at] === ':' && (at + 1 >= text.length || ' \t\r\n,]}'.includes(text[at + 1]!));
}

/** Where the last line with something on it ends. */
function contentEnd(text: string, open: number, from: number): number {
  let end = from;
  while (end > open + 1 && isLineEnd(text, end - 1)) end--;
  return lineEndFrom(text, end);
}

function emptyEntry(key: string, start: number, end: number, isItem: boolean): EntryInMaking {
  return { key, keySpan: { start: end, end }, colon: undefined, isItem, value: { kind: 'nothing' }, region: { start, end } };
}
