/**
 * Blocks of keys: records, whose keys the format fixes, and maps, whose keys are the person's names.
 */
import { goodName, NAME_PATTERN, nearestWord } from '../names.ts';
import type { Span } from '../span.ts';
import { entryOf, type SourceEntry, type SourceMap } from '../source/tree.ts';
import { problem, reportShape, type About, type FormChoice, type KeyAbout, type Reading, type Shape, type Site } from './shape.ts';
import { shortened } from '../source/shortened.ts';

/** What the format says of a key. */
export interface KeyOptions {
  readonly doc: string;
  readonly example?: string;
  readonly fallback?: string;
  /** Whether the part is given up where this optional value cannot be read, because its motion would be another. */
  readonly vital?: boolean;
}

/** A key of a record. */
export interface Key<T, R extends boolean> {
  readonly shape: Shape<T>;
  readonly required: R;
  readonly vital: boolean;
  readonly about: KeyAbout;
}

type Keys = Readonly<Record<string, Key<unknown, boolean>>>;

/** What was read, by key; a key that was left out is undefined. */
type Values<K extends Keys> = {
  readonly [P in keyof K]: K[P] extends Key<infer T, infer R> ? (R extends true ? T : T | undefined) : never;
};

/** The block that a record was read from. */
export interface RecordSource {
  readonly node: SourceMap;
  readonly site: Site;
  has(key: string): boolean;
  /** Place of a key; of the whole part's name where it was left out. */
  keySpan(key: string): Span;
  /** Place of a key's value; of the whole part's name where it was left out. */
  valueSpan(key: string): Span;
}

/** What the format says of a record as a whole. */
export interface RecordOptions {
  readonly choices?: readonly FormChoice[];
  /** Keys that a person may expect and the format does not have, each with what to do. */
  readonly foreign?: Readonly<Record<string, string>>;
}

/** A key that must be there. */
export function required<T>(shape: Shape<T>, options: KeyOptions): Key<T, true> {
  return { shape, required: true, vital: true, about: keyAbout(shape.about, true, options) };
}

/** A key that may be left out. */
export function optional<T>(shape: Shape<T>, options: KeyOptions): Key<T, false> {
  return { shape, required: false, vital: options.vital === true, about: keyAbout(shape.about, false, options) };
}

/**
 * A block of fixed keys.
 * @param build makes the part from what was read; all required keys are there, and of each choice one form.
 */
export function record<K extends Keys, T>(
  keys: K,
  build: (values: Values<K>, source: RecordSource, reading: Reading) => T | undefined,
  options: RecordOptions = {},
): Shape<T> {
  const about: About = {
    kind: 'record',
    keys: Object.fromEntries(Object.entries(keys).map(([name, key]) => [name, key.about])),
    choices: options.choices ?? [],
  };
  const names = Object.keys(keys);
  const pairs = Object.entries(keys);
  return {
    about,
    read(node, site, reading) {
      if (node.kind !== 'map') {
        return reportShape(
          node,
          site,
          reading,
          'a block of keys',
          `Write \`{${names.slice(0, 2).join(': …, ')}: …}\`, or the keys on lines below, indented`,
        );
      }
      // A key that is only misspelt is not missing besides.
      const meant = new Set<string>();
      for (const entry of node.entries) {
        if (Object.hasOwn(keys, entry.key)) continue;
        const right = reportUnknown(entry, names, options, reading);
        if (right !== undefined) meant.add(right);
      }
      const missing: string[] = [];
      let whole = true;
      const values: Record<string, unknown> = {};
      for (const [name, key] of pairs) {
        const entry = entryOf(node, name);
        if (entry === undefined) {
          if (!key.required) continue;
          whole = false;
          if (!meant.has(name)) missing.push(name);
          continue;
        }
        const value = key.shape.read(entry.value, entrySite(site, entry), reading);
        values[name] = value;
        if (value !== undefined) continue;
        if (key.vital) whole = false;
        else reading.unread(joinPath(site.path, name), entry.span);
      }
      if (missing.length > 0 && !node.damaged && entryOf(node, '<<') === undefined) reportMissing(node, site, reading, missing);
      for (const choice of options.choices ?? []) if (!checkForms(choice, node, values, meant, site, reading)) whole = false;
      return whole ? build(values as Values<K>, sourceOf(node, site), reading) : undefined;
    },
  };
}

/** A block whose keys are names; a part that cannot be read is left out. */
export function mapOf<T>(
  shape: Shape<T>,
  what: string,
  options: { readonly freeNames?: boolean; readonly repeats?: 'let' | 'column' } = {},
): Shape<readonly T[]> {
  const { repeats } = options;
  const freeNames = options.freeNames === true;
  return {
    about: { kind: 'map', of: shape.about, what, freeNames, ...(repeats !== undefined && { repeats }) },
    read(node, site, reading) {
      if (node.kind === 'empty') return [];
      if (node.kind !== 'map')
        return reportShape(
          node,
          site,
          reading,
          `a block of named entries`,
          `Write each ${what} as \`name: …\` on a line of its own, indented`,
        );
      const parts: T[] = [];
      for (const entry of node.entries) {
        if (entry.key === '<<') {
          reading.report(problem('unknown-key', entry.keySpan, 'There is no key `<<` here', { cure: NO_MERGE }));
          continue;
        }
        if (!freeNames) checkPattern(entry, reading);
        const part = shape.read(entry.value, entrySite(site, entry), reading);
        if (part !== undefined) parts.push(part);
      }
      return parts;
    },
  };
}

/** Reports a key that is no name. */
export function checkPattern(entry: SourceEntry, reading: Reading): void {
  if (NAME_PATTERN.test(entry.key)) return;
  const suggestion = goodName(entry.key);
  const example = suggestion === '' ? '' : `, for example \`${suggestion}\``;
  reading.report(
    problem('bad-name', entry.keySpan, `\`${entry.key}\` is not a name`, {
      cure: `Use small letters, figures and \`_\`, beginning with a letter${example}`,
    }),
  );
}

/** The site of the value of an entry. */
export function entrySite(site: Site, entry: SourceEntry): Site {
  return { path: joinPath(site.path, entry.key), name: entry.key, nameSpan: entry.keySpan, span: entry.span };
}

/** `a`, `b` or `c`, each in backquotes. */
export function wordList(words: readonly string[], conjunction: 'and' | 'or'): string {
  const quoted = words.map((word) => `\`${word}\``);
  if (quoted.length <= 1) return quoted.join('');
  return `${quoted.slice(0, -1).join(', ')} ${conjunction} ${quoted.at(-1) ?? ''}`;
}

function keyAbout(shape: About, isRequired: boolean, { doc, example, fallback }: KeyOptions): KeyAbout {
  return {
    shape,
    required: isRequired,
    doc,
    ...(example === undefined ? {} : { example }),
    ...(fallback === undefined ? {} : { fallback }),
  };
}

function joinPath(path: string, key: string): string {
  return path === '' ? key : `${path}.${key}`;
}

function sourceOf(node: SourceMap, site: Site): RecordSource {
  return {
    node,
    site,
    has: (key) => entryOf(node, key) !== undefined,
    keySpan: (key) => entryOf(node, key)?.keySpan ?? site.nameSpan,
    valueSpan: (key) => entryOf(node, key)?.value.span ?? site.nameSpan,
  };
}

const NO_MERGE = 'Merge keys are not part of YAML 1.2: write the keys out';

/** @returns the known key that was meant, where it is certain enough to be proposed */
function reportUnknown(entry: SourceEntry, names: readonly string[], options: RecordOptions, reading: Reading): string | undefined {
  const message = `There is no key \`${shortened(entry.key)}\` here`;
  const joined = joinedKey(entry, names);
  if (joined !== undefined) {
    const text = `${joined.key}: ${joined.value}`;
    const replacements = [{ span: entry.keySpan, text }];
    reading.report(
      problem('unknown-key', entry.keySpan, message, { cure: `Write \`${shortened(text)}\`, with a colon and a space`, replacements }),
    );
    return joined.key;
  }
  const opened = openedKey(entry, names);
  if (opened !== undefined) {
    const { key, at } = opened;
    const cure = `Write \`${key}:\` before the bracket`;
    const replacements = [{ span: { start: at, end: at }, text: ':' }];
    reading.report(problem('unknown-key', entry.keySpan, `\`${key}\` has no colon before its value`, { cure, replacements }));
    return key;
  }
  const foreign = options.foreign !== undefined && Object.hasOwn(options.foreign, entry.key) ? options.foreign[entry.key] : undefined;
  const nearest = foreign === undefined ? nearestWord(entry.key, names) : undefined;
  const merge = entry.key === '<<' ? NO_MERGE : undefined;
  const known = `Known here: ${wordList(names, 'and')}`;
  reading.report(
    problem('unknown-key', entry.keySpan, message, {
      cure: foreign ?? merge ?? (nearest === undefined ? known : `Did you mean \`${nearest}\`?`),
      replacements: nearest === undefined ? undefined : [{ span: entry.keySpan, text: nearest }],
    }),
  );
  return nearest;
}

/** `pedal {cable: main}`: a known key, and its value without the colon that parts them. */
function openedKey({ key, keySpan }: SourceEntry, names: readonly string[]): { readonly key: string; readonly at: number } | undefined {
  const name = /^([a-z_]+)\s*[{[]/.exec(key)?.[1];
  return name !== undefined && names.includes(name) ? { key: name, at: keySpan.start + name.length } : undefined;
}

/** `{radius:26 mm}` and `{radius 26 mm}`: a known key and its value without the colon and space that part them. */
function joinedKey({ key, value }: SourceEntry, names: readonly string[]): { readonly key: string; readonly value: string } | undefined {
  if (value.kind !== 'empty' || value.damaged) return undefined;
  const parts = /^([a-z_]+)(?:\s*[:=]\s*|\s+)(\S.*)$/.exec(key);
  return parts?.[1] !== undefined && parts[2] !== undefined && names.includes(parts[1]) ? { key: parts[1], value: parts[2] } : undefined;
}

function reportMissing(node: SourceMap, site: Site, reading: Reading, missing: readonly string[]): void {
  const where = site.path === '' ? { start: node.span.start, end: Math.min(node.span.start + 1, node.span.end) } : site.nameSpan;
  const subject = site.path === '' ? 'The file' : `\`${site.name}\``;
  reading.report(
    problem('missing-key', where, `${subject} has no ${wordList(missing, 'and')}`, {
      cure: `Write ${wordList(
        missing.map((name) => `${name}: …`),
        'and',
      )}`,
    }),
  );
}

/** Whether exactly one form is given, whole and readable. */
function checkForms(
  choice: FormChoice,
  node: SourceMap,
  values: Readonly<Record<string, unknown>>,
  meant: ReadonlySet<string>,
  site: Site,
  reading: Reading,
): boolean {
  const marks = choice.forms.map((form) => ({ form, keys: [...form.needs, ...form.allows] }));
  const present = node.entries.filter((entry) => marks.some((mark) => mark.keys.includes(entry.key)));
  const wanted = choice.forms.map((form) => wordList(form.needs, 'and')).join(', or ');
  if (present.length === 0) {
    if (!node.damaged && !marks.some((mark) => mark.keys.some((key) => meant.has(key)))) {
      reading.report(problem('missing-key', site.nameSpan, `\`${site.name}\` does not say ${choice.what}`, { cure: `Write ${wanted}` }));
    }
    return false;
  }
  // A key that only one form has decides; of several, the first in the file.
  const deciding = present.find((entry) => marks.filter((mark) => mark.keys.includes(entry.key)).length === 1) ?? present[0];
  const chosen = marks.find((mark) => deciding !== undefined && mark.keys.includes(deciding.key));
  if (chosen === undefined || deciding === undefined) return false;
  const stray = present.find((entry) => !chosen.keys.includes(entry.key));
  if (stray !== undefined) {
    reading.report(
      problem('wrong-shape', stray.keySpan, `\`${stray.key}\` does not go with \`${deciding.key}\`: ${choice.what} is given one way only`, {
        cure: `Write ${wanted}`,
        related: [{ span: deciding.keySpan, message: `\`${deciding.key}\` is here` }],
      }),
    );
    return false;
  }
  const missing = chosen.form.needs.filter((key) => entryOf(node, key) === undefined);
  if (missing.length > 0) {
    const untold = missing.filter((key) => !meant.has(key));
    if (!node.damaged && untold.length > 0) reportMissing(node, site, reading, untold);
    return false;
  }
  return chosen.form.needs.every((key) => values[key] !== undefined);
}
