/** One figure of a place: what it shall be, and how it is written. */
import type { Value } from '../definition/definition.ts';
import { PLACE_UNIT } from '../definition/dimensions.ts';
import { setFigure } from '../definition/edit.ts';
import type { Replacement } from '../definition/problem.ts';
import { fromSi, parseUnit, toSi } from '../definition/quantity/units.ts';

export interface Component {
  readonly value: Value;
  /** SI. */
  readonly target: number;
  /** How far the place moves for one unit (SI) of the figure, m: 1 of a length, the radius of an angle. */
  readonly metres: number;
}

/** The edit that writes a figure as short as it may be; undefined where it cannot be written. @param close SI */
export function writeFigure(text: string, value: Value, target: number, close: number): Replacement | undefined {
  return setFigure(text, value, shortened(target, unitOf(value), close), DIGITS);
}

/** The number with the fewest decimals in its unit that lies close enough; SI all of them. */
export function shortened(target: number, unit: string, close: number): number {
  const known = parseUnit(unit);
  if (known === undefined) return target;
  const written = fromSi(target, known);
  for (let decimals = 0; decimals <= MOST_DECIMALS; decimals++) {
    const short = toSi(Number(written.toFixed(decimals)), known);
    if (Math.abs(short - target) <= close) return short;
  }
  return target;
}

/** A figure without its unit. @param target SI; @param close SI */
export function figureText(target: number, unit: string, close: number): string {
  const known = parseUnit(unit);
  const short = shortened(target, unit, close);
  return String(Number((known === undefined ? short : fromSi(short, known)).toPrecision(DIGITS)));
}

export function unitOf({ unit, dimension }: Value): string {
  return unit === '' ? PLACE_UNIT[dimension] : unit;
}

/** Significant digits: more than what is shortened has, less than would show how a computer rounds. */
const DIGITS = 12;
const MOST_DECIMALS = 12;
