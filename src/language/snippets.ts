/**
 * Blocks and parts as they may be written, with tab stops, made from the reader's own tables: the keys that must be there, each with
 * the example that stands beside it there, and with names of the file where a name is asked.
 *
 * In the syntax of TextMate snippets as editors have it: `${1:text}` a stop, `${1|one,two|}` a stop with choices, `\` before `$ } \`.
 */
import type { About, KeyAbout } from '../definition/schema/shape.ts';
import type { LooseTree, LooseValue } from './cursor/looseTree.ts';
import { looseNames, looseParts } from './cursor/looseNames.ts';
import { scanFlow } from './cursor/flow.ts';
import { formsOf, type RecordAbout } from './places.ts';

/** One way of writing a part. */
export interface PartSnippet {
  /** E.g. `rod`, or `spring with lever, rate` where there are several ways. */
  readonly label: string;
  /** From its name on. */
  readonly body: string;
}

/** A key with its value. @param flow whether it stands in brackets */
export function keySnippet(tree: LooseTree, name: string, key: KeyAbout, flow: boolean): string {
  const writer = createWriter(tree);
  const value = valueBody(writer, key, flow, 1);
  return `${escaped(name)}:${value.startsWith('\n') || value === '' ? '' : ' '}${value}`;
}

/** The value of a key by itself, on one line. @param flow whether the key stands in brackets */
export function valueSnippet(tree: LooseTree, key: KeyAbout, flow: boolean): string {
  // A text that is no block is the same in lines but for quotes that it does not need there.
  return valueBody(createWriter(tree), key, flow || key.shape.kind !== 'text', 0);
}

/**
 * All ways of writing one part of a map, from its name on.
 * @param example of the map's key, whose first entry is taken where the map's values are no blocks
 * @param taken names that are used already
 */
export function partSnippets(
  tree: LooseTree,
  map: Extract<About, { kind: 'map' }>,
  example: string | undefined,
  flow: boolean,
  taken: readonly string[],
): readonly PartSnippet[] {
  const records = formsOf(map.of).filter((form): form is RecordAbout => form.kind === 'record');
  const name = freeName(tree, firstEntry(example)?.key ?? nameFor(map.what), taken);
  if (records.length === 0) {
    const value = firstEntry(example)?.value;
    if (value === undefined) return [];
    const writer = createWriter(tree);
    return [{ label: map.what, body: `${writer.stop(name)}: ${exampleBody(writer, flow ? value : unquoted(value))}` }];
  }
  const ways = records.flatMap((record) => waysOf(record, map.what).map((keys) => ({ record, keys })));
  return ways.map(({ record, keys }) => {
    const writer = createWriter(tree);
    const head = writer.stop(name);
    const body = recordBody(writer, record, keys, flow, 1);
    const label = ways.length === 1 ? map.what : `${map.what} with ${distinction(keys, ways).join(', ')}`;
    return { label, body: `${head}:${body.startsWith('\n') ? '' : ' '}${body}` };
  });
}

/** The ways of writing a key's block, where there are several; none where there is one. */
export function blockSnippets(tree: LooseTree, name: string, key: KeyAbout): readonly PartSnippet[] {
  if (key.shape.kind !== 'record') return [];
  const record = key.shape;
  const ways = waysOf(record, undefined);
  if (ways.length < 2) return [];
  return ways.map((keys) => ({
    label: `${name} with ${distinction(
      keys,
      ways.map((each) => ({ keys: each })),
    ).join(', ')}`,
    body: `${escaped(name)}: ${recordBody(createWriter(tree), record, keys, true, 1)}`,
  }));
}

/** Text that stays itself within a snippet. */
export function escaped(text: string): string {
  return text.replace(/[\\$]/g, '\\$&');
}

/** The keys of a way that not every way has. */
function distinction(keys: readonly string[], ways: readonly { readonly keys: readonly string[] }[]): readonly string[] {
  return keys.filter((key) => !ways.every((way) => way.keys.includes(key)));
}

interface Writer {
  readonly tree: LooseTree;
  /** Levers that have been chosen: the other end of a part is on another one. */
  readonly levers: Set<string>;
  stop(text: string): string;
  choose(words: readonly string[]): string;
}

function createWriter(tree: LooseTree): Writer {
  let count = 0;
  return {
    tree,
    levers: new Set(),
    stop: (text) => `\${${++count}:${text.replace(/[\\$}]/g, '\\$&')}}`,
    choose: (words) => `\${${++count}|${words.map((word) => word.replace(/[\\$},|]/g, '\\$&')).join(',')}|}`,
  };
}

/** More names than anyone chooses from in a list of one line. */
const MOST_CHOICES = 30;
/** A block that is longer in brackets is written in lines. */
const LONGEST_FLOW = 76;

function valueBody(writer: Writer, { shape, example }: Pick<KeyAbout, 'shape' | 'example'>, flow: boolean, depth: number): string {
  const first = (words: readonly string[]): readonly string[] =>
    example === undefined || !words.includes(example) ? words : [example, ...words.filter((word) => word !== example)];
  const names = (found: readonly string[]): string => {
    const leverOf = (name: string): string => name.split('.', 1)[0] ?? '';
    const fresh = found.filter((name) => !writer.levers.has(leverOf(name)));
    const [chosen] = fresh;
    if (chosen !== undefined) writer.levers.add(leverOf(chosen));
    const ordered = [...fresh, ...found.filter((name) => !fresh.includes(name))];
    return ordered.length === 0 ? writer.stop(example ?? '') : writer.choose(ordered.slice(0, MOST_CHOICES));
  };
  switch (shape.kind) {
    case 'choice':
      return writer.choose(first(Object.keys(shape.choices)));
    case 'flag':
      return writer.choose(first(['true', 'false']));
    case 'reference':
      return names(looseNames(writer.tree, shape.to));
    case 'part':
      return names(looseParts(writer.tree, shape.parts).map(({ lever, part }) => `${lever}.${part}`));
    case 'map':
      return mapBody(writer, shape, example, flow, depth);
    case 'record':
      if (example !== undefined) return exampleBody(writer, example);
      return recordBody(writer, shape, waysOf(shape, undefined)[0] ?? [], flow, depth);
    default:
      if (example === undefined) return writer.stop('');
      return flow && fallsApart(example) ? `"${writer.stop(example)}"` : exampleBody(writer, flow ? example : unquoted(example));
  }
}

function mapBody(writer: Writer, map: Extract<About, { kind: 'map' }>, example: string | undefined, flow: boolean, depth: number): string {
  if (flow && example !== undefined) return exampleBody(writer, example);
  const [record] = formsOf(map.of).filter((form): form is RecordAbout => form.kind === 'record');
  const entry = firstEntry(example);
  // Keys that repeat names are those of the file; only `let` comes with nothing else begun.
  const repeated = map.repeats === 'let' ? looseNames(writer.tree, 'let').slice(0, MOST_CHOICES) : [];
  const name = repeated.length > 0 ? writer.choose(repeated) : writer.stop(freeName(writer.tree, entry?.key ?? nameFor(map.what), []));
  const value =
    record !== undefined
      ? recordBody(writer, record, waysOf(record, map.what)[0] ?? [], flow, depth + 1)
      : exampleBody(writer, entry === undefined ? '' : flow ? entry.value : unquoted(entry.value));
  const written = `${name}:${value.startsWith('\n') ? '' : ' '}${value}`;
  return flow ? `{${written}}` : `\n${'  '.repeat(depth)}${written}`;
}

function recordBody(writer: Writer, record: RecordAbout, keys: readonly string[], flow: boolean, depth: number): string {
  const parts = keys.flatMap((name) => {
    const key = record.keys[name];
    return key === undefined ? [] : [`${escaped(name)}: ${valueBody(writer, key, true, depth)}`];
  });
  const line = `{${parts.join(', ')}}`;
  if (flow || bare(line).length <= LONGEST_FLOW) return line;
  return parts.map((part) => `\n${'  '.repeat(depth)}${part}`).join('');
}

/** How long a snippet is once it stands in the text, roughly. */
function bare(body: string): string {
  return body.replace(/\$\{\d+[:|]([^},|]*)[^}]*\}/g, '$1');
}

/**
 * The keys that each way of writing a block begins with: those that must be there, those that its form needs, and what makes the part
 * do something.
 * @param what bears them, where that is a part
 */
function waysOf(record: RecordAbout, what: string | undefined): readonly (readonly string[])[] {
  const entries = Object.entries(record.keys);
  const [choice] = record.choices;
  const inForms = new Set(choice?.forms.flatMap(({ needs, allows }) => [...needs, ...allows]));
  const extras = (what === undefined ? undefined : EXTRAS[what])?.filter((name) => !inForms.has(name)) ?? [];
  const ways = choice === undefined ? [[]] : choice.forms.map(({ needs }) => needs);
  return ways.map((needs) =>
    entries.filter(([name, key]) => key.required || needs.includes(name) || extras.includes(name)).map(([name]) => name),
  );
}

/** Keys that may be left out, but with which the part is mostly written, by the word for the part. */
const EXTRAS: Readonly<Record<string, readonly string[]>> = {
  lever: ['arms'],
  drum: ['groove'],
  cable: ['from', 'leaves', 'slack'],
  rod: ['ends'],
  coupling: ['ratio'],
  'set of plates': ['count', 'shaft', 'seat', 'idle'],
  sensor: ['supply', 'bits'],
  spring: ['preload', 'free_length'],
  obstacle: ['clearance'],
  movement: ['shift'],
};

/** An example with a stop for each of its figures and words. */
function exampleBody(writer: Writer, example: string): string {
  const spans =
    example.startsWith('{') || example.startsWith('[')
      ? scalarsOf(scanFlow({ text: example, comments: [] }, 0, -1))
      : [{ start: 0, end: example.length }];
  let body = '';
  let at = 0;
  for (const { start, end } of spans) {
    body += escaped(example.slice(at, start)) + writer.stop(example.slice(start, end));
    at = end;
  }
  return body + escaped(example.slice(at));
}

function scalarsOf(value: LooseValue): readonly { readonly start: number; readonly end: number }[] {
  if (value.kind === 'nothing') return [];
  return value.kind === 'scalar' ? [value.span] : value.entries.flatMap((entry) => scalarsOf(entry.value));
}

function firstEntry(example: string | undefined): { readonly key: string; readonly value: string } | undefined {
  if (example?.startsWith('{') !== true) return undefined;
  const [entry] = scanFlow({ text: example, comments: [] }, 0, -1).entries;
  if (entry?.colon === undefined) return undefined;
  return { key: entry.key, value: example.slice(entry.colon + 1, entry.region.end).trim() };
}

/** A text that would end at a comma or bracket of its own. */
function fallsApart(example: string): boolean {
  return /[,[\]{}]/.test(example) && !/^["'[{]/.test(example);
}

function unquoted(text: string): string {
  return /^"[^"\\]*"$/.test(text) ? text.slice(1, -1) : text;
}

/** Invented names, by the word for what bears them; the word itself where none is here. */
const NAMES: Readonly<Record<string, string>> = {
  lever: 'bellcrank',
  cable: 'main',
  rod: 'link',
  slot: 'fork_slot',
  coupling: 'rotor_drive',
  'set of plates': 'bank',
  sensor: 'tps',
  spring: 'return_spring',
  obstacle: 'fuel_rail',
  movement: 'rock',
};

function nameFor(what: string): string {
  return NAMES[what] ?? what.replaceAll(' ', '_');
}

/** The name, or with a number behind it where it is used. */
function freeName(tree: LooseTree, name: string, taken: readonly string[]): string {
  const kinds = ['let', 'lever', 'cable', 'rod', 'slot', 'coupling', 'plates', 'sensor', 'spring'] as const;
  const used = new Set([...taken, ...kinds.flatMap((kind) => looseNames(tree, kind))]);
  if (!used.has(name)) return name;
  for (let number = 2; ; number++) if (!used.has(`${name}_${number}`)) return `${name}_${number}`;
}
