/** Figures that a workshop can act on, near one that was solved for. */
import type { Dimension } from '../dimensions.ts';
import { PLACE_UNIT } from '../dimensions.ts';
import { fromSi, parseUnit, toSi } from './units.ts';

/**
 * The round figures on both sides of a value, the nearer first; one where the value is round itself. Empty where the unit is none.
 * @param value SI
 * @param unit as in `Value.unit`
 * @param finer decades finer than a workshop works to
 */
export function roundFigures(value: number, dimension: Dimension, unit: string, finer: number): readonly number[] {
  const parsed = parseUnit(unit === '' ? PLACE_UNIT[dimension] : unit);
  if (parsed === undefined || !Number.isFinite(value)) return [];
  const written = fromSi(value, parsed);
  // One step in the unit as written: the power of ten that is no coarser than a workshop's own.
  const step = Math.floor(Math.log10(fromSi(STEP[dimension], parsed)) + ROUNDING) - finer;
  const count = step < 0 ? written * 10 ** -step : written / 10 ** step;
  const counts = Math.abs(count - Math.round(count)) < ROUNDING ? [Math.round(count)] : [Math.round(count), other(count)];
  return counts.map((each) => toSi(step < 0 ? each / 10 ** -step : each * 10 ** step, parsed));
}

/**
 * The roundest figure near a value with which all is well: what a finding says to write and what its fix writes. The value itself where none is.
 * @param value as for `roundFigures`, as are dimension and unit
 */
export function roundFigure(value: number, dimension: Dimension, unit: string, isWell: (figure: number) => boolean): number {
  for (let finer = 0; finer <= FINEST; finer++) {
    const found = roundFigures(value, dimension, unit, finer).find(isWell);
    if (found !== undefined) return found;
  }
  return value;
}

/** Decades finer than a workshop works to that are tried where nothing coarser does it. */
export const FINEST = 2;

function other(count: number): number {
  const near = Math.round(count);
  return near > count ? near - 1 : near + 1;
}

/** Of a step; less is rounding of the computation. */
const ROUNDING = 1e-9;

/** What a workshop works to, SI: 0.01 mm, 0.01°, 0.1 N, 1 N·mm and so on. Common practice, no source. */
const STEP: Readonly<Record<Dimension, number>> = {
  number: 1e-3,
  length: 1e-5,
  area: 1e-6,
  angle: 0.01 * (Math.PI / 180),
  force: 0.1,
  torque: 1e-3,
  'linear-rate': 10,
  'torsional-rate': (0.01e-3 * 180) / Math.PI,
  inertia: 1e-6,
  voltage: 0.01,
  pressure: 100,
  'angle-per-length': 1,
};
