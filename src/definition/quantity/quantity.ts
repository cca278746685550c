/**
 * Reads a plain quantity, `number unit` with an optional tolerance, and tells one from a formula.
 *
 * SI = written value × unit; a bare number takes the unit of its place.
 */
import type { Vocabulary } from '../formula/scope.ts';
import type { Tolerance } from '../definition.ts';
import { PLACE_UNIT } from '../dimensions.ts';
import type { Dimension } from '../dimensions.ts';
import { CONSTANTS } from '../formula/functions.ts';
import { describeDimension, describeKind, kindFits, kindOf } from '../formula/kind.ts';
import type { Kind } from '../formula/kind.ts';
import { lex } from '../formula/lex.ts';
import type { FigureToken, Token } from '../formula/lex.ts';
import { nearestWord } from '../names.ts';
import type { Problem } from '../problem.ts';
import { placeInFile, replaceFault, toProblem } from './fault.ts';
import type { Fault, Origin } from './fault.ts';
import { foreignFault } from './foreignUnits.ts';
import { readTolerance, toleranceForm } from './tolerance.ts';
import type { ToleranceForm } from './tolerance.ts';
import { shortened } from '../source/shortened.ts';
import { FITTING_UNITS, parseUnit, spellingOf, toSi } from './units.ts';
import type { Unit } from './units.ts';

/** A quantity as read. */
export interface Quantity {
  /** SI. */
  readonly nominal: number;
  /** As written; the place's own unit where none was written. */
  readonly unit: string;
  readonly kind: Kind;
  readonly tolerance?: Tolerance;
}

/** What became of a text that may be a quantity. */
export type QuantityReading =
  /** A plain quantity, or what can only have been meant as one; `quantity` is absent where it cannot be used. */
  | { readonly form: 'quantity'; readonly quantity?: Quantity; readonly problems: readonly Problem[] }
  /** Names, operators or functions: for the formula reader. */
  | { readonly form: 'formula' };

/**
 * @param text the scalar, without quotes
 * @param at where the text stands in the file
 * @param expected what the place is; undefined where any kind will do (`let`), and a bare number is a plain number
 * @param names names of the file, so that `2 reach` is seen as a forgotten `*`
 */
export function readQuantity(text: string, at: Origin, expected: Dimension | undefined, names?: Vocabulary): QuantityReading {
  const early = notAQuantity(text);
  if (early !== undefined) return { form: 'quantity', problems: [toProblem(early, at)] };
  // Too long for a figure; so long a text is not worth taking apart here.
  if (text.trim().length > LONGEST_QUANTITY) return { form: 'formula' };
  const { tokens, faults } = lex(text, names);
  const signed = tokens[0]?.type === 'sign' && (tokens[0].text === '-' || tokens[0].text === '+');
  const figure = tokens[signed ? 1 : 0];
  if (figure?.type !== 'figure') return faults.length > 0 && tokens.length === 1 ? refuse(faults, at) : { form: 'formula' };
  const rest = tokens.slice(signed ? 2 : 1);
  const shape = shapeFault(text, figure, rest, names ?? NO_NAMES);
  if (shape !== undefined) return refuse([...faults.filter((fault) => fault.end <= shape.start), shape], at);
  const tolerance = rest.length > 0 ? toleranceForm(rest) : undefined;
  if (rest.length > 0 && tolerance === undefined && faults.length === 0) return { form: 'formula' };
  if (faults.length > 0) {
    return refuse(expected === undefined ? faults : faults.map((fault) => placedFault(text, fault, figure, expected)), at);
  }
  return readFigure(text, at, expected, figure, tokens[0]?.type === 'sign' && tokens[0].text === '-', tolerance);
}

/** A unit that the file does not know, told with what its place wants. */
function placedFault(text: string, fault: Fault, { digits, unit, value }: FigureToken, expected: Dimension): Fault {
  // As a factor of another unit it need not measure what the place wants.
  if (fault.code !== 'unknown-unit' || unit?.start !== fault.start || unit.end !== fault.end) return fault;
  const written = text.slice(fault.start, fault.end);
  const wanted = { dimension: expected, fitting: fittingUnits(expected) };
  return foreignFault(written, fault, { ...digits, value }, wanted) ?? fittingFault(written, fault, expected);
}

/** A word that is no unit, told with the nearest unit that fits its place: `Hg` of a length is no `kg`. */
function fittingFault(written: string, fault: Fault, expected: Dimension): Fault {
  const guess = fault.edits?.[0]?.text;
  if (guess !== undefined) {
    const unit = guess === '' || spellingOf(written) !== undefined ? undefined : parseUnit(guess);
    if (unit === undefined || kindFits(unit.kind, expected)) return fault;
  }
  const near = nearestWord(written, FITTING_UNITS[expected]);
  if (near !== undefined) return replaceFault('unknown-unit', fault, fault.message, near);
  return { code: 'unknown-unit', start: fault.start, end: fault.end, message: fault.message, cure: `Write ${fittingUnits(expected)}` };
}

const NO_NAMES: ReadonlySet<string> = new Set();

/** Quotation marks and the double prime, by which people mean inches. */
const INCH_MARKS: ReadonlySet<string> = new Set(['"', '″', '”', "''"]);

// Generous for a figure, two deviations and their units; what is longer is a formula or an accident.
const LONGEST_QUANTITY = 500;

function refuse(faults: readonly Fault[], at: Origin): QuantityReading {
  return { form: 'quantity', problems: faults.map((fault) => toProblem(fault, at)) };
}

function notAQuantity(text: string): Fault | undefined {
  const start = text.length - text.trimStart().length;
  const whole = { start: Math.min(start, text.length), end: Math.max(start, text.trimEnd().length) };
  const written = text.trim();
  if (written === '' || written === '~' || written === 'null') {
    return { code: 'bad-quantity', ...whole, message: 'There is no value', cure: 'Write a number with its unit, e.g. `38 mm`' };
  }
  if (/[\n\r\u2028\u2029\u0085]/.test(written)) {
    return { code: 'bad-quantity', ...whole, message: 'The value runs over several lines', cure: 'Write the value on one line' };
  }
  if (/^[+-]?\.?(?:inf|nan|infinity)$/i.test(written) && !/^(?:inf|nan|infinity)$/.test(written)) {
    const cure = 'Write a figure; where there is none, leave the key out, or write `~` for a reading';
    return { code: 'bad-quantity', ...whole, message: `\`${written}\` is not a quantity`, cure };
  }
  const quoted = /^[“”„‟«»‘’‚‛](.*)[“”„‟«»‘’‚‛]$/u.exec(written)?.[1];
  if (quoted !== undefined) {
    return replaceFault(
      'bad-quantity',
      whole,
      `\`${shortened(written)}\` stands in typographic quotation marks, which are text here`,
      quoted,
    );
  }
  if (parseUnit(written) !== undefined) {
    return {
      code: 'bad-quantity',
      ...whole,
      message: `\`${written}\` is a unit without a number`,
      cure: `Write the number before it, as in \`1 ${written}\``,
    };
  }
  return undefined;
}

/** What can only be a quantity gone wrong, not a formula. */
function shapeFault(text: string, figure: FigureToken, rest: readonly Token[], names: Vocabulary): Fault | undefined {
  const [next] = rest;
  if (next === undefined) return undefined;
  const fraction = /^\s*(?:(\d+)\s+)?(\d+)\s*\/\s*(\d+)\s*([A-Za-zµμ°"″”'].*)$/u.exec(text);
  if (fraction !== null) {
    const value = Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3]);
    const unit = fraction[4]?.trim() ?? '';
    if (Number.isFinite(value) && (parseUnit(unit) !== undefined || INCH_MARKS.has(unit))) {
      const whole = { start: figure.start, end: rest.at(-1)?.end ?? figure.end };
      return replaceFault(
        'bad-quantity',
        whole,
        `\`${text.trim()}\` has a fraction for its number`,
        `${value} ${INCH_MARKS.has(unit) ? 'inch' : unit}`,
      );
    }
  }
  // `35 % 2` is a remainder, which the formula reader has its own words for.
  // Of a word in between that is no unit, that is told alone.
  if (next.type === 'figure' && figure.unit?.text !== '%' && (figure.unit?.unknown.length ?? 0) === 0) {
    const grouped = /^\d{1,3}(?:[ \u00a0\u2009\u202f]\d{3})+(?![\d.])/.exec(text.slice(figure.start));
    if (grouped !== null && figure.unit === undefined) {
      const stretch = { start: figure.start, end: figure.start + grouped[0].length };
      return replaceFault('bad-quantity', stretch, `\`${grouped[0]}\` has spaces inside`, grouped[0].replace(/\D/g, ''));
    }
    const where = { start: next.start, end: next.end };
    return {
      code: 'bad-quantity',
      ...where,
      message: `A second number follows \`${text.slice(figure.start, figure.end)}\``,
      cure: 'Write one number with one unit',
    };
  }
  if (
    (next.type === 'name' || next.type === 'column') &&
    !names.has(next.type === 'name' ? next.text : next.owner) &&
    !(next.type === 'name' && CONSTANTS.has(next.text)) &&
    rest.length === 1
  ) {
    const where = { start: next.start, end: next.end };
    return {
      code: 'bad-quantity',
      ...where,
      message: `\`${text.slice(next.start, next.end)}\` follows the quantity`,
      cure: 'Leave it out, or put it into a comment after `#`',
    };
  }
  return undefined;
}

function readFigure(
  text: string,
  at: Origin,
  expected: Dimension | undefined,
  figure: FigureToken,
  negative: boolean,
  tolerance: ToleranceForm | undefined,
): QuantityReading {
  const placeUnit = expected === undefined ? '' : PLACE_UNIT[expected];
  const own: Unit = figure.unit ?? parseUnit(placeUnit) ?? { times: 1, over: 1, kind: kindOf('number') };
  const unit = figure.unit?.text ?? placeUnit;
  if (expected !== undefined && !kindFits(own.kind, expected)) return refuse([wrongUnit(figure, own, expected)], at);
  const nominal = toSi(figure.value, own) * (negative ? -1 : 1);
  if (!Number.isFinite(nominal)) return refuse([tooLarge(text, figure)], at);
  if (tolerance === undefined) return { form: 'quantity', quantity: { nominal, unit, kind: own.kind }, problems: [] };
  const late = lateUnit(figure, own, tolerance, unit);
  if (late !== undefined) return refuse([late], at);
  const reading = readTolerance(tolerance, text, own, unit);
  if ('code' in reading) {
    // The figure itself stands: all that does not depend on its tolerance can go on.
    return { form: 'quantity', quantity: { nominal, unit, kind: own.kind }, problems: [toProblem(reading, at)] };
  }
  const { plus, minus } = reading;
  if (!Number.isFinite(plus) || !Number.isFinite(minus)) return refuse([tooLarge(text, reading)], at);
  return {
    form: 'quantity',
    quantity: { nominal, unit, kind: own.kind, tolerance: { plus, minus, span: placeInFile(at, reading) } },
    problems: [],
  };
}

function tooLarge(text: string, where: { readonly start: number; readonly end: number }): Fault {
  const { start, end } = where;
  return {
    code: 'bad-quantity',
    start,
    end,
    message: `\`${text.slice(start, end)}\` is too large to be computed with`,
    cure: 'Check the exponent',
  };
}

function wrongUnit(figure: FigureToken, own: Unit, expected: Dimension): Fault {
  const where = figure.unit ?? figure;
  const written = figure.unit?.text ?? '';
  const message = `\`${written}\` is ${describeKind(own.kind)}, but ${describeDimension(expected)} is wanted here`;
  const forForce = written.replace(/\b(lb|kg)\b/, '$1f');
  const asForce = parseUnit(forForce);
  if (forForce !== written && asForce !== undefined && kindFits(asForce.kind, expected)) {
    return replaceFault('wrong-unit', where, `${message}: \`lb\` and \`kg\` are masses`, forForce);
  }
  return { code: 'wrong-unit', start: where.start, end: where.end, message, cure: `Write ${fittingUnits(expected)}` };
}

/** Units that fit a dimension, as words. */
export function fittingUnits(expected: Dimension): string {
  const units = FITTING_UNITS[expected];
  if (expected === 'number') return 'a number without a unit, or a percentage such as `35 %`';
  return units.length === 1 ? (units[0] ?? '') : `${units.slice(0, -1).join(', ')} or ${units.at(-1) ?? ''}`;
}

/** `1.5 ± 0.1 inch`: one unit for both is meant, while a bare figure would take the place's. */
function lateUnit(figure: FigureToken, own: Unit, form: ToleranceForm, unit: string): Fault | undefined {
  if (figure.unit !== undefined || form.form === 'broken' || form.form === 'plus-minus') return undefined;
  const written = form.form === 'both' ? form.figure.unit : (form.second.figure.unit ?? form.first.figure.unit);
  // A percentage is a share of the quantity rather than its unit, which is said of the tolerance.
  if (
    written === undefined ||
    written.text === '%' ||
    (written.times / written.over === own.times / own.over && kindFits(written.kind, 'number') === kindFits(own.kind, 'number'))
  )
    return undefined;
  const message = unit === '' ? 'The quantity itself has no unit' : `The quantity itself has no unit and would be in ${unit}`;
  return {
    code: 'missing-unit',
    start: figure.start,
    end: figure.end,
    message,
    cure: `Write the unit after both figures, as in \`${figure.value} ${written.text}\``,
    edits: [{ start: figure.end, end: figure.end, text: ` ${written.text}` }],
  };
}
