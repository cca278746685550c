/**
 * A file parsed section by section, of which those that stood in a text before are kept.
 *
 * From one version of a text to the next nearly all sections stay the same letter by letter; at most they stand elsewhere. What is kept
 * hangs on the letters of a section alone, so that nothing but the time that reading takes tells of it. One section may have a word in it that
 * is being typed.
 */
import type { Problem } from '../problem.ts';
import type { Span } from '../span.ts';
import { firstOfEach, isTouched } from './convert.ts';
import { movedEntry, movedProblem, movedSpan } from './moved.ts';
import { IN_BLOCK, IN_FILE, parseSection, parseSpoilt, type Content, type Spoilt } from './parseSection.ts';
import { sectionsOf, type Block } from './sections.ts';
import type { SourceEntry, SourceMap } from './tree.ts';

/** The tree of a file that was parsed section by section. */
export interface ParsedSections {
  readonly root: SourceMap;
  readonly problems: readonly Problem[];
}

/**
 * @param text without lone CR
 * @returns undefined where sections do not tell what the file is: more is wrong with its YAML than one word that is being typed, or something
 * unusual is in it, as an anchor or a tag
 */
export function parseSections(text: string): ParsedSections | undefined {
  const sections = sectionsOf(text);
  if (sections === undefined || sections.length > MOST_SECTIONS) return undefined;
  forget();
  const parsing: Parsing = { text, problems: [], spoilt: undefined };
  const entries: SourceEntry[] = [];
  for (const [i, { span, block }] of sections.entries()) {
    const next = i + 1 < sections.length ? 0 : undefined;
    const read = block === undefined ? entriesAt({ span, parent: IN_FILE, next }, parsing) : readBlock(block, span.start, next, parsing);
    if (read === undefined) return undefined;
    entries.push(...read);
  }
  // Of a text with a mistake the sections behind it are not asked for, and yet will be.
  texts++;
  const root = mapOf(entries, parsing);
  const { problems, spoilt } = parsing;
  return root === undefined ? undefined : { root, problems: spoilt === undefined ? problems : [spoilt.slip, ...problems] };
}

/** What is known of a text while it is parsed. */
interface Parsing {
  readonly text: string;
  readonly problems: Problem[];
  /** The one section that is not sound. */
  spoilt: Spoilt | undefined;
}

function readBlock({ key, entries }: Block, start: number, next: number | undefined, parsing: Parsing): readonly SourceEntry[] | undefined {
  const read: SourceEntry[] = [];
  for (const [i, span] of entries.entries()) {
    const following = entries[i + 1];
    const indentation = following === undefined ? next : parsing.text.slice(following.start).search(/[^ ]/);
    const some = entriesAt({ span, parent: IN_BLOCK, next: indentation }, parsing);
    if (some === undefined) return undefined;
    read.push(...some);
  }
  const value = mapOf(read, parsing);
  if (value === undefined) return undefined;
  return [{ key, keySpan: { start, end: start + key.length }, span: { start, end: value.span.end }, value }];
}

/** Undefined where there is no entry. */
function mapOf(entries: readonly SourceEntry[], { text, problems, spoilt }: Parsing): SourceMap | undefined {
  const [first, last] = [entries[0], entries.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  const span = { start: first.keySpan.start, end: last.span.end };
  const damaged = spoilt !== undefined && isTouched(span, spoilt.masks, text);
  return { kind: 'map', span, flow: false, entries: firstOfEach(entries, problems), damaged };
}

/** A section and where it stands. */
interface Placed {
  readonly span: Span;
  /** What it stands below. */
  readonly parent: string;
  /** Indentation of the section behind it; undefined where there is none. */
  readonly next: number | undefined;
}

/** A section as it was when it was last asked for. */
interface Kept {
  start: number;
  /** Undefined where the section by itself does not tell what it is in the file. */
  content: Content | undefined;
}

/** The entries that stand in a section. */
function entriesAt(placed: Placed, parsing: Parsing): readonly SourceEntry[] | undefined {
  const { start, end } = placed.span;
  const written = parsing.text.slice(start, end);
  // Entries of a block begin with a blank, a line end or a comment, keys of the file with a letter: one is not taken for the other.
  const kept = recent.get(written) ?? keep(written, placed.parent);
  if (kept.start !== start) {
    kept.content = kept.content && moved(kept.content, start - kept.start);
    kept.start = start;
  }
  const content = kept.content ?? spoiltAt(placed, written, parsing);
  if (content !== undefined) parsing.problems.push(...content.problems);
  return content?.entries;
}

/** Of a text only one: with two slips in it the library may say other things of both. */
function spoiltAt({ span, parent, next }: Placed, written: string, parsing: Parsing): Content | undefined {
  if (parsing.spoilt !== undefined) return undefined;
  const spoilt = parseSpoilt(parent + written, parent, next);
  if (spoilt === undefined) return undefined;
  const by = span.start - parent.length;
  const { slip, masks } = spoilt;
  parsing.spoilt = { ...moved(spoilt, by), slip: movedProblem(slip, by), masks: masks.map((mask) => movedSpan(mask, by)) };
  return parsing.spoilt;
}

function moved({ entries, problems }: Content, by: number): Content {
  return { entries: entries.map((entry) => movedEntry(entry, by)), problems: problems.map((problem) => movedProblem(problem, by)) };
}

function keep(written: string, parent: string): Kept {
  const source = parent + written;
  const kept = before.get(written) ?? { start: parent.length, content: parseSection(source, parent) };
  // A slice of the whole text would hold all of it.
  recent.set(source.slice(parent.length), kept);
  characters += written.length;
  return kept;
}

/** What neither the last few texts had nor those before them is forgotten. */
function forget(): void {
  if (texts < TEXTS_KEPT && characters < CHARACTERS_KEPT) return;
  before = recent;
  recent = new Map();
  texts = 0;
  characters = 0;
}

let recent = new Map<string, Kept>();
let before = new Map<string, Kept>();
/** Counted since `before` was what is recent. */
let texts = 0;
let characters = 0;

/** As few as hold the files that are open side by side and their earlier versions. */
const TEXTS_KEPT = 16;
/** Twice the largest file; its tree takes some twenty bytes for each. */
const CHARACTERS_KEPT = 512 * 1024;
/** Beyond what a linkage has: a text that is nothing but keys is not worth it. */
const MOST_SECTIONS = 4000;
