/**
 * What each problem code means, for the reference page and the editor's links.
 */
import type { ProblemCode } from './codes.ts';

export const PROBLEM_DOCS: Readonly<Record<ProblemCode, string>> = {
  'file-too-large': 'The file has more than 256 kB of UTF-8; it is not parsed.',
  'file-empty': 'The file holds nothing but blanks and comments.',
  'yaml-syntax':
    'The text is not YAML at this place: a bracket or quote not closed, a tab in the indentation, a line that does not line up, a missing colon or comma.',
  'alias-bound': 'An alias stands inside the value that it repeats, or aliases repeat more values than any linkage has.',
  'multiple-documents': 'A second YAML document begins with `---`; only the first is read.',
  'format-missing': 'The file does not say `format: 1`.',
  'format-unsupported': 'The file says another format than 1; nothing of it is read.',
  'unknown-key': 'The format has no such key at this place.',
  'duplicate-key': 'A key stands twice in one block; the first is read.',
  'missing-key': 'A part lacks something that it cannot do without.',
  'wrong-shape':
    'A list, a block, a single value or nothing stands where something of another form is needed, or keys that exclude each other stand together.',
  'wrong-value':
    'The value is of the right form and cannot mean anything here, such as a word that is not among the choices or a rod with both ends on one lever.',
  'bad-name': 'A name is not made of small letters, figures and `_`, beginning with a letter.',
  'reserved-name': 'A name is a unit, a function, a constant or an operator of formulas.',
  'duplicate-name': 'Two parts of the file, or an arm and a drum of one lever, have the same name.',
  'unknown-name': 'Nothing in the file has the name that is used here.',
  'load-path-loop': 'Levers drive one another in a circle.',
  'driven-twice': 'Two joints, or a joint and the foot, drive one lever.',
  'not-driven': 'Nothing drives the lever; it stands still. A warning.',
  'bad-quantity': 'The text is no quantity: a decimal comma, leading zeros, hexadecimal, more than one line, words.',
  'missing-unit': 'The figure needs its unit here, because nothing says which one is meant.',
  'unknown-unit': 'The unit is not known.',
  'wrong-unit': 'The unit measures something else than this place needs.',
  'bad-tolerance': 'The tolerance cannot be read, is negative, or stands behind a formula.',
  'out-of-range': 'The figure cannot be at this place: a radius of 0, a stop below the other, a range with nothing in it.',
  'quote-formula': 'Inside `{}` or `[]` a formula with `, [ ] { }` falls apart; it must be put in quotes.',
  'formula-syntax': 'The formula is not complete or not an expression.',
  'formula-not-allowed': 'The formula uses something that formulas here do not have.',
  'formula-too-long': 'The formula is longer than 500 characters or nested more than 50 deep.',
  'formula-dimension': 'The formula adds, compares or returns quantities that do not fit.',
  'formula-no-value': 'The formula has no real value at the given dimensions.',
};
