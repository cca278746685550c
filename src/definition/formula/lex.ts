/**
 * Splits the text of a quantity or formula into tokens that know their places, and finds what the language does
 * not have. A unit is part of the figure before it, which is what keeps `1.5 in` an inch and `35 %` a hundredth.
 */
import type { Vocabulary } from './scope.ts';
import { nearestWord } from '../names.ts';
import { UNITS, readUnit, skipSpaces, spellingOf } from '../quantity/units.ts';
import type { UnitReading } from '../quantity/units.ts';
import { replaceFault } from '../quantity/fault.ts';
import type { Fault } from '../quantity/fault.ts';
import { foreignFault, foreignUnit } from '../quantity/foreignUnits.ts';
import { readNumber } from '../quantity/number.ts';
import type { Span } from '../span.ts';
import { CONSTANTS, FOREIGN_WORDS, FUNCTIONS, OPERATOR_WORDS } from './functions.ts';

/** A number with its unit. */
export interface FigureToken extends Span {
  readonly type: 'figure';
  /** As written, before its unit and without a sign. */
  readonly value: number;
  /** Place of the digits alone. */
  readonly digits: Span;
  readonly unit?: UnitReading;
}

/** A word that is no operator and no unit. */
export interface NameToken extends Span {
  readonly type: 'name';
  readonly text: string;
}

/** `part.column`. */
export interface ColumnToken extends Span {
  readonly type: 'column';
  readonly owner: string;
  readonly column: string;
}

/** An operator, a parenthesis, a comma, `±` (also for `+/-`), or `?` for what a fault was found in. */
export interface SignToken extends Span {
  readonly type: 'sign';
  readonly text: string;
}

/** One piece of a formula; offsets count from the start of its text. */
export type Token = FigureToken | NameToken | ColumnToken | SignToken;

/** A text in pieces. */
export interface Lexed {
  readonly tokens: readonly Token[];
  /** In the order of the text. */
  readonly faults: readonly Fault[];
}

/**
 * @param names words that are names of the file: after a figure they are a forgotten `*`, not an unknown unit.
 */
export function lex(text: string, names: Vocabulary = NO_NAMES): Lexed {
  const tokens: Token[] = [];
  const faults: Fault[] = [];
  // For each open parenthesis, whether it encloses the arguments of a function.
  const calls: boolean[] = [];
  const isOtherWord = (word: string): boolean =>
    OPERATOR_WORDS.has(word) || FOREIGN_WORDS.has(word) || FUNCTIONS.has(word) || CONSTANTS.has(word) || names.has(word);
  let i = skipSpaces(text, 0);
  while (i < text.length) {
    const token =
      figureAt(text, i, calls.at(-1) !== true, isOtherWord, faults) ?? wordAt(text, i, tokens, faults) ?? signAt(text, i, tokens, faults);
    if (token.type === 'sign' && token.text === '(') calls.push(isCalled(tokens.at(-1), names));
    if (token.type === 'sign' && token.text === ')') calls.pop();
    tokens.push(token);
    i = skipSpaces(text, token.end);
  }
  return { tokens, faults: faults.slice(0, MOST_FAULTS) };
}

/** What is wrong after so many faults follows from them, or tells no more. */
export const MOST_FAULTS = 5;

const NO_NAMES: ReadonlySet<string> = new Set();

/** Whether the commas in a parenthesis after the token part arguments: of an unknown function, too. */
function isCalled(token: Token | undefined, names: Vocabulary): boolean {
  return token?.type === 'name' && (FUNCTIONS.has(token.text) || !names.has(token.text));
}

function figureAt(
  text: string,
  start: number,
  commaIsDecimal: boolean,
  isOtherWord: (word: string) => boolean,
  faults: Fault[],
): Token | undefined {
  const number = readNumber(text, start, commaIsDecimal);
  if (number === undefined) return undefined;
  if (number.fault !== undefined) faults.push(number.fault);
  const digits = { start, end: number.end };
  const unit = readUnit(text, number.end, isOtherWord);
  if (unit === undefined) return { type: 'figure', value: number.value, digits, ...digits };
  const between = wordBeforeUnit(text, unit);
  if (between === undefined) faults.push(...unitFaults(unit, { ...digits, value: number.value }));
  else faults.push(between);
  return { type: 'figure', value: number.value, digits, unit, start, end: unit.end };
}

/** `42x mm`: a word that is no unit, with the unit right behind it. */
function wordBeforeUnit(text: string, { start, end, text: word, unknown }: UnitReading): Fault | undefined {
  if (unknown.length !== 1 || unknown[0]?.end !== end || unknown[0].start !== start) return undefined;
  if (foreignUnit(word) !== undefined || meantUnit(word) !== undefined) return undefined;
  const next = skipSpaces(text, end);
  const unit = readUnit(text, next, (other) => !UNITS.has(other));
  if (unit === undefined || next === end) return undefined;
  const message = `\`${word}\` stands between the number and its unit`;
  const isApart = skipSpaces(text, start - 1) === start;
  return replaceFault('unknown-unit', { start, end }, message, '', { start, end: isApart ? next : end });
}

/** @param figure the number before it */
function unitFaults(unit: UnitReading, figure: Span & { readonly value: number }): Fault[] {
  const faults = unit.unknown.map((word) => {
    const isWhole = word.start === unit.start && word.end === unit.end;
    return foreignFault(word.word, word, isWhole ? figure : undefined) ?? unknownUnit(word.word, word);
  });
  if (unit.badExponent !== undefined) {
    const cure = 'Write one whole exponent such as `mm^2`, and parentheses round the quantity where its power is meant: `(2 mm)^2`';
    faults.push({
      code: 'unknown-unit',
      ...span(unit.badExponent),
      message: `\`${unit.text}\` has an exponent that units cannot have`,
      cure,
    });
  }
  return faults;
}

/** The fault of a word that stands where a unit should. */
export function unknownUnit(word: string, where: Span): Fault {
  const message = `\`${word}\` is not a unit`;
  const meant = meantUnit(word);
  if (meant !== undefined) return replaceFault('unknown-unit', where, message, meant);
  return {
    code: 'unknown-unit',
    ...span(where),
    message,
    cure: 'Write one of mm, cm, m, inch, deg, rad, N, lbf, N*mm, N/mm, kg, V, kPa, %',
  };
}

function meantUnit(word: string): string | undefined {
  const spelt = spellingOf(word);
  if (spelt !== undefined) return spelt;
  const powered = /^([A-Za-zµμ]+)([2-4])$/.exec(word);
  if (powered?.[1] !== undefined && UNITS.has(powered[1])) return `${powered[1]}^${powered[2] ?? ''}`;
  for (const unit of UNITS.keys()) if (unit.toLowerCase() === word.toLowerCase()) return unit;
  return word.length < 2 ? undefined : nearestWord(word, UNITS.keys());
}

const WORD =
  /[A-Za-z_$\u00b5\u00c0-\u00d6\u00d8-\u00f6\u00f8-\u02af\u0370-\u03ff][A-Za-z0-9_$\u00b5\u00c0-\u00d6\u00d8-\u00f6\u00f8-\u02af\u0370-\u03ff]*/y;

function wordAt(text: string, start: number, before: readonly Token[], faults: Fault[]): Token | undefined {
  const word = match(WORD, text, start);
  if (word === undefined || WRITTEN_OTHERWISE.has(word)) return undefined;
  const end = start + word.length;
  const column = text.charAt(end) === '.' ? match(WORD, text, end + 1) : undefined;
  if (column !== undefined) return columnAt(text, start, word, column, faults);
  if (OPERATOR_WORDS.has(word)) return { type: 'sign', text: word, start, end };
  const foreign = FOREIGN_WORDS.get(word);
  if (foreign !== undefined) {
    faults.push({ code: 'formula-not-allowed', start, end, message: `\`${word}\` cannot be used: ${foreign}`, cure: 'Leave it out' });
    return { type: 'sign', text: '?', start, end };
  }
  if (UNITS.has(word)) {
    // `r to mm`, `42x mm`: what follows a word that is refused goes with it.
    if (!isRefused(before.at(-1))) faults.push(strayUnit(text, { start, end }, word, before));
    return { type: 'sign', text: '?', start, end };
  }
  return { type: 'name', text: word, start, end };
}

function isRefused(token: Token | undefined): boolean {
  return (token?.type === 'sign' && token.text === '?') || (token?.type === 'figure' && (token.unit?.unknown.length ?? 0) > 0);
}

function columnAt(text: string, start: number, owner: string, column: string, faults: Fault[]): Token {
  let end = start + owner.length + 1 + column.length;
  while (text.charAt(end) === '.') {
    const more = match(WORD, text, end + 1);
    if (more === undefined) break;
    end += 1 + more.length;
  }
  const written = text.slice(start, end);
  if (written.length > owner.length + 1 + column.length) {
    const cure = `A column is written with one dot, as in \`${owner}.${column}\``;
    faults.push({ code: 'formula-not-allowed', start, end, message: `\`${written}\` has more than one dot`, cure });
  }
  return { type: 'column', owner, column, start, end };
}

function strayUnit(text: string, where: Span, word: string, before: readonly Token[]): Fault {
  const last = before.at(-1);
  const message = `The unit \`${word}\` stands without a number`;
  const hyphened = last?.type === 'sign' && last.text === '-' && last.end === where.start ? before.at(-2) : undefined;
  const joined = last?.type === 'figure' ? last : hyphened?.type === 'figure' && hyphened.end === last?.start ? hyphened : undefined;
  if (joined?.unit?.text === word)
    return replaceFault('unknown-unit', where, `The unit \`${word}\` is written twice`, '', { start: joined.end, end: where.end });
  if (joined?.unit !== undefined && joined.unit.text !== '%' && word !== '%' && word !== '°') {
    const written = text.slice(joined.unit.start, where.end);
    const whole = { start: joined.unit.start, end: where.end };
    return replaceFault('unknown-unit', whole, `\`${written}\` is not a unit`, `${joined.unit.text}*${word}`);
  }
  if (last?.type === 'sign' && last.text === ')') {
    const insert = { start: where.start, end: where.end, text: `* 1 ${word}` };
    return {
      code: 'formula-not-allowed',
      ...where,
      message: `The unit \`${word}\` does not follow a number`,
      cure: `Write \`* 1 ${word}\``,
      edits: [insert],
    };
  }
  const cure =
    last?.type === 'name' || last?.type === 'column'
      ? `A named value carries its own unit: leave \`${word}\` out, or write \`* 1 ${word}\` after a plain number`
      : `Write the number before it, as in \`1 ${word}\``;
  return { code: 'formula-not-allowed', ...where, message, cure };
}

// Longest first. What is not in `PLAIN_SIGNS` is recognised only to be refused as a whole.
const GROUPS = /"[^"]*"|'[^']*'|\[[^\]]*\]|\{[^}]*\}/y;
const SIGNS = /\+\/-|>>>|\?\?|\?\.|<<|>>|\^\||\.\*|\.\/|\.\^|<=|>=|==|!=|&&|\|\||\*\*|<>|=>|=<|\/\/|[^]/uy;
const PLAIN_SIGNS: ReadonlySet<string> = new Set(['+', '-', '*', '/', '^', '<', '<=', '>', '>=', '==', '!=', '(', ')', ',', '±']);

/** Signs with one certain meaning here, which is written otherwise. */
const WRITTEN_OTHERWISE: ReadonlyMap<string, string> = new Map([
  ['×', '*'], ['·', '*'], ['⋅', '*'], ['÷', '/'], ['–', '-'], ['—', '-'], ['≤', '<='], ['≥', '>='], ['≠', '!='],
  ['**', '^'], ['&&', 'and'], ['||', 'or'], ['<>', '!='], ['=<', '<='], ['=>', '>='], ['²', '^2'], ['³', '^3'], ['π', 'pi'], ['√', 'sqrt'], ['"', 'inch'], ['″', 'inch'], ['”', 'inch'], ['º', '°'], ['˚', '°'],
]); // prettier-ignore

const NOT_PART: ReadonlyMap<string, string> = new Map([
  ['=', 'nothing is defined here; values are named in `let`'],
  [':', 'ranges are not part of formulas'],
  [';', 'a formula is one expression'],
  ['#', 'comments are not part of formulas'],
  ['?', 'choices with `?` are not part of formulas'],
  ["'", 'text is not part of formulas'],
  ['"', 'text is not part of formulas'],
  ['`', 'text is not part of formulas'],
  ['[', 'lists are not part of formulas'],
  [']', 'lists are not part of formulas'],
  ['{', 'maps are not part of formulas'],
  ['}', 'maps are not part of formulas'],
  ['!', 'factorials are not part of formulas'],
  ['&', 'bit operations are not part of formulas'],
  ['|', 'bit operations are not part of formulas'],
  ['~', 'bit operations are not part of formulas'],
  ['.', 'a dot stands inside a number or between a part and its column, without spaces'],
  ['.*', 'element-wise operators are not part of formulas'],
  ['./', 'element-wise operators are not part of formulas'],
  ['.^', 'element-wise operators are not part of formulas'],
]);

const NOT_PART_CURES: ReadonlyMap<string, string> = new Map([
  ['=', 'Write `==` to compare'],
  ['?', '`min` and `max` may serve'],
  ['!', 'Write `not` to negate a condition'],
  ['&', 'Write `and` to join conditions'],
  ['|', 'Write `or` to join conditions'],
  ['.', 'Write a dot inside a number or between a part and its column only'],
  ['.*', 'Write `*`'],
  ['./', 'Write `/`'],
  ['.^', 'Write `^`'],
  [';', 'Name its parts in `let`'],
]);

function signAt(text: string, start: number, before: readonly Token[], faults: Fault[]): SignToken {
  const last = before.at(-1);
  // After a figure a quotation mark is meant as inches; elsewhere a text or list is one mistake, not one for each sign.
  const group = last?.type === 'figure' ? undefined : match(GROUPS, text, start);
  const written = group ?? match(SIGNS, text, start) ?? text.charAt(start);
  const end = start + written.length;
  if (written === '+/-') return { type: 'sign', text: '±', start, end };
  // The typographic minus means nothing else.
  if (written === '\u2212') return { type: 'sign', text: '-', start, end };
  if (PLAIN_SIGNS.has(written)) return { type: 'sign', text: written, start, end };
  if (written === '%' || written === '°') {
    const message =
      written === '%' &&
      (last?.type === 'figure' || last?.type === 'name' || last?.type === 'column' || (last?.type === 'sign' && last.text === ')'))
        ? '`%` stands only right after a number and means a hundredth; a remainder is not part of formulas'
        : `\`${written}\` stands without a number`;
    const cure = written === '%' ? 'Write `/ 100` for a hundredth' : 'Write `* 1 deg`';
    faults.push({ code: 'formula-not-allowed', start, end, message, cure });
    return { type: 'sign', text: '?', start, end };
  }
  if (written === '√' && !/^[ \t]*\(/.test(text.slice(end))) {
    const cure = 'Write `sqrt(…)`, with what the root is taken of in parentheses';
    faults.push({ code: 'formula-not-allowed', start, end, message: '`√` is not part of the language', cure });
    return { type: 'sign', text: '?', start, end };
  }
  // Of `a ? b : c` the question mark is refused already.
  if (written === ':' && faults.some((fault) => text.charAt(fault.start) === '?')) return { type: 'sign', text: '?', start, end };
  const otherwise = WRITTEN_OTHERWISE.get(written);
  const asUnit = otherwise === 'inch' || otherwise === '°';
  if (otherwise !== undefined && (!asUnit || last?.type === 'figure')) {
    const text = otherwise === 'inch' ? ' inch' : otherwise;
    faults.push({
      ...replaceFault(asUnit ? 'unknown-unit' : 'formula-not-allowed', { start, end }, `\`${written}\` is not part of the language`, text),
      cure: `Write \`${otherwise}\``,
    });
    return { type: 'sign', text: '?', start, end };
  }
  const why = NOT_PART.get(group === undefined ? written : written.charAt(0));
  const shown = written === '\n' || written === '\r' ? 'a line break' : `\`${written}\``;
  const message = why === undefined ? `${shown} is not part of the language` : `${shown} cannot be used: ${why}`;
  const cure = NOT_PART_CURES.get(written) ?? 'Use numbers with units, names, parentheses, operators and functions only';
  faults.push({ code: 'formula-not-allowed', start, end, message, cure });
  return { type: 'sign', text: '?', start, end };
}

function match(pattern: RegExp, text: string, start: number): string | undefined {
  pattern.lastIndex = start;
  return pattern.exec(text)?.[0];
}

function span(stretch: Span): Span {
  return { start: stretch.start, end: stretch.end };
}
