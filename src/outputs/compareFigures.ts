/** Figures of two linkages beside each other, in words: outcomes that differ, and curves at a few stations. */
import type { Figure } from '../findings/finding.ts';
import type { Comparison, Curve, OutcomeChange, OutcomeSide } from '../studies/compare/comparison.ts';
import { signed } from './compareFile.ts';
import { decimal, figureText, NO_VALUE, percentText } from './figure.ts';

/** Plain text, not yet made fit to be shown. */
export interface FigureRow {
  readonly part: string;
  readonly label: string;
  readonly was: string;
  readonly is: string;
  /** Empty where a side has no figure. */
  readonly difference: string;
  /** Pedal travel where it holds, of both sides where they differ; empty where it has none or is one itself. */
  readonly at: string;
}

/**
 * Of what several outcomes say alike (the least drive angle of a part is that of its column) the first; rotations, which openings
 * tell better, are left out.
 */
export function figureRows({ outcomes }: Pick<Comparison, 'outcomes'>): readonly FigureRow[] {
  const told = new Set<string>();
  return outcomes.filter((outcome) => isNew(outcome, told)).map(figureRow);
}

/** A curve as a small table: a row of pedal travels, both values, and the difference. */
export interface CurveRows {
  /** With its unit. */
  readonly title: string;
  readonly stations: readonly string[];
  readonly was: readonly string[];
  readonly is: readonly string[];
  readonly difference: readonly string[];
  /** Where the two lie furthest apart, of all stations; empty where they never do. */
  readonly most: string;
}

export function curveRows({ column, unit, stations, was, is, difference }: Curve): CurveRows {
  const indices = SHOWN_STATIONS.map((percent) => stations.indexOf(percent / 100)).filter((index) => index >= 0);
  const digits = DIGITS[unit] ?? DEFAULT_DIGITS;
  const cells = (values: readonly (number | null)[], text: (value: number) => string): string[] =>
    indices.map((index) => {
      const value = values[index];
      return value === null || value === undefined ? NO_VALUE : text(value);
    });
  const plain = (value: number): string => decimal(value, digits);
  const withSign = (value: number): string => (Number(plain(value)) === 0 ? plain(0) : signed(value, plain));
  let most = 0;
  difference.forEach((value, index) => {
    if (Math.abs(value ?? 0) > Math.abs(difference[most] ?? 0)) most = index;
  });
  const greatest = difference[most] ?? 0;
  const shownUnit = unit === '' ? '' : ` ${unit}`;
  return {
    title: unit === '' ? column : `${column} [${unit}]`,
    stations: indices.map((index) => percentText(stations[index] ?? 0)),
    was: cells(was, plain),
    is: cells(is, plain),
    difference: cells(difference, withSign),
    most: greatest === 0 ? '' : `furthest apart: ${withSign(greatest)}${shownUnit} at ${percentText(stations[most] ?? 0)} of pedal travel`,
  };
}

/** Pedal travels in %; each is one of the 101 even stations. */
const SHOWN_STATIONS = [0, 10, 25, 50, 75, 90, 100];
const DIGITS: Readonly<Record<string, number>> = { '%': 1, deg: 2, mm: 2, 'mm²': 0, V: 3, N: 1, 'N·mm': 0 };
const DEFAULT_DIGITS = 3;

function isNew({ part, key, was, is, from }: OutcomeChange, told: Set<string>): boolean {
  if (from === 'column' && key.startsWith('rotation.')) return false;
  if (was?.figure === undefined || is?.figure === undefined) return true;
  const same = [part, was.figure.dimension, was.figure.value.toPrecision(ALIKE), is.figure.value.toPrecision(ALIKE)].join(' ');
  if (told.has(same) && from === 'column') return false;
  told.add(same);
  return true;
}

/** Significant digits. */
const ALIKE = 9;

function figureRow(outcome: OutcomeChange): FigureRow {
  const { part, label, percent, was, is, difference } = outcome;
  const text = (figure: Figure, more: number): string => (percent ? percentText(figure.value, 1 + more) : figureText(figure, more));
  const side = (each: OutcomeSide | undefined, more: number): string =>
    [each?.figure && text(each.figure, more), each?.text].filter((word) => word !== undefined).join(' ') || NO_VALUE;
  let more = 0;
  while (more < MOST_MORE && difference !== undefined && side(was, more) === side(is, more)) more++;
  const dimension = is?.figure?.dimension;
  const words =
    difference === undefined || dimension === undefined || difference === 0
      ? ''
      : signed(difference, (value) =>
          percent ? percentText(value, 1 + more).replace('%', 'points') : figureText({ value, dimension }, more),
        );
  return { part, label, was: side(was, more), is: side(is, more), difference: words, at: placeText(outcome) };
}

/** Digits more than usual until two figures read differently. */
const MOST_MORE = 4;

function placeText({ from, label, percent, was, is }: OutcomeChange): string {
  const place = (side: OutcomeSide | undefined): string => {
    if (side?.travel === undefined) return '';
    const isItself = from === 'fact' && percent && side.travel === side.figure?.value;
    return isItself ? '' : percentText(side.travel);
  };
  const [before, after] = [place(was), place(is)];
  // Some labels name the place themselves.
  if (before === after) return /(?:pedal travel|at rest|at full pedal)$/.test(label) ? '' : after;
  return [before, after].map((each) => (each === '' ? NO_VALUE : each)).join(' → ');
}
