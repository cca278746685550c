/**
 * Names of the file: what one looks like, which words are taken, and which right word a wrong one was meant to be.
 */
import { CONSTANTS, FOREIGN_WORDS, FUNCTIONS, OPERATOR_WORDS } from './formula/functions.ts';
import { UNITS } from './quantity/units.ts';

/** What a name of the file looks like. */
export const NAME_PATTERN = /^[a-z][a-z0-9_]*$/;

/** The name that a wrong one is nearest to by the letters that a name may have; empty where none of them is left. */
export function goodName(wrong: string): string {
  return wrong
    .normalize('NFD')
    .replace(/\p{M}+/gu, '')
    .replaceAll('ß', 'ss')
    .toLowerCase()
    .replace(/[^a-z0-9_]+/g, '_')
    .replace(/^[^a-z]+|_+$/g, '');
}

/** What a word of the formula language is, for the message that says why it cannot be a name; undefined for a free word. */
export function reservedAs(word: string): string | undefined {
  if (UNITS.has(word)) return 'a unit';
  if (FUNCTIONS.has(word)) return 'a function';
  if (CONSTANTS.has(word)) return 'a constant';
  if (OPERATOR_WORDS.has(word) || FOREIGN_WORDS.has(word)) return 'an operator';
  if (YAML_VALUES.has(word)) return 'a value of YAML';
  return undefined;
}

// Written as a value, each would be read as a truth value or as nothing.
const YAML_VALUES: ReadonlySet<string> = new Set(['true', 'false', 'null']);

/** Every word that no part may be named. */
export const RESERVED: ReadonlySet<string> = new Set([
  ...UNITS.keys(),
  ...FUNCTIONS.keys(),
  ...CONSTANTS.keys(),
  ...OPERATOR_WORDS,
  ...FOREIGN_WORDS.keys(),
  ...YAML_VALUES,
]);

/**
 * The candidate nearest to a word, where one is near: within one slip of a short word, two of a longer one, three of
 * a long one; a slip is one letter too many, too few, wrong, or two swapped (optimal string alignment). Case counts
 * for nothing. The first of equally near candidates wins. Only the first few hundred candidates are looked at, so that
 * a file of thousands of wrong names is read in time.
 */
export function nearestWord(word: string, candidates: Iterable<string>): string | undefined {
  const wanted = word.slice(0, LONGEST_WORD).toLowerCase();
  let bound = wanted.length <= 3 ? 1 : wanted.length <= 7 ? 2 : 3;
  let nearest: string | undefined;
  let looked = 0;
  for (const candidate of candidates) {
    if (++looked > MOST_CANDIDATES) break;
    const other = candidate.slice(0, LONGEST_WORD).toLowerCase();
    // A word of n letters is not "near" one that shares none of them.
    const limit = Math.min(bound, Math.max(wanted.length, other.length) - 1);
    if (Math.abs(other.length - wanted.length) > limit) continue;
    const slips = slipsBetween(wanted, other);
    if (slips > limit) continue;
    nearest = candidate;
    bound = slips - 1;
    if (bound < 0) break;
  }
  return nearest;
}

const LONGEST_WORD = 64;
const MOST_CANDIDATES = 300;

function slipsBetween(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let slips = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + (same ? 0 : 1));
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) slips = Math.min(slips, (beforeLast[j - 2] ?? 0) + 1);
      row.push(slips);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length] ?? 0;
}
