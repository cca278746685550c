/** Figures of two linkages beside each other, in words: outcomes that differ, and curves at a few stations. */
import type { Comparison, Curve, OutcomeChange, OutcomeSide } from '../studies/compare/comparison.ts';
import { signed } from './compareFile.ts';
import { decimal, NO_VALUE, percentText } from './figure.ts';
import { isShown, pairText } from './figurePair.ts';
import { withMinus } from './minus.ts';

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
 * What matters most first. Of what several outcomes say alike (the least drive angle of a part is that of its column) the first;
 * rotations, which openings tell better, and what differs by less than half a shown digit are left out.
 */
export function figureRows({ outcomes }: Pick<Comparison, 'outcomes'>): readonly FigureRow[] {
  const told = new Set<string>();
  const columns = outcomes.filter(({ from, was, is }) => from === 'column' && was?.figure !== undefined && is?.figure !== undefined);
  return outcomes.filter((outcome) => isShown(outcome) && !isHalf(outcome, columns) && isNew(outcome, told)).map(figureRow);
}

/** Rows that are shown at once: about a screen with what else there is to tell. */
export const SHOWN_FIGURES = 12;

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
  // Where the rounded values lie apart otherwise than they do themselves, the differences have a digit more.
  const isTold = indices.every((index) => {
    const [before, after, apart] = [was[index] ?? null, is[index] ?? null, difference[index] ?? null];
    if (before === null || after === null || apart === null) return true;
    return decimal(Number(plain(after)) - Number(plain(before)), digits) === plain(apart);
  });
  const apartDigits = isTold ? digits : digits + 1;
  const size = (value: number): string => decimal(value, apartDigits);
  const withSign = (value: number): string => (Number(size(value)) === 0 ? size(0) : signed(value, size));
  let most = 0;
  difference.forEach((value, index) => {
    if (Math.abs(value ?? 0) > Math.abs(difference[most] ?? 0)) most = index;
  });
  const greatest = difference[most] ?? 0;
  const shownUnit = unit === '' ? '' : ` ${unit}`;
  return {
    title: unit === '' ? column : `${column} [${unit}]`,
    stations: indices.map((index) => percentText(stations[index] ?? 0)),
    was: cells(was, (value) => withMinus(plain(value))),
    is: cells(is, (value) => withMinus(plain(value))),
    difference: cells(difference, withSign),
    most: greatest === 0 ? '' : `furthest apart: ${withSign(greatest)}${shownUnit} at ${percentText(stations[most] ?? 0)} of pedal travel`,
  };
}

/** Pedal travels in %; each is one of the 101 even stations. */
const SHOWN_STATIONS = [0, 10, 25, 50, 75, 90, 100];
const DIGITS: Readonly<Record<string, number>> = { '%': 1, deg: 2, mm: 2, 'mm²': 0, V: 3, N: 1, 'N·mm': 0 };
const DEFAULT_DIGITS = 3;

function isNew({ part, key, label, was, is, from }: OutcomeChange, told: Set<string>): boolean {
  if (from === 'column' && key.startsWith('rotation.')) return false;
  const figures = [was, is].map((side) => side?.figure && `${side.figure.dimension} ${side.figure.value.toPrecision(ALIKE)}`);
  if (figures.every((figure) => figure === undefined)) return true;
  const values = [...figures, was?.figure && is?.figure ? '' : `${was?.text ?? ''} ${is?.text ?? ''}`].join(' ');
  // The pull of a pedal that is a cable is that of the cable.
  const keys = [`${part} ${values}`, ...(label === 'pull' ? [`pull ${values}`] : [])];
  const isTold = keys.some((each) => told.has(each));
  for (const each of keys) told.add(each);
  return !isTold;
}

/** A part's figure that one side alone has, as the stretch of a cable that stretches there alone; its column has both. */
function isHalf({ from, part, was, is }: OutcomeChange, columns: readonly OutcomeChange[]): boolean {
  if (from !== 'part' || (was?.figure === undefined) === (is?.figure === undefined)) return false;
  return columns.some(
    (column) => column.part === part && (was?.figure ? isAlike(column.was, was) : is?.figure !== undefined && isAlike(column.is, is)),
  );
}

function isAlike(one: OutcomeSide | undefined, other: OutcomeSide): boolean {
  return (
    one?.figure?.dimension === other.figure?.dimension && one?.figure?.value.toPrecision(ALIKE) === other.figure?.value.toPrecision(ALIKE)
  );
}

/** Significant digits. */
const ALIKE = 7;

function figureRow(outcome: OutcomeChange): FigureRow {
  return { part: outcome.part, label: labelText(outcome), ...pairText(outcome), at: placeText(outcome) };
}

/** Some labels lean on the one before them, or are the key of a column. */
function labelText({ from, about, key, label }: OutcomeChange): string {
  if (from === 'column') {
    const [column = '', ...words] = label.split(' ');
    const [name, which] = [COLUMN_WORDS[column] ?? column, words.join(' ')];
    return which === 'least' || which === 'greatest' ? `${which} ${name}` : `${name} ${which}`;
  }
  if (from !== 'part') return label;
  if (key === 'at full pedal' && about === 'signal') return 'signal at full pedal';
  return PART_WORDS[key] ?? label;
}

const COLUMN_WORDS: Readonly<Record<string, string>> = {
  area: 'open area of one plate',
  fraction: 'share of the greatest open area',
  closing: 'closing torque',
  torque: 'closing torque',
  effort: 'effort',
  percent: 'share of the signal',
  transmission: 'transmission angle',
  drive: 'drive angle',
  angle: 'sensor angle',
};
const PART_WORDS: Readonly<Record<string, string>> = {
  greatest: 'greatest closing torque',
  'and close by': 'driving arm can close from drawn by',
  opens: 'full opening',
  'open area of one plate': 'greatest open area of one plate',
};

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
