/**
 * Where a throttle file can be taken apart so that each section may be parsed by itself: at the keys of the file, and at the entries of a
 * block that stands on indented lines below its key.
 *
 * A cut stands before a line that begins with a plain key, in the column of the keys before it. Only what is still open there could
 * take that line for a part of itself: a quote or a bracket, which is a mistake of its section, or a block scalar or an anchor, which
 * `compose` tells of. So cuts between sections without any of these are those that YAML makes, whatever else stands in them.
 */
import type { Span } from '../span.ts';

/** A stretch of the file that begins with one of its keys. */
export interface Section {
  readonly span: Span;
  /** Present where its value is a block whose entries can be parsed one by one. */
  readonly block?: Block;
}

/** A key with nothing but a comment on its line, and entries below. */
export interface Block {
  readonly key: string;
  /** Each from the start of a line, all of the same indentation; one at least, comments before the first belong to it. */
  readonly entries: readonly Span[];
}

/** @returns undefined where something stands before the first key, where there is none, or where a line is indented by a tab */
export function sectionsOf(text: string): readonly Section[] | undefined {
  if (TAB_INDENT.test(text)) return undefined;
  const starts: number[] = [];
  for (let line = 0; line < text.length; line = nextLine(line, text)) {
    if (matchEnd(KEY, line, text) > line) starts.push(line);
    else if (starts.length === 0 && !isBlank(skipSpaces(line, text), text)) return undefined;
  }
  if (starts.length === 0) return undefined;
  return starts.map((start, i) => sectionAt({ start, end: starts[i + 1] ?? text.length }, text));
}

function sectionAt(span: Span, text: string): Section {
  const { start, end } = span;
  const first = matchEnd(HEAD, start, text);
  if (first < 0) return { span };
  const entries: number[] = [];
  let indentation = 0;
  for (let line = first; line < end; line = nextLine(line, text)) {
    const at = skipSpaces(line, text);
    if (isBlank(at, text)) continue;
    if (indentation === 0) indentation = at - line;
    if (indentation === 0 || at - line < indentation) return { span };
    if (at - line > indentation) continue;
    if (matchEnd(ENTRY, at, text) > at) entries.push(line);
    // Without a key on its first line there is no entry that the line could belong to.
    else if (entries.length === 0) return { span };
  }
  if (entries.length === 0) return { span };
  const key = text.slice(start, text.indexOf(':', start));
  return { span, block: { key, entries: entries.map((from, i) => ({ start: i === 0 ? first : from, end: entries[i + 1] ?? end })) } };
}

const TAB_INDENT = /^ *\t/m;
/** A key of the file. */
const KEY = /[a-z][a-z0-9_]*:(?=[ \r\n]|$)/y;
/** The same with its whole line, which has nothing but a comment besides. */
const HEAD = /[a-z][a-z0-9_]*:(?: *| +#[^\n]*)\r?\n/y;
/** A name, or the free words of a requirement. A blank in the second place would let the lexer keep the indentation of the line before. */
const ENTRY = /[A-Za-z](?! )[\w ,.-]*:(?=[ \r\n]|$)/y;

/** Where the match of a sticky pattern ends; -1 where there is none. */
function matchEnd(pattern: RegExp, at: number, text: string): number {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : -1;
}

function nextLine(line: number, text: string): number {
  const end = text.indexOf('\n', line);
  return end < 0 ? text.length : end + 1;
}

function skipSpaces(from: number, text: string): number {
  let at = from;
  while (text.charCodeAt(at) === SPACE) at++;
  return at;
}

/** Whether a line has nothing more, or a comment, from here on. */
function isBlank(at: number, text: string): boolean {
  const code = text.charCodeAt(at);
  return at >= text.length || code === LF || code === HASH || (code === CR && text.charCodeAt(at + 1) === LF);
}

const SPACE = 32;
const LF = 10;
const CR = 13;
const HASH = 35;
