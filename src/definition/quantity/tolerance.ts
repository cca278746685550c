/**
 * Reads what follows a plain quantity: `± 0.1 mm`, `+/- 0.1`, `+0.2/-0.1 mm`.
 *
 * A figure of the tolerance without a unit of its own takes the unit of the other one, or of the quantity.
 */
import type { FigureToken, Token } from '../formula/lex.ts';
import { commonKind, describeKind } from '../formula/kind.ts';
import type { Fault } from './fault.ts';
import { toSi } from './units.ts';
import type { Unit } from './units.ts';

/** Deviations in SI, neither negative; the place counts from the start of the text. */
export interface ToleranceReading {
  readonly start: number;
  readonly end: number;
  readonly plus: number;
  readonly minus: number;
}

interface Deviation {
  /** Absent where the figure stands without sign. */
  readonly sign?: '+' | '-';
  readonly figure: FigureToken;
}

/** What stands after the quantity, by its pattern alone. */
export type ToleranceForm =
  | { readonly form: 'both'; readonly figure: FigureToken; readonly start: number; readonly end: number; readonly sign?: '+' | '-' }
  | {
      readonly form: 'two';
      readonly first: Deviation;
      readonly second: Deviation;
      readonly slash: boolean;
      readonly start: number;
      readonly end: number;
    }
  /** `+-`, which may be meant as `±`. */
  | { readonly form: 'plus-minus'; readonly figure: FigureToken; readonly start: number; readonly end: number }
  /** A `±` that no deviation follows. */
  | { readonly form: 'broken'; readonly start: number; readonly end: number };

/** @returns undefined where the tokens are no tolerance of any form, right or wrong: then they are arithmetic. */
export function toleranceForm(tokens: readonly Token[]): ToleranceForm | undefined {
  const [a, b, c, d, e] = tokens;
  const last = tokens.at(-1);
  if (a === undefined || last === undefined) return undefined;
  const stretch = { start: a.start, end: last.end };
  if (isSign(a, '±')) {
    if (b?.type === 'figure' && c === undefined) return { form: 'both', figure: b, ...stretch };
    if ((isSign(b, '+') || isSign(b, '-')) && c?.type === 'figure' && d === undefined) {
      return { form: 'both', figure: c, ...stretch, sign: isSign(b, '+') ? '+' : '-' };
    }
    return { form: 'broken', ...stretch };
  }
  const sign = signOf(a);
  if (sign === undefined) return undefined;
  const adjacent = sign === '+' && isSign(b, '-') && a.end === b?.start;
  if (adjacent && c?.type === 'figure' && d === undefined) return { form: 'plus-minus', figure: c, ...stretch };
  if (b?.type !== 'figure' || c === undefined) return undefined;
  const first = { sign, figure: b };
  if (!isSign(c, '/')) {
    const second = signOf(c);
    if (second === undefined || d?.type !== 'figure' || e !== undefined) return undefined;
    return { form: 'two', first, second: { sign: second, figure: d }, slash: false, ...stretch };
  }
  const second = signOf(d);
  if (second !== undefined && e?.type === 'figure' && tokens.length === 5) {
    return { form: 'two', first, second: { sign: second, figure: e }, slash: true, ...stretch };
  }
  // `+0.2/0`: as arithmetic it would divide by zero.
  if (d?.type === 'figure' && d.value === 0 && e === undefined)
    return { form: 'two', first, second: { figure: d }, slash: true, ...stretch };
  return undefined;
}

/**
 * @param text the whole text, @param own the unit of the quantity, @param ownText that unit as written
 */
export function readTolerance(form: ToleranceForm, text: string, own: Unit, ownText: string): ToleranceReading | Fault {
  switch (form.form) {
    case 'broken': {
      const cure = 'Write one deviation after it, as in `38 mm ± 0.1 mm`';
      return { code: 'bad-tolerance', start: form.start, end: form.end, message: 'No single deviation follows the `±`', cure };
    }
    case 'plus-minus': {
      const written = text.slice(form.start, form.end);
      const edits = [{ start: form.start, end: form.figure.start, text: '± ' }];
      const cure = `Write \`± ${cut(text, form.figure)}\`, or for a difference \`- ${cut(text, form.figure)}\``;
      return {
        code: 'bad-tolerance',
        start: form.start,
        end: form.end,
        message: `\`${written}\` is neither a tolerance nor clear arithmetic`,
        cure,
        edits,
      };
    }
    case 'both': {
      if (form.sign !== undefined) {
        const written = cut(text, form.figure);
        const edits = [{ start: form.start, end: form.end, text: `± ${written}` }];
        return {
          code: 'bad-tolerance',
          start: form.start,
          end: form.end,
          message: 'A deviation after `±` has no sign',
          cure: `Write \`± ${written}\``,
          edits,
        };
      }
      const unit = form.figure.unit ?? own;
      const fault = misfit(form.figure, unit, own, ownText, text);
      if (fault !== undefined) return fault;
      const deviation = toSi(form.figure.value, unit);
      return { start: form.start, end: form.end, plus: deviation, minus: deviation };
    }
    case 'two':
      return readTwo(form, text, own, ownText);
  }
}

function readTwo(form: ToleranceForm & { readonly form: 'two' }, text: string, own: Unit, ownText: string): ToleranceReading | Fault {
  const { first, second } = form;
  const zeroSecond = second.sign === undefined;
  if (!form.slash) return twoTerms(form, text);
  if (!zeroSecond && first.sign === second.sign && first.figure.value !== 0 && second.figure.value !== 0) {
    const cure = 'Move the quantity itself to between its limits and write what remains as `+…/-…`';
    const message = `Both deviations go ${first.sign === '+' ? 'up' : 'down'}`;
    return { code: 'bad-tolerance', start: form.start, end: form.end, message, cure };
  }
  const firstUnit = first.figure.unit ?? second.figure.unit ?? own;
  const secondUnit = second.figure.unit ?? first.figure.unit ?? own;
  // A unit written once is blamed where it is written.
  const [blamed, other] = first.figure.unit === undefined ? [second, first] : [first, second];
  const unitOf = (deviation: Deviation): Unit => (deviation === first ? firstUnit : secondUnit);
  const fault = misfit(blamed.figure, unitOf(blamed), own, ownText, text) ?? misfit(other.figure, unitOf(other), own, ownText, text);
  if (fault !== undefined) return fault;
  const up = toSi(first.figure.value, firstUnit);
  const down = toSi(second.figure.value, secondUnit);
  // A signed zero says nothing about its side; the other figure does.
  const firstGoesUp = first.figure.value !== 0 || zeroSecond ? first.sign === '+' : second.sign === '-';
  return { start: form.start, end: form.end, plus: firstGoesUp ? up : down, minus: firstGoesUp ? down : up };
}

function twoTerms(form: ToleranceForm & { readonly form: 'two' }, text: string): Fault {
  const { first, second } = form;
  const message = `\`${text.slice(form.start, form.end)}\` is two signed terms: a tolerance has a slash between them, and a sum would be a guess`;
  const stretch = { start: form.start, end: form.end };
  if (first.sign === second.sign) {
    const cure = 'For a sum put parentheses round the first two terms; a tolerance is `+…/-…`';
    return { code: 'bad-tolerance', ...stretch, message, cure };
  }
  const mended = `${first.sign ?? ''}${cut(text, first.figure)}/${second.sign ?? ''}${cut(text, second.figure)}`;
  const cure = `Write \`${mended}\` for a tolerance; for a sum put parentheses round the first two terms`;
  return { code: 'bad-tolerance', ...stretch, message, cure, edits: [{ ...stretch, text: mended }] };
}

function misfit(figure: FigureToken, unit: Unit, own: Unit, ownText: string, text: string): Fault | undefined {
  // A plain number and a percentage are of one kind, but `0.15 ± 10 %` can be meant as ten percent of 0.15.
  const percentOfOther = figure.unit?.text === '%' && ownText !== '%';
  if (commonKind(unit.kind, own.kind) !== undefined && !percentOfOther) return undefined;
  const where = { start: figure.start, end: figure.end };
  const message = percentOfOther
    ? `\`${cut(text, figure)}\` is a share, not a deviation in the quantity's own unit`
    : `\`${cut(text, figure)}\` is ${describeKind(unit.kind)}, the quantity ${describeKind(own.kind)}`;
  const cure = ownText === '' ? 'Write the deviation as a plain number' : `Write the deviation in ${ownText}`;
  return { code: 'bad-tolerance', ...where, message, cure };
}

function cut(text: string, stretch: { readonly start: number; readonly end: number }): string {
  return text.slice(stretch.start, stretch.end);
}

function isSign(token: Token | undefined, text: string): boolean {
  return token?.type === 'sign' && token.text === text;
}

function signOf(token: Token | undefined): '+' | '-' | undefined {
  if (token?.type !== 'sign') return undefined;
  return token.text === '+' || token.text === '-' ? token.text : undefined;
}
