/**
 * A figure of both files and their difference, in words: with as many digits as it takes to tell the two apart, and so that the difference
 * is that of what is shown, or else has one digit more.
 */
import { FIGURE_UNIT_SI } from '../definition/dimensions.ts';
import type { Figure } from '../findings/finding.ts';
import type { OutcomeChange, OutcomeSide } from '../studies/compare/comparison.ts';
import { signed } from './compareFile.ts';
import { figureDigits, figureText, NO_VALUE, percentText } from './figure.ts';
import { withMinus } from './minus.ts';

export interface PairText {
  readonly was: string;
  readonly is: string;
  /** Signed; empty where a side has no figure. */
  readonly difference: string;
}

export function pairText(outcome: Pick<OutcomeChange, 'was' | 'is' | 'percent' | 'difference'>): PairText {
  const { was, is, percent, difference } = outcome;
  const [before, after] = [was?.figure, is?.figure];
  const comparable = before !== undefined && after !== undefined && difference !== undefined && difference !== 0;
  const usual = Math.max(...[before, after].map((figure) => (figure === undefined ? 0 : usualDigits(figure, percent))));
  let digits = usual;
  if (comparable) while (digits < usual + MOST_MORE && shown(before, percent, digits) === shown(after, percent, digits)) digits++;
  const side = (each: OutcomeSide | undefined): string =>
    [each?.figure && withUnit(each.figure, percent, digits), each?.text].filter((word) => word !== undefined).join(' ') || NO_VALUE;
  const texts = { was: withMinus(side(was)), is: withMinus(side(is)) };
  if (!comparable) return { ...texts, difference: '' };
  const told = Number(shown(after, percent, digits)) - Number(shown(before, percent, digits));
  const isTold = told.toFixed(digits) === (difference * scaleOf(after, percent)).toFixed(digits);
  const text = (value: number): string => {
    const size = withUnit({ value, dimension: after.dimension }, percent, isTold ? digits : digits + 1);
    return percent ? size.replace('%', 'points') : size;
  };
  return { ...texts, difference: signed(difference, text) };
}

/** Whether two figures lie apart by half of the last digit in which they are commonly shown; what is less is told as no difference. */
export function isShown({ was, is, percent, difference }: OutcomeChange): boolean {
  if (was?.figure === undefined || is?.figure === undefined || difference === undefined || was.text !== is.text) return true;
  const digits = Math.max(usualDigits(was.figure, percent), usualDigits(is.figure, percent));
  return Math.abs(difference * scaleOf(is.figure, percent)) >= 0.5 * 10 ** -digits;
}

/** Digits more than usual until two figures read differently. */
const MOST_MORE = 4;
const PERCENT_DIGITS = 1;

function usualDigits(figure: Figure, percent: boolean): number {
  return percent ? PERCENT_DIGITS : figureDigits(figure);
}

function scaleOf({ dimension }: Figure, percent: boolean): number {
  return percent ? 100 : 1 / FIGURE_UNIT_SI[dimension];
}

function shown(figure: Figure, percent: boolean, digits: number): string {
  return (figure.value * scaleOf(figure, percent)).toFixed(digits);
}

/** With at least so many digits that it does not read as nothing. */
function withUnit(figure: Figure, percent: boolean, digits: number): string {
  if (percent) return percentText(figure.value, digits);
  return figureText(figure, digits - figureDigits(figure));
}
