/** Names of the first file in the words of the second: a renamed part goes on being the same part wherever it is spoken of. */
import type { ComparedPart, Names } from './partsOf.ts';

export interface Renames {
  /** Notes that a part of the first file has another name in the second. */
  add(was: ComparedPart, is: ComparedPart): void;
  /** A word of the first file as the second would write it. @param names in whose names it is */
  word(word: string, names: Names): string;
  /** A part's name, or `lever.part`, or a column `owner.key`. */
  part(name: string): string;
  /** What a finding or a fact is about: a part of any block, or the path of a figure. */
  about(name: string): string;
  /** A path of the first file. */
  path(path: string): string;
  /** Words of prose in which parts may be named. */
  prose(text: string): string;
}

/** @param pedalLever name of the pedal's lever in the first file */
export function createRenames(pedalLever: string | undefined): Renames {
  const parts = new Map<string, string>();
  const points = new Map<string, string>();
  const ownNames = new Map<string, string>();
  const paths: { readonly was: string; readonly is: string }[] = [];
  const part = (name: string): string => {
    const known = parts.get(name);
    if (known !== undefined) return known;
    const dot = name.indexOf('.');
    return dot < 0 ? name : (parts.get(name.slice(0, dot)) ?? name.slice(0, dot)) + name.slice(dot);
  };
  const path = (text: string): string => {
    const found = paths.find(({ was }) => text === was || text.startsWith(`${was}.`));
    return found === undefined ? text : found.is + text.slice(found.was.length);
  };
  const token = (text: string): string => (isName(text) ? part(text) : text);
  return {
    add(was, is) {
      // Keys of points, limits and free names are their own; all others are used once in the file.
      if (was.block === 'points') points.set(was.name, is.name);
      else (OWN_NAMES.has(was.block) ? ownNames : parts).set(was.name, is.name);
      if (was.path !== '') paths.unshift({ was: was.path, is: is.path });
    },
    word(word, names) {
      switch (names) {
        case 'points':
          return points.get(word) ?? word;
        case 'pad':
          return pedalLever === undefined ? word : lastOf(part(`${pedalLever}.${word}`));
        case 'parts':
          // A list of names is held sorted.
          return word.split(', ').map(part).sort().join(', ');
        case 'kept':
          return word
            .split(', ')
            .map((each) => ownNames.get(each) ?? each)
            .sort()
            .join(', ');
        case 'formula':
          return tokensOf(word).map(token).join(' ');
      }
    },
    part,
    about(name) {
      const byPath = path(name);
      if (byPath !== name) return byPath;
      return parts.has(name) ? part(name) : (ownNames.get(name) ?? part(name));
    },
    path,
    prose: (text) => text.replace(NAME, (name) => part(name)),
  };
}

/** The same for two formulas that differ in blanks alone. */
export function formulaWords(text: string): string {
  return tokensOf(text).join(' ');
}

const OWN_NAMES: ReadonlySet<string> = new Set([
  'require',
  'limits',
  'movements',
  'keep_out',
  'couplings',
  'file',
  'pedal',
  'tune',
  'measured',
  'runs',
]);

const NAME = /[a-z][a-z0-9_]*(?:\.[a-z][a-z0-9_]*)?/g;
/** Names with what they own, numbers, and every other sign by itself. */
const TOKEN = /[a-z_][\w]*(?:\.[a-z_]\w*)?|(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?|\S/giu;

function tokensOf(text: string): readonly string[] {
  return text.match(TOKEN) ?? [];
}

function isName(text: string): boolean {
  return /^[a-z]/.test(text);
}

function lastOf(name: string): string {
  return name.slice(name.lastIndexOf('.') + 1);
}
