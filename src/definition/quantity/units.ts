/**
 * Units that a figure may be written in, and what each is in SI.
 *
 * Every factor is kept as `times / over` with both exact where the unit's definition is exact, so that
 * `38 mm` is 38 / 1000 correctly rounded and not 38 × a rounded 0.001.
 * Definitions, from memory, as in NIST SP 811: inch 25.4 mm and foot 12 inch (international, 1959);
 * pound 0.453 592 37 kg; standard gravity 9.806 65 m/s² (3rd CGPM, 1901), so lbf 4.448 221 615 260 5 N
 * and kgf 9.806 65 N; bar 100 kPa; psi one lbf per square inch. All exact.
 */
import type { Dimension } from '../dimensions.ts';
import { ENERGY, MASS, PLAIN, divideKinds, kindOf, multiplyKinds, powerOfKind } from '../formula/kind.ts';
import type { Kind } from '../formula/kind.ts';

/** SI value = written value × times / over. */
export interface Unit {
  readonly times: number;
  readonly over: number;
  readonly kind: Kind;
}

const LBF: Unit = { times: 44482216152605, over: 1e13, kind: kindOf('force') };

/** Units by name, as written. Compound units are made of these with `*`, `/` and whole exponents. */
export const UNITS: ReadonlyMap<string, Unit> = new Map<string, Unit>([
  ['mm', { times: 1, over: 1000, kind: kindOf('length') }],
  ['cm', { times: 1, over: 100, kind: kindOf('length') }],
  ['m', { times: 1, over: 1, kind: kindOf('length') }],
  ['um', { times: 1, over: 1e6, kind: kindOf('length') }],
  ['µm', { times: 1, over: 1e6, kind: kindOf('length') }], // U+00B5, micro sign
  ['μm', { times: 1, over: 1e6, kind: kindOf('length') }], // U+03BC, Greek mu
  ['inch', { times: 254, over: 10000, kind: kindOf('length') }],
  ['in', { times: 254, over: 10000, kind: kindOf('length') }],
  ['ft', { times: 3048, over: 10000, kind: kindOf('length') }],
  ['deg', { times: Math.PI, over: 180, kind: kindOf('angle') }],
  ['°', { times: Math.PI, over: 180, kind: kindOf('angle') }],
  ['rad', { times: 1, over: 1, kind: kindOf('angle') }],
  ['N', { times: 1, over: 1, kind: kindOf('force') }],
  ['kN', { times: 1000, over: 1, kind: kindOf('force') }],
  ['lbf', LBF],
  ['kgf', { times: 980665, over: 1e5, kind: kindOf('force') }],
  ['kg', { times: 1, over: 1, kind: MASS }],
  ['g', { times: 1, over: 1000, kind: MASS }],
  ['lb', { times: 45359237, over: 1e8, kind: MASS }],
  ['V', { times: 1, over: 1, kind: kindOf('voltage') }],
  ['mV', { times: 1, over: 1000, kind: kindOf('voltage') }],
  ['Pa', { times: 1, over: 1, kind: kindOf('pressure') }],
  ['kPa', { times: 1000, over: 1, kind: kindOf('pressure') }],
  ['bar', { times: 1e5, over: 1, kind: kindOf('pressure') }],
  ['psi', { times: LBF.times * 1e8, over: LBF.over * 254 * 254, kind: kindOf('pressure') }],
  ['J', { times: 1, over: 1, kind: ENERGY }],
  ['%', { times: 1, over: 100, kind: PLAIN }],
]);

/** Units that fit a place of each dimension, for people; not the full list where units can be combined freely. */
export const FITTING_UNITS: Readonly<Record<Dimension, readonly string[]>> = {
  number: ['%'],
  length: ['mm', 'cm', 'm', 'um', 'inch', 'in', 'ft'],
  area: ['mm^2', 'cm^2', 'm^2', 'inch^2'],
  angle: ['deg', '°', 'rad'],
  force: ['N', 'kN', 'lbf', 'kgf'],
  torque: ['N*mm', 'N*m', 'lbf*inch', 'lbf*ft'],
  'linear-rate': ['N/mm', 'N/m', 'lbf/inch'],
  'torsional-rate': ['N*mm/deg', 'N*m/rad', 'lbf*inch/deg'],
  inertia: ['kg*mm^2', 'kg*m^2', 'g*cm^2', 'lb*inch^2'],
  voltage: ['V', 'mV'],
  pressure: ['kPa', 'Pa', 'bar', 'psi'],
  'angle-per-length': ['deg/mm', 'rad/mm', 'deg/inch'],
};

/** Common ways of writing a unit that are not accepted, and what to write instead. */
export const UNIT_MISSPELLINGS: ReadonlyMap<string, string> = new Map([
  ['degree', 'deg'],
  ['degrees', 'deg'],
  ['degs', 'deg'],
  ['radian', 'rad'],
  ['radians', 'rad'],
  ['inches', 'inch'],
  ['ins', 'inch'],
  ['foot', 'ft'],
  ['feet', 'ft'],
  ['millimetre', 'mm'],
  ['millimetres', 'mm'],
  ['millimeter', 'mm'],
  ['millimeters', 'mm'],
  ['metre', 'm'],
  ['metres', 'm'],
  ['meter', 'm'],
  ['meters', 'm'],
  ['micron', 'um'],
  ['microns', 'um'],
  ['newton', 'N'],
  ['newtons', 'N'],
  ['Nm', 'N*m'],
  ['Nmm', 'N*mm'],
  ['nm', 'N*m'],
  ['nmm', 'N*mm'],
  ['lbs', 'lb'],
  ['pound', 'lb'],
  ['pounds', 'lb'],
  ['volt', 'V'],
  ['volts', 'V'],
  ['percent', '%'],
]);

/** The unit that a common spelling of another language or program stands for; undefined where it is none. */
export function spellingOf(word: string): string | undefined {
  return UNIT_MISSPELLINGS.get(word) ?? UNIT_MISSPELLINGS.get(word.toLowerCase());
}

/** A stretch of text, from the start of the text that was read. */
interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** A unit as found in a text right after a number. */
export interface UnitReading extends Unit, Stretch {
  readonly text: string;
  /** Words that stand where a unit should and are none. The conversion is then worthless. */
  readonly unknown: readonly (Stretch & { readonly word: string })[];
  /** An exponent that is not one whole number from −9 to 9 without 0. */
  readonly badExponent?: Stretch;
}

/**
 * Reads the longest unit that starts at `start`, spaces before it skipped. A `*` or `/` belongs to the unit only
 * where another unit follows it, a `^` only where a figure follows.
 * @param isOtherWord says of a word that it is not meant as a unit (an operator word, a function).
 * @returns undefined where no word stands there.
 */
export function readUnit(text: string, start: number, isOtherWord: (word: string) => boolean = () => false): UnitReading | undefined {
  const first = wordAt(text, skipSpaces(text, start));
  if (first === undefined || isOtherWord(first.word)) return undefined;
  const unknown: (Stretch & { readonly word: string })[] = [];
  let badExponent: Stretch | undefined;
  let unit: Unit = { times: 1, over: 1, kind: PLAIN };
  let end = first.end;
  let word: (Stretch & { readonly word: string }) | undefined = first;
  let divides = false;
  while (word !== undefined) {
    const factor = UNITS.get(word.word);
    if (factor === undefined) unknown.push(word);
    const exponent = word.word === '%' ? undefined : exponentAt(text, word.end);
    if (exponent?.value === undefined && exponent !== undefined) badExponent ??= exponent;
    const power = (exponent?.value ?? 1) * (divides ? -1 : 1);
    if (factor !== undefined) unit = combine(unit, factor, power);
    end = exponent?.end ?? word.end;
    if (word.word === '%') break;
    const next: { readonly word: Stretch & { readonly word: string }; readonly divides: boolean } | undefined = nextFactor(text, end);
    word = next?.word;
    divides = next?.divides ?? false;
  }
  return { ...unit, start: first.start, end, text: text.slice(first.start, end), unknown, ...(badExponent && { badExponent }) };
}

/** A whole text as a unit, e.g. `N·mm/deg`; the empty text is the plain number's. Undefined where it is none. */
export function parseUnit(text: string): Unit | undefined {
  if (skipSpaces(text, 0) === text.length) return { times: 1, over: 1, kind: PLAIN };
  const reading = readUnit(text, 0);
  if (reading === undefined || reading.unknown.length > 0 || reading.badExponent !== undefined) return undefined;
  return skipSpaces(text, reading.end) === text.length ? reading : undefined;
}

/** SI value of a written one. */
export function toSi(value: number, unit: Unit): number {
  return (value * unit.times) / unit.over;
}

/** What an SI value is in a unit. */
export function fromSi(value: number, unit: Unit): number {
  return (value * unit.over) / unit.times;
}

/** Blank, tab, and the no-break, figure, thin and narrow no-break spaces that text programs put before a unit. */
export function skipSpaces(text: string, start: number): number {
  let i = start;
  while (i < text.length && SPACES.has(text.charCodeAt(i))) i++;
  return i;
}

const SPACES: ReadonlySet<number> = new Set([0x20, 0x09, 0xa0, 0x2007, 0x2009, 0x202f]);
const WORD =
  /[A-Za-z_\u00b5\u00c0-\u00d6\u00d8-\u00f6\u00f8-\u02af\u0370-\u03ff][A-Za-z0-9_\u00b5\u00c0-\u00d6\u00d8-\u00f6\u00f8-\u02af\u0370-\u03ff]*|°[CF](?![A-Za-z0-9_])|[°%]/y;
const EXPONENT = /[+\-\u2212]?\d+(?:\.\d+)?/y;
const TOWER = /(?:[²³]|\^[ \t]*[+\-\u2212]?[\d.]*)+/y;
const LARGEST_EXPONENT = 9;

function wordAt(text: string, start: number): (Stretch & { readonly word: string }) | undefined {
  WORD.lastIndex = start;
  const word = WORD.exec(text)?.[0];
  return word === undefined ? undefined : { word, start, end: start + word.length };
}

function exponentAt(text: string, start: number): (Stretch & { readonly value?: number }) | undefined {
  let stretch: (Stretch & { readonly value?: number }) | undefined;
  const raised = '²³'.indexOf(text.charAt(start) || ' ');
  if (raised >= 0) {
    stretch = { start, end: start + 1, value: raised + 2 };
  } else {
    const caret = skipSpaces(text, start);
    if (text.charAt(caret) !== '^') return undefined;
    EXPONENT.lastIndex = skipSpaces(text, caret + 1);
    const digits = EXPONENT.exec(text)?.[0];
    if (digits === undefined) return undefined;
    const value = Number(digits.replace('\u2212', '-'));
    const usable = Number.isInteger(value) && value !== 0 && Math.abs(value) <= LARGEST_EXPONENT;
    stretch = { start: caret, end: EXPONENT.lastIndex, ...(usable && { value }) };
  }
  // A power of a power is left to nobody's guess.
  const after = skipSpaces(text, stretch.end);
  TOWER.lastIndex = after;
  return TOWER.test(text) ? { start: stretch.start, end: TOWER.lastIndex } : stretch;
}

function nextFactor(
  text: string,
  end: number,
): { readonly word: Stretch & { readonly word: string }; readonly divides: boolean } | undefined {
  const at = skipSpaces(text, end);
  const sign = text.charAt(at);
  if (sign === '' || !'*/·⋅'.includes(sign)) return undefined;
  const word = wordAt(text, skipSpaces(text, at + 1));
  if (word === undefined || word.word === '%' || !UNITS.has(word.word)) return undefined;
  return { word, divides: sign === '/' };
}

function combine(unit: Unit, factor: Unit, power: number): Unit {
  const count = Math.abs(power);
  const times = factor.times ** count;
  const over = factor.over ** count;
  return power < 0
    ? { times: unit.times * over, over: unit.over * times, kind: divideKinds(unit.kind, powerOfKind(factor.kind, count)) }
    : { times: unit.times * times, over: unit.over * over, kind: multiplyKinds(unit.kind, powerOfKind(factor.kind, count)) };
}
