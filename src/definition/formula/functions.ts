/**
 * Words of the formula language besides names and units: its functions, its constant and its operator words.
 * The whitelist of the parser, the reserved names and the reference page are made from these tables.
 */

/** What kinds a function takes and gives. */
export type ArgumentRule =
  /** One angle, giving a plain number. */
  | 'angle-to-number'
  /** One plain number, giving an angle. */
  | 'number-to-angle'
  /** Arguments of one kind, giving an angle. */
  | 'same-to-angle'
  /** Arguments of one kind, giving that kind. */
  | 'same'
  /** The square root of one quantity. */
  | 'root'
  /** Plain numbers, giving one. */
  | 'number'
  /** A pedal position and an expression, giving the expression's kind. */
  | 'at'
  /** A condition, giving a pedal position. */
  | 'where';

/** A function of the language. */
export interface FormulaFunction {
  readonly least: number;
  /** Infinity: any number of arguments. */
  readonly most: number;
  readonly rule: ArgumentRule;
  /** Only in `require`. */
  readonly requireOnly: boolean;
  /** One line for the reference page and completion. */
  readonly summary: string;
}

/** All functions by name. */
export const FUNCTIONS: ReadonlyMap<string, FormulaFunction> = new Map<string, FormulaFunction>([
  ['sin', { least: 1, most: 1, rule: 'angle-to-number', requireOnly: false, summary: 'sine of an angle' }],
  ['cos', { least: 1, most: 1, rule: 'angle-to-number', requireOnly: false, summary: 'cosine of an angle' }],
  ['tan', { least: 1, most: 1, rule: 'angle-to-number', requireOnly: false, summary: 'tangent of an angle' }],
  ['asin', { least: 1, most: 1, rule: 'number-to-angle', requireOnly: false, summary: 'angle with the given sine, −90° to 90°' }],
  ['acos', { least: 1, most: 1, rule: 'number-to-angle', requireOnly: false, summary: 'angle with the given cosine, 0° to 180°' }],
  ['atan', { least: 1, most: 1, rule: 'number-to-angle', requireOnly: false, summary: 'angle with the given tangent, −90° to 90°' }],
  ['atan2', { least: 2, most: 2, rule: 'same-to-angle', requireOnly: false, summary: 'direction of (x, y), written atan2(y, x)' }],
  ['hypot', { least: 1, most: Infinity, rule: 'same', requireOnly: false, summary: 'square root of the sum of squares' }],
  ['sqrt', { least: 1, most: 1, rule: 'root', requireOnly: false, summary: 'square root' }],
  ['abs', { least: 1, most: 1, rule: 'same', requireOnly: false, summary: 'the value without its sign' }],
  [
    'min',
    { least: 1, most: Infinity, rule: 'same', requireOnly: false, summary: 'least of its arguments; of one column, least over the travel' },
  ],
  [
    'max',
    {
      least: 1,
      most: Infinity,
      rule: 'same',
      requireOnly: false,
      summary: 'greatest of its arguments; of one column, greatest over the travel',
    },
  ],
  ['round', { least: 1, most: 1, rule: 'number', requireOnly: false, summary: 'nearest whole number, halves away from zero' }],
  ['floor', { least: 1, most: 1, rule: 'number', requireOnly: false, summary: 'greatest whole number not above' }],
  ['ceil', { least: 1, most: 1, rule: 'number', requireOnly: false, summary: 'least whole number not below' }],
  ['at', { least: 2, most: 2, rule: 'at', requireOnly: true, summary: 'at(p, x): x at pedal position p' }],
  ['where', { least: 1, most: 1, rule: 'where', requireOnly: true, summary: 'where(c): first pedal position at which c holds' }],
]);

/** All constants by name; plain numbers. */
export const CONSTANTS: ReadonlyMap<string, number> = new Map([['pi', Math.PI]]);

/** Operators of the language that are written as words. */
export const OPERATOR_WORDS: ReadonlySet<string> = new Set(['and', 'or', 'not']);

/** Words that the underlying parser gives a meaning of its own, which this language does not have, and why not. */
export const FOREIGN_WORDS: ReadonlyMap<string, string> = new Map([
  ['mod', 'a remainder is not part of formulas'],
  ['to', 'unit conversion is not part of formulas: units are converted on their own'],
  ['xor', '`xor` is not part of formulas'],
]);

/** Values of YAML or of mathematics at large that are no constants of this language; a `let` may still be called `e` or `i`. */
export const FOREIGN_CONSTANTS: ReadonlySet<string> = new Set([
  'e', 'i', 'tau', 'phi', 'true', 'false', 'null', 'undefined', 'inf', 'nan', 'Infinity', 'NaN', 'E', 'PI', 'LN2', 'LN10', 'LOG2E', 'LOG10E', 'SQRT1_2', 'SQRT2',
]); // prettier-ignore
