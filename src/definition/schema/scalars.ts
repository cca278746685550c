/**
 * Shapes of single values: quantities, words, truth values and references to other parts.
 */
import type { PartReference, Reference, Value } from '../definition.ts';
import type { Dimension } from '../dimensions.ts';
import { PLACE_UNIT } from '../dimensions.ts';
import { describeDimension } from '../formula/kind.ts';
import { goodName, NAME_PATTERN, nearestWord } from '../names.ts';
import type { Span } from '../span.ts';
import type { SourceScalar } from '../source/tree.ts';
import { brokenBound, strainedTolerances, written } from './bounds.ts';
import { KIND_WORDS, kindNamed, type PartKind } from './declared.ts';
import { readFigure } from './figure.ts';
import { wordList } from './record.ts';
import { problem, reportShape, type Bounds, type Reading, type Shape, type Site } from './shape.ts';
import { shortened } from '../source/shortened.ts';

/** A figure of one dimension, within bounds that are given in the unit of its place. */
export function quantity(dimension: Dimension, bounds: Bounds = {}): Shape<Value> {
  const example = dimension === 'number' ? 'a number' : `a number and a unit, such as \`1 ${PLACE_UNIT[dimension]}\``;
  return {
    about: { kind: 'quantity', dimension, bounds },
    read(node, site, reading) {
      if (node.kind !== 'scalar') return reportShape(node, site, reading, 'one figure', `Write ${example}`);
      const value = readFigure(node, site, dimension, reading);
      if (value === undefined) return undefined;
      const broken = brokenBound(value, bounds);
      if (broken === undefined) {
        for (const strained of strainedTolerances(value, bounds, site, reading)) reading.report(strained);
        return value;
      }
      reading.report(
        problem('out-of-range', value.span, `\`${site.name}\` must be ${broken}, not ${written(value)}`, {
          cure: `Write ${describeDimension(dimension)} that is ${broken}`,
        }),
      );
      return undefined;
    },
  };
}

/** Any text on one line. */
export function text(what: string): Shape<string> {
  return {
    about: { kind: 'text', what },
    read(node, site, reading) {
      if (node.kind !== 'scalar') return reportShape(node, site, reading, what, `Write ${what} after the colon`);
      return node.text;
    },
  };
}

/**
 * One of a few words.
 * @param choices meaning of each word
 * @param synonyms other ways of saying it that a person may try, each with the right word
 */
export function choice<W extends string>(choices: Readonly<Record<W, string>>, synonyms: Readonly<Record<string, W>> = {}): Shape<W> {
  const words = Object.keys(choices);
  const isWord = (word: string): word is W => Object.hasOwn(choices, word);
  return {
    about: { kind: 'choice', choices },
    read(node, site, reading) {
      if (node.kind !== 'scalar')
        return reportShape(node, site, reading, `one of ${wordList(words, 'or')}`, `Write ${wordList(words, 'or')}`);
      if (isWord(node.text)) return node.text;
      const synonym = Object.hasOwn(synonyms, node.text) ? synonyms[node.text] : undefined;
      const nearest = synonym ?? nearestWord(node.text, words);
      reading.report(
        problem('wrong-value', node.span, `\`${site.name}\` must be ${wordList(words, 'or')}, not \`${shortened(node.text)}\``, {
          cure: nearest === undefined ? `Write ${wordList(words, 'or')}` : `Did you mean \`${nearest}\`?`,
          replacements: nearest === undefined ? undefined : [{ span: node.span, text: nearest }],
        }),
      );
      return undefined;
    },
  };
}

/** `true` or `false`. */
export function flag(): Shape<boolean> {
  return {
    about: { kind: 'flag' },
    read(node, site, reading) {
      if (node.kind !== 'scalar') return reportShape(node, site, reading, '`true` or `false`', 'Write `true` or `false`');
      const word = node.text.toLowerCase();
      if (word === 'true' || word === 'false') return word === 'true';
      const meant = { yes: 'true', on: 'true', no: 'false', off: 'false' }[word];
      reading.report(
        problem('wrong-value', node.span, `\`${site.name}\` must be \`true\` or \`false\`, not \`${shortened(node.text)}\``, {
          cure: meant === undefined ? 'Write `true` or `false`' : `Write \`${meant}\``,
          replacements: meant === undefined ? undefined : [{ span: node.span, text: meant }],
        }),
      );
      return undefined;
    },
  };
}

/** The name of a part described elsewhere in the file. */
export function reference(to: PartKind): Shape<Reference> {
  return {
    about: { kind: 'reference', to },
    read(node, site, reading) {
      if (node.kind !== 'scalar') return reportShape(node, site, reading, `the name of ${KIND_WORDS[to]}`, 'Write one name');
      return nameIsKnown(node.text, node.span, to, reading) ? { name: node.text, span: node.span } : undefined;
    },
  };
}

/** Any word that is looked up later, such as a material. */
export function word(what: string): Shape<Reference> {
  return {
    about: { kind: 'text', what },
    read(node, site, reading) {
      if (node.kind !== 'scalar') return reportShape(node, site, reading, what, `Write ${what}`);
      return { name: node.text, span: node.span };
    },
  };
}

/** A reference to a part that the file names. */
export interface FoundPart extends PartReference {
  readonly kind: 'arm' | 'drum';
}

/** `lever.part`, a pin of an arm or a drum. */
export function part(parts: readonly ('arm' | 'drum')[]): Shape<FoundPart> {
  const wanted = parts.includes('drum') ? 'a pin or a drum' : 'a pin';
  return {
    about: { kind: 'part', parts },
    read(node, site, reading) {
      if (node.kind !== 'scalar') return reportShape(node, site, reading, `${wanted} of a lever`, 'Write `lever.part`');
      return findPart(node, parts, wanted, site, reading);
    },
  };
}

/** Whether a name is that of a part of the kind; reports it where not. */
export function nameIsKnown(name: string, span: Span, kind: PartKind, reading: Reading): boolean {
  if (reading.declared.parts[kind].has(name)) return true;
  const known = reading.declared.parts[kind];
  // Of a part whose own name is told to be wrong, one of these is right already.
  for (const each of firstOf(known.keys(), NAMES_TRIED)) if (!NAME_PATTERN.test(each) && goodName(each) === name) return false;
  const other = kindNamed(reading.declared, name);
  const nearest = other === undefined ? nearestWord(name, known.keys()) : undefined;
  const message =
    other === undefined
      ? `There is no ${kind} \`${shortened(name)}\``
      : `\`${name}\` is ${KIND_WORDS[other]}; ${KIND_WORDS[kind]} is needed here`;
  reading.report(problem('unknown-name', span, message, suggestion(nearest, firstOf(known.keys(), NAMES_SHOWN + 1), span, name)));
  return false;
}

function findPart(
  node: SourceScalar,
  parts: readonly ('arm' | 'drum')[],
  wanted: string,
  site: Site,
  reading: Reading,
): FoundPart | undefined {
  const dot = node.text.indexOf('.');
  const start = node.exact ? node.textStart : node.span.start;
  if (dot < 0) {
    const lever = reading.declared.levers.get(node.text);
    const known = lever === undefined ? [] : partNames(lever, parts).map((name) => `${node.text}.${name}`);
    const message =
      lever === undefined
        ? `\`${site.name}\` must be ${wanted} of a lever, not \`${shortened(node.text)}\``
        : `\`${node.text}\` is a whole lever; ${wanted} of it is needed here`;
    reading.report(
      problem('wrong-value', node.span, message, {
        cure: known.length === 0 ? 'Write the lever and its part with a dot between, `lever.part`' : `Write ${wordList(known, 'or')}`,
      }),
    );
    return undefined;
  }
  const leverName = node.text.slice(0, dot);
  const name = node.text.slice(dot + 1);
  const leverSpan = node.exact ? { start, end: start + dot } : node.span;
  const partSpan = node.exact ? { start: start + dot + 1, end: start + node.text.length } : node.span;
  if (!nameIsKnown(leverName, leverSpan, 'lever', reading)) return undefined;
  const lever = reading.declared.levers.get(leverName);
  if (lever === undefined) return undefined;
  const kind = lever.arms.has(name) ? 'arm' : lever.drums.has(name) ? 'drum' : undefined;
  if (kind !== undefined && parts.includes(kind)) return { kind, lever: leverName, part: name, span: node.span };
  const known = partNames(lever, parts);
  if (kind !== undefined) {
    reading.report(
      problem('wrong-value', partSpan, `\`${node.text}\` is ${kind === 'drum' ? 'a drum' : 'an arm'}; ${wanted} is needed here`, {
        cure: known.length === 0 ? `Give \`${leverName}\` an arm` : `Write ${wordList(known, 'or')} in its place`,
      }),
    );
    return undefined;
  }
  if (name === '') {
    const cure = known.length === 0 ? `Give \`${leverName}\` an arm` : `Write ${wordList(known, 'or')} after the dot`;
    reading.report(problem('wrong-value', node.span, `\`${node.text}\` names no part of \`${leverName}\``, { cure }));
    return undefined;
  }
  const nearest = nearestWord(name, known);
  reading.report(
    problem('unknown-name', partSpan, `\`${leverName}\` has no part \`${shortened(name)}\``, suggestion(nearest, known, partSpan, name)),
  );
  return undefined;
}

function partNames(
  lever: { readonly arms: ReadonlyMap<string, Span>; readonly drums: ReadonlyMap<string, Span> },
  parts: readonly ('arm' | 'drum')[],
): string[] {
  return [...(parts.includes('arm') ? lever.arms.keys() : []), ...(parts.includes('drum') ? lever.drums.keys() : [])];
}

const NAMES_SHOWN = 6;
/** A list of all, gone through for every wrong name, would take long. */
const NAMES_TRIED = 300;

function suggestion(nearest: string | undefined, known: readonly string[], span: Span, name: string) {
  if (nearest !== undefined) return { cure: `Did you mean \`${nearest}\`?`, replacements: [{ span, text: nearest }] };
  if (known.length === 0) return { cure: `Describe \`${shortened(name)}\` first` };
  return { cure: `Known are ${wordList(known.slice(0, NAMES_SHOWN), 'and')}${known.length > NAMES_SHOWN ? ' and more' : ''}` };
}

/** As many of the first as wanted: a list of all, made for every wrong name, would take long. */
export function firstOf(words: Iterable<string>, most: number): string[] {
  const first: string[] = [];
  for (const next of words) {
    if (first.length === most) break;
    first.push(next);
  }
  return first;
}
