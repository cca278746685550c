/**
 * `tune`: what a search for dimensions may choose, what curve it is to come to, and what must hold.
 */
import type { LimitKey } from '../definition.ts';
import { dimensionOfKind, describeKind } from '../formula/kind.ts';
import { nearestWord } from '../names.ts';
import type { SourceNode } from '../source/tree.ts';
import { shortened } from '../source/shortened.ts';
import type { Free, Kept, KeptWord, Tune } from '../tune.ts';
import { deferred, eachOf, noted, reportAbsent, withOwnNotes, type Deferred } from './noted.ts';
import { mapOf, optional, record, required, wordList } from './record.ts';
import { firstOf, nameIsKnown } from './scalars.ts';
import { defined, named, problem, reportShape, type Reading, type Shape, type Site } from './shape.ts';
import { LIMIT_KEYS } from './surroundings.ts';
import { curve } from './tuneCurve.ts';
import { figureAbout, readAs, tellUseless } from './tuneFigures.ts';

const bounds = record(
  {
    from: required(deferred(figureAbout('a figure of the kind of the value')), { doc: 'Least that it may be.', example: '30 mm' }),
    to: required(deferred(figureAbout('a figure of the kind of the value')), { doc: 'Greatest that it may be.', example: '45 mm' }),
    step: optional(deferred(figureAbout('a figure of the kind of the value')), {
      doc: 'Distance between the sizes that can be had, counted from `from`.',
      fallback: 'any size',
      example: '1 mm',
      vital: true,
    }),
  },
  (values, { site }, reading): Free | undefined => readFree(values, site, reading),
);

const free = mapOf(
  noted<Free>({
    about: bounds.about,
    read: (node, site, reading) => (isFree(site, reading) ? bounds.read(node, site, reading) : undefined),
  }),
  'free value',
  { freeNames: true, repeats: 'let' },
);

/** Words of `keep` that are no limits, each with what it asks. */
export const KEPT_WORDS: Readonly<Record<KeptWord, string>> = {
  full_opening: 'Shafts with plates reach their full opening.',
  clearance: 'What stands in the way is cleared.',
  closing_torque: 'The plates close with each spring off in turn.',
};

const kept: Shape<Kept> = {
  about: { kind: 'kept' },
  read(node, site, reading) {
    if (node.kind !== 'scalar') return reportShape(node, site, reading, 'a list of words and names', CURE_KEPT);
    return readKept(node.text, node, reading);
  },
};

// Both must be there, and yet what is understood of a block without one of them is kept.
const freeKey = optional(free, {
  doc: 'Values of `let` that may be chosen, each with its bounds. They are plain figures there, not formulas.',
  example: '{crank_reach: {from: 30 mm, to: 45 mm}}',
});
const curveKey = optional(curve, { doc: 'The curve that is wanted.', example: '{of: shaft.opening, slopes: {tip_in: 0.4, end: 1.4}}' });

const block = record(
  {
    free: { ...freeKey, about: { ...freeKey.about, required: true } },
    curve: { ...curveKey, about: { ...curveKey.about, required: true } },
    keep: optional(eachOf(kept, 'limits, words or requirements', 0), {
      doc: 'What must hold: keys of `limits`, `full_opening`, `clearance`, `closing_torque`, and names of `require` lines.',
      fallback: 'all that the file gives',
      example: '[transmission, drive, full_opening, clearance]',
    }),
  },
  (values, source, reading): Omit<Tune, 'unread'> => {
    const { site, node } = source;
    reportAbsent(source, 'free', 'Write `free: {name: {from: …, to: …}}` with names of `let`', reading);
    reportAbsent(source, 'curve', 'Write `curve: {of: shaft.opening, through: [[0 %, …], …, [100 %, …]]}`', reading);
    const list = values.free ?? [];
    if (values.free?.length === 0 && !node.damaged && entriesOf(node, 'free') === 0) {
      reading.report(
        problem('missing-key', source.keySpan('free'), '`free` names no value, so there is nothing to choose', {
          cure: 'Write names of `let` with their bounds, `name: {from: …, to: …}`',
        }),
      );
    }
    const keep = values.keep === undefined ? undefined : withoutRepeats(values.keep.items, `${site.path}.keep`, reading);
    return { nameSpan: site.nameSpan, span: site.span, free: list, ...defined({ curve: values.curve, keep }) };
  },
);

/** The block `tune`. */
export const tune: Shape<Tune> = withOwnNotes(block);

function entriesOf(node: SourceNode, key: string): number {
  const value = node.kind === 'map' ? node.entries.find((entry) => entry.key === key)?.value : undefined;
  return value?.kind === 'map' ? value.entries.length : 0;
}

/** Whether a value of `let` can be chosen; says so where not. */
function isFree({ name, nameSpan }: Site, reading: Reading): boolean {
  if (!nameIsKnown(name, nameSpan, 'let', reading)) return false;
  const found = reading.scope.entries.find((entry) => entry.name === name);
  // One that could not be read has its problem there.
  if (found === undefined) return false;
  const { value, kind } = found;
  if (value.formula !== undefined) {
    const plain = plainBehind(value.formula.uses, reading);
    reading.report(
      problem('not-free', nameSpan, `\`${name}\` follows from a formula and cannot be chosen by itself`, {
        cure: plain.length === 0 ? 'Write a plain figure in `let`' : `Free ${wordList(plain, 'or')}, from which it follows`,
        related: [{ span: value.span, message: 'The formula is here' }],
      }),
    );
    return false;
  }
  if (dimensionOfKind(kind) !== undefined) return true;
  reading.report(
    problem('not-free', nameSpan, `\`${name}\` is ${describeKind(kind)}, which no place of the file takes`, {
      cure: 'Free a value that is a dimension of the linkage',
    }),
  );
  return false;
}

/** Names of the plain figures that a formula rests on. */
function plainBehind(uses: readonly number[], { scope }: Reading): readonly string[] {
  const seen = new Set(uses);
  // A set hands out what is put in on the way, too.
  for (const index of seen) for (const next of scope.entries[index]?.value.formula?.uses ?? []) seen.add(next);
  return [...seen].flatMap((index) => {
    const entry = scope.entries[index];
    return entry === undefined || entry.value.formula !== undefined ? [] : [entry.name];
  });
}

function readFree(
  values: { readonly from: Deferred; readonly to: Deferred; readonly step: Deferred | undefined },
  site: Site,
  reading: Reading,
): Free | undefined {
  const index = reading.scope.entries.findIndex((entry) => entry.name === site.name);
  const found = reading.scope.entries[index];
  if (found === undefined) return undefined;
  const { dimension } = found.value;
  const from = readAs(dimension, {}, values.from.node, values.from.site, reading);
  const to = readAs(dimension, {}, values.to.node, values.to.site, reading);
  const step = values.step && readAs(dimension, { above: 0 }, values.step.node, values.step.site, reading);
  tellUseless([from, to, step], 'Write the figure alone; the tolerance of what is made belongs to its value in `let`', reading);
  if (from === undefined || to === undefined || (values.step !== undefined && step === undefined)) return undefined;
  if (!(from.nominal < to.nominal)) {
    const equal = from.nominal === to.nominal;
    reading.report(
      problem(
        'out-of-range',
        to.span,
        equal ? `The bounds of \`${site.name}\` are equal, so there is nothing to choose` : `The bounds of \`${site.name}\` are reversed`,
        {
          cure: equal ? 'Write a greater `to`, or take the name out of `free`' : 'Write the smaller figure at `from`',
          related: [{ span: from.span, message: '`from` is here' }],
        },
      ),
    );
    return undefined;
  }
  if (step !== undefined && step.nominal > (to.nominal - from.nominal) * (1 + ROUNDING)) {
    reading.report(
      problem('out-of-range', step.span, `The step of \`${site.name}\` is larger than the distance of its bounds`, {
        cure: 'Write a smaller step, or wider bounds',
        related: [{ span: from.span, message: 'The bounds begin here' }],
      }),
    );
    return undefined;
  }
  return { ...named(site), let: index, from, to, ...defined({ step }) };
}

/** Relative: a step that is the whole distance is not refused for rounding. */
const ROUNDING = 1e-9;

const CURE_KEPT = 'Write keys of `limits`, `full_opening`, `clearance`, `closing_torque` or names of `require`';

function readKept(text: string, node: SourceNode, reading: Reading): Kept | undefined {
  const { span } = node;
  const isRequirement = reading.declared.requirements.has(text);
  const own: Kept | undefined = isLimitKey(text)
    ? { kind: 'limit', key: text, span }
    : isKeptWord(text)
      ? { kind: 'word', word: text, span }
      : undefined;
  if (own === undefined && isRequirement) return { kind: 'requirement', name: text, span };
  if (own !== undefined) {
    const second = reading.declared.requirements.get(text);
    if (second === undefined) return own;
    const what = own.kind === 'limit' ? 'the limit' : 'the word';
    reading.report({
      ...problem('duplicate-name', span, `\`${text}\` is ${what} here, not the requirement of that name`, {
        cure: 'Give the requirement another name, so that it can be kept, too',
        related: [{ span: second, message: 'The requirement is here' }],
      }),
      severity: 'warning',
    });
    return own;
  }
  const known = [...LIMIT_KEYS, ...Object.keys(KEPT_WORDS), ...firstOf(reading.declared.requirements.keys(), NAMES_LOOKED)];
  const nearest = nearestWord(text, known);
  reading.report(
    problem('unknown-name', span, `There is no limit, word or requirement \`${shortened(text)}\``, {
      cure: nearest === undefined ? CURE_KEPT : `Did you mean \`${nearest}\`?`,
      // What is no plain word would need its quotes looked after.
      replacements: nearest !== undefined && /^[a-z_]+$/.test(nearest) ? [{ span, text: nearest }] : undefined,
    }),
  );
  return undefined;
}

const NAMES_LOOKED = 300;

function isLimitKey(text: string): text is LimitKey {
  return (LIMIT_KEYS as readonly string[]).includes(text);
}

function isKeptWord(text: string): text is KeptWord {
  return Object.hasOwn(KEPT_WORDS, text);
}

/** What is named twice is told and kept once. */
function withoutRepeats(items: readonly Kept[], path: string, reading: Reading): readonly Kept[] {
  const seen = new Set<string>();
  return items.filter((item) => {
    const name = item.kind === 'limit' ? item.key : item.kind === 'word' ? item.word : item.name;
    if (!seen.has(name)) {
      seen.add(name);
      return true;
    }
    reading.report(
      problem('wrong-value', item.span, `\`${shortened(name)}\` stands twice in \`keep\``, { cure: 'Leave one of the two out' }),
    );
    reading.unread(path, item.span);
    return false;
  });
}
