/**
 * From the text of a throttle file to its Definition: the one way in.
 */
import type { Definition, Place, Unread } from './definition.ts';
import { findLoadPath } from './loadPath.ts';
import { lostParts } from './lost.ts';
import { NAME_PATTERN, nearestWord, reservedAs } from './names.ts';
import type { Problem } from './problem.ts';
import { prune, suspectsOf } from './prune.ts';
import { checkNames, gatherNames } from './schema/declared.ts';
import { FORMAT, file } from './schema/file.ts';
import { letsAsBefore, namesAsBefore } from './schema/sameNames.ts';
import { makeScope } from './schema/scopes.ts';
import { problem, type Reading } from './schema/shape.ts';
import { settle } from './settle.ts';
import { shortened } from './schema/../source/shortened.ts';
import { parseSource } from './source/parse.ts';
import { child, entryOf, textOf, type SourceMap } from './source/tree.ts';

export interface DefinitionReading {
  /** Undefined where nothing of the file can be understood: too large, empty, no block of keys, another format. */
  readonly definition: Definition | undefined;
  /** In the order of their places. */
  readonly problems: readonly Problem[];
}

/** Largest file that is read, in bytes of UTF-8: 256 kB, a kB being 1024 bytes. */
export const LARGEST_FILE = 256 * 1024;

export function readDefinition(text: string): DefinitionReading {
  const bytes = utf8Length(text);
  if (bytes > LARGEST_FILE) return { definition: undefined, problems: [tooLarge(bytes, text)] };
  const { root, problems: syntax, misplaced } = parseSource(text);
  if (root === undefined) return { definition: undefined, problems: syntax.length > 0 ? sorted(syntax, text) : [emptyFile(text)] };
  if (root.kind !== 'map') {
    const span = { start: root.span.start, end: Math.min(root.span.end, lineEnd(text, root.span.start)) };
    const shape = problem('wrong-shape', span, 'A throttle file is a block of keys', {
      cure: `Begin with \`format: ${FORMAT}\`, then \`levers:\``,
    });
    return { definition: undefined, problems: sorted([...syntax, shape], text) };
  }
  if (misplaced) return { definition: readRoot(root).definition, problems: sorted(syntax, text) };
  const wrongFormat = checkFormat(root, text);
  if (wrongFormat?.code === 'format-unsupported') return { definition: undefined, problems: sorted([...syntax, wrongFormat], text) };
  const read = readRoot(root);
  return {
    definition: read.definition,
    problems: sorted([...syntax, ...(wrongFormat === undefined ? [] : [wrongFormat]), ...read.problems], text),
  };
}

function readRoot(root: SourceMap): { definition: Definition | undefined; problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const unread: Unread[] = [];
  const points = new Map<string, Place>();
  const declared = gatherNames(root);
  const letNames = new Set([...declared.parts.let.keys()].filter((name) => NAME_PATTERN.test(name) && reservedAs(name) === undefined));
  const pedalCable = textOf(child(child(root, 'pedal'), 'cable'));
  const scope = makeScope(declared, letNames, pedalCable !== undefined);
  let letValues: object | undefined;
  const reading: Reading = {
    report: (found) => problems.push(found),
    declared,
    letNames,
    scope,
    points,
    addPoint: (name, place) => points.set(name, place),
    pedalCable,
    figures: new Map(),
    strained: new Set(),
    names: namesAsBefore({ declared, pedalCable }),
    lets: () => (letValues ??= letsAsBefore(scope)),
    unread: (path, span) => unread.push({ path, span }),
  };
  checkNames(declared, reading.report);
  const site = { path: '', name: '', nameSpan: { start: root.span.start, end: root.span.start }, span: root.span };
  const whole = file.read(root, site, reading);
  if (whole === undefined) return { definition: undefined, problems };
  const { measured, ...linkage } = whole;
  const pruned = prune(linkage);
  const pedalless = root.damaged ? undefined : noPedal(root);
  if (pedalless !== undefined) problems.push(pedalless);
  unread.push(...lostParts(root, pruned));
  const { problems: pathProblems, undriven } = findLoadPath(pruned, suspectsOf(root, pruned));
  problems.push(...pathProblems);
  const isWhole = !root.damaged && isLinkageWhole(root, problems, unread);
  const found = {
    ...pruned,
    ...(measured !== undefined && { measured }),
    ...(unread.length > 0 && { unread }),
    ...(undriven.length > 0 && { undriven }),
  };
  return { definition: settle(found, declared, isWhole, reading.report), problems };
}

/** Whether nothing was lost but what `tune` and `measured` say themselves. */
function isLinkageWhole(root: SourceMap, problems: readonly Problem[], unread: readonly Unread[]): boolean {
  const asides = ['tune', 'measured'].flatMap((key) => entryOf(root, key) ?? []);
  const isAside = ({ start }: Unread['span']): boolean => asides.some(({ span }) => span.start <= start && start <= span.end);
  return unread.every(({ span }) => isAside(span)) && problems.every(({ severity, span }) => severity === 'warning' || isAside(span));
}

function checkFormat(root: SourceMap, text: string): Problem | undefined {
  const entry = entryOf(root, 'format');
  const cure = `Write \`format: ${FORMAT}\``;
  if (entry === undefined) {
    if (root.damaged || isMisspelt(root, 'format')) return undefined;
    const at = root.entries[0]?.keySpan ?? root.span;
    const line = text.startsWith('\ufeff') ? 1 : 0;
    return problem('format-missing', at, 'The file does not say its format', {
      cure: `${cure} as the first line`,
      replacements: root.flow
        ? undefined
        : [{ span: { start: line, end: line }, text: `format: ${FORMAT}${text.includes('\r\n') ? '\r\n' : '\n'}` }],
    });
  }
  const value = entry.value;
  if (value.kind !== 'scalar') return undefined;
  if (value.text === String(FORMAT)) return undefined;
  return problem('format-unsupported', value.span, `This program reads format ${FORMAT}, not \`${shortened(value.text)}\``, {
    cure: /^[1-9]\d*$/.test(value.text) ? 'A newer program may read it' : cure,
  });
}

/** Levers without anything that drives them. */
function noPedal(root: SourceMap): Problem | undefined {
  const levers = entryOf(root, 'levers');
  if (levers?.value.kind !== 'map' || levers.value.entries.length === 0 || entryOf(root, 'pedal') !== undefined) return undefined;
  if (isMisspelt(root, 'pedal')) return undefined;
  return problem('missing-key', levers.keySpan, 'The file has no `pedal`, so nothing moves', {
    cure: 'Write `pedal: {lever: …, opens: …, travel: …}`, or `pedal: {cable: …, pull: …}` where the pedal is not known',
  });
}

/** Whether an unknown key, told as such, was meant to be this one. */
function isMisspelt(root: SourceMap, key: string): boolean {
  return root.entries.some((entry) => !FILE_KEYS.has(entry.key) && nearestWord(entry.key, FILE_KEYS) === key);
}

const FILE_KEYS: ReadonlySet<string> = new Set(file.about.kind === 'record' ? Object.keys(file.about.keys) : []);

/** By place; equal ones once, and nothing besides a mistake of YAML at the very place of it. */
function sorted(problems: readonly Problem[], text: string): Problem[] {
  const ordered = problems
    .map((found, index) => ({ found: within(found, text.length), index }))
    .sort((a, b) => a.found.span.start - b.found.span.start || a.index - b.index);
  const spoilt = new Set(problems.filter(({ code }) => SPOILING.has(code)).map(({ span }) => span.start));
  const seen = new Set<string>();
  return ordered.flatMap(({ found }) => {
    if (!SPOILING.has(found.code) && spoilt.has(found.span.start)) return [];
    const key = `${found.code} ${found.span.start} ${found.span.end} ${found.message}`;
    if (seen.has(key)) return [];
    seen.add(key);
    return [found];
  });
}

/** Held to the text: what is missing at its end has no character of its own. */
function within(found: Problem, length: number): Problem {
  const { start, end } = found.span;
  if (end <= length) return found;
  return { ...found, span: { start: Math.min(start, length), end: length } };
}

const SPOILING: ReadonlySet<string> = new Set(['yaml-syntax', 'quote-formula']);

function tooLarge(bytes: number, text: string): Problem {
  return problem(
    'file-too-large',
    { start: 0, end: lineEnd(text, 0) },
    `The file has ${Math.ceil(bytes / 1024)} kB; ${LARGEST_FILE / 1024} kB are read at most`,
    {
      cure: 'Split it, or remove what does not belong to the linkage',
    },
  );
}

function emptyFile(text: string): Problem {
  return problem('file-empty', { start: 0, end: lineEnd(text, 0) }, 'The file describes nothing yet', {
    cure: `Begin with \`format: ${FORMAT}\`, then \`levers:\``,
  });
}

function lineEnd(text: string, start: number): number {
  let end = start;
  while (end < text.length && text[end] !== '\n' && text[end] !== '\r') end++;
  return end;
}

function utf8Length(text: string): number {
  // Three bytes is the most that one UTF-16 unit takes.
  if (text.length * 3 <= LARGEST_FILE) return text.length;
  let bytes = 0;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code < 0x80) bytes += 1;
    else if (code < 0x800) bytes += 2;
    else if (code >= 0xd800 && code < 0xdc00 && i + 1 < text.length) {
      bytes += 4;
      i++;
    } else bytes += 3;
  }
  return bytes;
}
