/**
 * From text to source tree, with every mistake of YAML said in this project's words at its place.
 *
 * A mistake often makes the YAML library take the rest of the file for something else (a bracket too many, an
 * unclosed quote, a line indented under a finished value). So that a half-written file still shows what can be
 * shown, the text of such a mistake is replaced by as many spaces, which moves nothing, and the file is parsed
 * again; that happens a few times at most.
 */
import type { YAMLError } from 'yaml';
import type { Problem } from '../problem.ts';
import type { Span } from '../span.ts';
import { compose, MAX_DEPTH } from './compose.ts';
import { convert } from './convert.ts';
import { withColon, type Colonless } from './colonless.ts';
import { blank, mishapOf, tabs, type Mishap } from './mishap.ts';
import { parseSections } from './parseSections.ts';
import type { SourceNode } from './tree.ts';

/** The tree of a file, and the mistakes of YAML in it. */
export interface ParsedSource {
  /** Undefined where there is nothing to read. */
  readonly root: SourceNode | undefined;
  readonly problems: readonly Problem[];
  /** Whether tabs have put lines out of place: whatever else is found wrong in the tree may come from that. */
  readonly misplaced: boolean;
}

/**
 * What did not change since a text that was parsed before is taken from there, which is not to be told from parsing it anew.
 * @param text the whole file, as in the editor; its size has been checked.
 */
export function parseSource(text: string): ParsedSource {
  const read = parseSections(withLineFeeds(text));
  return read === undefined ? parseWhole(text) : { ...read, misplaced: false };
}

/** The same, all of it anew. */
export function parseWhole(text: string): ParsedSource {
  const problems: Problem[] = [];
  const masks: Span[] = [];
  const colonless: Colonless[] = [];
  let tabbed: Problem | undefined;
  let masked = withLineFeeds(text);
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
    const swallowing = round < rounds && errors.length < GARBAGE && tooDeep === undefined ? mishaps.find(isSwallowing) : undefined;
    if (swallowing?.colonless !== undefined) {
      problems.push(swallowing.problem);
      colonless.push(swallowing.colonless);
      masked = withColon(masked, swallowing.colonless);
      continue;
    }
    if (swallowing?.mask !== undefined) {
      problems.push(swallowing.problem);
      if (swallowing.lossless === true) tabbed = swallowing.problem;
      else masks.push(...swallowing.mask);
      masked = swallowing.mask.reduce(blank, masked);
      continue;
    }
    const converted = convert(document?.contents ?? null, masked, { masks, damages: damagesOf(mishaps), colonless });
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

function isSwallowing(mishap: Mishap | undefined): boolean {
  return mishap?.mask !== undefined || mishap?.colonless !== undefined;
}

/** To YAML a lone CR ends a line too, which the library does not know. */
function withLineFeeds(text: string): string {
  return text.replace(/\r(?!\n)/g, '\n');
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

/** A file is parsed again as often as its size leaves time for. */
const LEAST_ROUNDS = 2;
const MOST_ROUNDS = 6;
const PARSED_CHARACTERS = 500_000;
/** Mistakes of YAML told at once: what follows the first few is seldom worth reading. */
const MAX_MISHAPS = 20;

/** Mistakes beyond which a text is no throttle file gone wrong, and reading it again is of no use. */
const GARBAGE = 5_000;

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
