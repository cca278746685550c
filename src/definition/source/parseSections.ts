/**
 * A file parsed section by section, of which those that stood in a text before are kept.
 *
 * From one version of a text to the next nearly all sections stay the same letter by letter; at most they stand elsewhere. What is kept
 * hangs on the letters of a section alone, so that nothing but the time that reading takes tells of it.
 */
import { isMap } from 'yaml';
import type { ProblemCode } from '../codes.ts';
import type { Problem } from '../problem.ts';
import type { Span } from '../span.ts';
import { compose } from './compose.ts';
import { convert, firstOfEach } from './convert.ts';
import { movedEntry, movedProblem } from './moved.ts';
import { sectionsOf, type Block } from './sections.ts';
import type { SourceEntry, SourceMap } from './tree.ts';

/** The tree of a file that was parsed section by section. */
export interface ParsedSections {
  readonly root: SourceMap;
  readonly problems: readonly Problem[];
}

/**
 * @param text without lone CR
 * @returns undefined where sections do not tell what the file is: a mistake of YAML is in it, or something unusual as an anchor or a tag
 */
export function parseSections(text: string): ParsedSections | undefined {
  const sections = sectionsOf(text);
  if (sections === undefined || sections.length > MOST_SECTIONS) return undefined;
  forget();
  const entries: SourceEntry[] = [];
  const problems: Problem[] = [];
  for (const { span, block } of sections) {
    const read = block === undefined ? entriesAt(span, IN_FILE, text, problems) : readBlock(block, span.start, text, problems);
    if (read === undefined) return undefined;
    entries.push(...read);
  }
  // Of a text with a mistake the sections behind it are not asked for, and yet will be.
  texts++;
  const root = mapOf(entries, problems);
  return root === undefined ? undefined : { root, problems };
}

function readBlock({ key, entries }: Block, start: number, text: string, problems: Problem[]): readonly SourceEntry[] | undefined {
  const read: SourceEntry[] = [];
  for (const span of entries) {
    const some = entriesAt(span, IN_BLOCK, text, problems);
    if (some === undefined) return undefined;
    read.push(...some);
  }
  const value = mapOf(read, problems);
  if (value === undefined) return undefined;
  return [{ key, keySpan: { start, end: start + key.length }, span: { start, end: value.span.end }, value }];
}

/** Undefined where there is no entry. */
function mapOf(entries: readonly SourceEntry[], problems: Problem[]): SourceMap | undefined {
  const [first, last] = [entries[0], entries.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  const span = { start: first.keySpan.start, end: last.span.end };
  return { kind: 'map', span, flow: false, entries: firstOfEach(entries, problems), damaged: false };
}

/** Stands before the entries of a block while they are parsed, so that they are what they are in the file: in a block within a block. */
const IN_BLOCK = 'p:\n';
const IN_FILE = '\n';

/** What stands in a section. */
interface Content {
  readonly entries: readonly SourceEntry[];
  readonly problems: readonly Problem[];
}

/** A section as it was when it was last asked for. */
interface Kept {
  start: number;
  /** Undefined where the section by itself does not tell what it is in the file. */
  content: Content | undefined;
}

/** The entries that stand in a stretch of the text. @param parent what it stands below */
function entriesAt({ start, end }: Span, parent: string, text: string, problems: Problem[]): readonly SourceEntry[] | undefined {
  const written = text.slice(start, end);
  // Entries of a block begin with a blank, a line end or a comment, keys of the file with a letter: one is not taken for the other.
  const kept = recent.get(written) ?? keep(written, parent);
  if (kept.start !== start) {
    kept.content = kept.content && moved(kept.content, start - kept.start);
    kept.start = start;
  }
  if (kept.content !== undefined) problems.push(...kept.content.problems);
  return kept.content?.entries;
}

function moved({ entries, problems }: Content, by: number): Content {
  return { entries: entries.map((entry) => movedEntry(entry, by)), problems: problems.map((problem) => movedProblem(problem, by)) };
}

function keep(written: string, parent: string): Kept {
  const source = parent + written;
  const kept = before.get(written) ?? { start: parent.length, content: parse(source, parent) };
  // A slice of the whole text would hold all of it.
  recent.set(source.slice(parent.length), kept);
  characters += written.length;
  return kept;
}

function parse(source: string, parent: string): Content | undefined {
  const { documents, tooDeep, farReaching } = compose(source);
  const document = documents[0]?.document;
  if (document === undefined || documents.length > 1 || tooDeep !== undefined || farReaching) return undefined;
  if (document.errors.length + document.warnings.length > 0 || !isMap(document.contents)) return undefined;
  const { root, problems } = convert(document.contents, source, [], []);
  if (root?.kind !== 'map' || !problems.every(({ code }) => WITHIN.has(code))) return undefined;
  const [outer, block] = parent === IN_FILE ? [document.contents, root] : [document.contents.items[0]?.value, root.entries[0]?.value];
  if (!isMap(outer) || block?.kind !== 'map' || block.flow || block.damaged) return undefined;
  // Keys that stand twice are told by the whole block, after all that is in it.
  return block.entries.length === outer.items.length ? { entries: block.entries, problems } : undefined;
}

/** Mistakes whose effects end where the value or the block ends in which they stand. */
const WITHIN: ReadonlySet<ProblemCode> = new Set<ProblemCode>(['duplicate-key', 'quote-formula', 'bad-quantity']);

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
