/**
 * Whether the edits of a problem are the only right answer. A word that stands nearest to a wrong one is that only where no other word
 * that could be meant stands as near; turning a joint round is a guess always.
 */
import type { ProblemCode } from '../definition/codes.ts';
import { nearestWord } from '../definition/names.ts';
import type { Problem } from '../definition/problem.ts';
import { UNITS } from '../definition/quantity/units.ts';
import { file } from '../definition/schema/file.ts';
import { keysAt } from '../definition/schema/walk.ts';
import type { About } from '../definition/schema/shape.ts';
import { parseSource } from '../definition/source/parse.ts';
import type { SourceNode } from '../definition/source/tree.ts';

/** Judges the problems of one text, which is taken apart once and only where it must be. */
export function judgeOf(text: string): (problem: Problem) => boolean {
  let root: SourceNode | undefined;
  let words: ReadonlySet<string> | undefined;
  const source: Source = {
    text,
    root: () => (root ??= parseSource(text).root),
    words: () => (words ??= wordsOf(source.root())),
  };
  return (problem) => hasOneAnswer(source, problem);
}

interface Source {
  readonly text: string;
  root(): SourceNode | undefined;
  words(): ReadonlySet<string>;
}

function hasOneAnswer(source: Source, { code, replacements: edits = [] }: Problem): boolean {
  if (GUESSES.has(code)) return false;
  const [edit, second] = edits;
  if (edit === undefined || second !== undefined || !SPELLINGS.has(code)) return edit !== undefined;
  const written = source.text.slice(edit.span.start, edit.span.end);
  // What is not near is no slip of the pen: a synonym, a missing space.
  if (nearestWord(written, [edit.text]) === undefined) return true;
  const others = [...candidates(source, code, edit.span.start)].filter((word) => word !== edit.text && word !== written);
  for (let from = 0; from < others.length; from += AT_ONCE) {
    // The first of equally near words is taken: the last is taken only where it is nearer than all before it.
    if (nearestWord(written, [...others.slice(from, from + AT_ONCE), edit.text]) !== edit.text) return false;
  }
  return true;
}

/** Of two levers that drive each other, only the person knows which does; two signed terms may be meant for a sum. */
const GUESSES: ReadonlySet<ProblemCode> = new Set(['load-path-loop', 'driven-twice', 'not-driven', 'bad-tolerance']);

/** Codes whose edits may be the nearest of several words. */
const SPELLINGS: ReadonlySet<ProblemCode> = new Set(['unknown-key', 'unknown-name', 'unknown-unit', 'wrong-value']);

/** As many words as are looked at for one. */
const AT_ONCE = 250;

/** What the word may have been meant for. */
function candidates({ root, words }: Source, code: ProblemCode, at: number): Iterable<string> {
  if (code === 'unknown-unit') return UNITS.keys();
  const path = code === 'unknown-key' ? pathTo(root(), at) : undefined;
  const keys = path === undefined ? undefined : keysAt(path);
  return keys === undefined || keys.size === 0 ? words() : keys.keys();
}

/** Keys and list places to the block in which a key begins at an offset; undefined where none does. */
function pathTo(node: SourceNode | undefined, at: number): readonly string[] | undefined {
  if (node === undefined || node.kind === 'scalar' || node.kind === 'empty' || at < node.span.start || at > node.span.end) return undefined;
  if (node.kind === 'map' && node.entries.some(({ keySpan }) => keySpan.start === at)) return [];
  const inner = node.kind === 'list' ? node.items.map((value, i) => ({ key: String(i), value })) : node.entries;
  for (const { key, value } of inner) {
    const path = pathTo(value, at);
    if (path !== undefined) return [key, ...path];
  }
  return undefined;
}

/** Every key and word of the format, and every key of the file, which its names are among. */
function wordsOf(root: SourceNode | undefined): ReadonlySet<string> {
  const words = new Set(formatWords());
  addKeys(root, words, new Set());
  return words;
}

let known: readonly string[] | undefined;

function formatWords(): readonly string[] {
  if (known !== undefined) return known;
  const words = new Set<string>();
  addWords(file.about, words);
  known = [...words];
  return known;
}

function addWords(about: About, words: Set<string>): void {
  switch (about.kind) {
    case 'record':
      for (const [key, { shape }] of Object.entries(about.keys)) {
        words.add(key);
        addWords(shape, words);
      }
      break;
    case 'choice':
      for (const word of Object.keys(about.choices)) words.add(word);
      break;
    case 'map':
    case 'list':
      addWords(about.of, words);
      break;
    case 'pair':
      addWords(about.first, words);
      addWords(about.second, words);
      break;
    case 'either':
      for (const form of about.forms) addWords(form, words);
      break;
    default:
  }
}

/** @param seen a node may stand at several places */
function addKeys(node: SourceNode | undefined, words: Set<string>, seen: Set<SourceNode>): void {
  if (node === undefined || seen.has(node)) return;
  seen.add(node);
  if (node.kind === 'list') for (const item of node.items) addKeys(item, words, seen);
  if (node.kind !== 'map') return;
  for (const { key, value } of node.entries) {
    words.add(key);
    addKeys(value, words, seen);
  }
}
