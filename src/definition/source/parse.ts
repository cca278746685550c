/**
 * From text to source tree, with every mistake of YAML said in this project's words at its place.
 *
 * A mistake often makes the YAML library take the rest of the file for something else (a bracket too many, an
 * unclosed quote, a line indented under a finished value). So that a half-written file still shows what can be
 * shown, the text of such a mistake is replaced by as many spaces, which moves nothing, and the file is parsed
 * again; that happens a few times at most.
 */
import { Composer, Lexer, Parser, type CST, type Document, type YAMLError } from 'yaml';
import type { Problem } from '../problem.ts';
import type { Span } from '../span.ts';
import { convert } from './convert.ts';
import { mishapOf, tabs, type Mishap } from './mishap.ts';
import type { SourceNode } from './tree.ts';

/** The tree of a file, and the mistakes of YAML in it. */
export interface ParsedSource {
  /** Undefined where there is nothing to read. */
  readonly root: SourceNode | undefined;
  readonly problems: readonly Problem[];
  /** Whether tabs have put lines out of place: whatever else is found wrong in the tree may come from that. */
  readonly misplaced: boolean;
}

/** @param text the whole file, as in the editor; its size has been checked. */
export function parseSource(text: string): ParsedSource {
  const problems: Problem[] = [];
  const masks: Span[] = [];
  let tabbed: Problem | undefined;
  // To YAML a lone CR ends a line too, which the library does not know.
  let masked = text.replace(/\r(?!\n)/g, '\n');
  const rounds = Math.max(LEAST_ROUNDS, Math.min(MOST_ROUNDS, Math.floor(PARSED_CHARACTERS / text.length)));
  for (let round = 1; ; round++) {
    const { documents, tooDeep } = compose(masked);
    const document = documents[0]?.document;
    if (tooDeep !== undefined) problems.push(tooDeepProblem(tooDeep));
    const errors = document === undefined ? [] : [...document.errors, ...document.warnings];
    const mishaps = errors.slice(0, MAX_MISHAPS).map((error) => mishapOf(error, masked));
    if (round === 1 && errors.length < GARBAGE) {
      const hidden = hiddenTabs(errors, masked);
      if (hidden !== undefined) mishaps.unshift(hidden);
    }
    const swallowing =
      round < rounds && errors.length < GARBAGE && tooDeep === undefined ? mishaps.find((mishap) => mishap?.mask !== undefined) : undefined;
    if (swallowing?.mask !== undefined) {
      problems.push(swallowing.problem);
      if (swallowing.lossless === true) tabbed = swallowing.problem;
      else masks.push(...swallowing.mask);
      masked = swallowing.mask.reduce(blank, masked);
      continue;
    }
    const converted = convert(document?.contents ?? null, masked, masks, damagesOf(mishaps));
    if (tabbed !== undefined && mishaps.some((mishap) => mishap !== undefined))
      return { root: converted.root, problems: [tabbed], misplaced: true };
    for (const mishap of mishaps) if (mishap !== undefined) problems.push(mishap.problem);
    const second = documents[1];
    if (second !== undefined) problems.push(secondDocumentProblem(second.start));
    const { root } = converted;
    // Of a file that is indented by tabs that is told first, and not what it lacks besides.
    const whole = root?.kind === 'map' && tabbed !== undefined ? { ...root, damaged: true } : root;
    return { root: whole, problems: [...problems, ...converted.problems], misplaced: false };
  }
}

function damagesOf(mishaps: readonly (Mishap | undefined)[]): readonly Span[] {
  return mishaps.flatMap((mishap) => (mishap === undefined ? [] : [mishap.problem.span]));
}

/** Tabs in the indentation that the library takes for something else, as inside brackets: fewer mistakes are left without them. */
function hiddenTabs(errors: readonly YAMLError[], text: string): Mishap | undefined {
  if (errors.length === 0 || errors.some((error) => error.code === 'TAB_AS_INDENT')) return undefined;
  const first = /^[ \t]*\t[ \t]*(?=\S)/m.exec(text);
  if (first === null) return undefined;
  const mishap = tabs({ start: first.index, end: first.index + 1 }, text);
  const document = compose((mishap.mask ?? []).reduce(blank, text)).documents[0]?.document;
  return document !== undefined && document.errors.length < errors.length ? mishap : undefined;
}

/** Nesting beyond anything the format has; the library's composer is recursive. */
const MAX_DEPTH = 60;
/** A file is parsed again as often as its size leaves time for. */
const LEAST_ROUNDS = 2;
const MOST_ROUNDS = 6;
const PARSED_CHARACTERS = 500_000;
/** Mistakes of YAML told at once: what follows the first few is seldom worth reading. */
const MAX_MISHAPS = 20;

/** Mistakes beyond which a text is no throttle file gone wrong, and reading it again is of no use. */
const GARBAGE = 5_000;

/** Tokens that belong to nothing; a text with more of them is not worth taking apart to its end. */
const MAX_STRAYS = 2_000;

interface ComposedDocument {
  readonly document: Document.Parsed;
  /** Offset of its `---`, or of the file's start. */
  readonly start: number;
}

function compose(text: string): { documents: ComposedDocument[]; tooDeep: number | undefined } {
  const tokens: CST.Token[] = [];
  const parser = new Parser();
  let offset = 0;
  let tooDeep: number | undefined;
  let strays = 0;
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) {
      tokens.push(token);
      if (token.type === 'error') strays++;
    }
    if (strays > MAX_STRAYS) break;
    if (parser.stack.length > MAX_DEPTH) {
      tooDeep = offset;
      break;
    }
    if (!MARKERS.has(lexeme)) offset += lexeme.length;
  }
  for (const token of parser.end()) tokens.push(token);
  const starts = tokens.flatMap((token) => (token.type === 'document' ? [documentStart(token)] : []));
  const composer = new Composer({ schema: 'failsafe', uniqueKeys: false, merge: false });
  const documents: ComposedDocument[] = [];
  for (const document of composer.compose(tokens, false, text.length)) {
    documents.push({ document, start: starts[documents.length] ?? 0 });
    if (documents.length === 2) break;
  }
  return { documents, tooDeep };
}

/** Lexemes by which the lexer marks document, flow end and scalar; they stand for no text. */
const MARKERS: ReadonlySet<string> = new Set(['\u0002', '\u0018', '\u001f']);

function documentStart(document: CST.Document): number {
  return document.start.find((token) => token.type === 'doc-start')?.offset ?? document.offset;
}

function blank(text: string, span: Span): string {
  return text.slice(0, span.start) + text.slice(span.start, span.end).replace(/[^\r\n]/g, ' ') + text.slice(span.end);
}

function tooDeepProblem(offset: number): Problem {
  return {
    code: 'yaml-syntax',
    severity: 'error',
    span: { start: offset, end: offset + 1 },
    message: `More than ${MAX_DEPTH} levels of nesting`,
    cure: 'The format needs six at most; what follows is not read',
  };
}

function secondDocumentProblem(start: number): Problem {
  return {
    code: 'multiple-documents',
    severity: 'error',
    span: { start, end: start + 3 },
    message: 'A second document begins here; a throttle file is one document',
    cure: 'Remove the line `---`, or move what follows into a file of its own',
  };
}
