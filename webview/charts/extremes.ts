/** The least and the greatest of a curve, and where it is more than its chart shows: as marks in the drawing and in words beside it. */
import type { ChartCurve } from '../../src/protocol/charts.ts';
import { WORDS } from '../words.ts';
import type { DrawnChart, Stations } from './drawn.ts';
import { figureText, percentText, withUnit } from './figures.ts';
import { extentOf } from './scale.ts';

/** Indices of stations. */
export interface Extremes {
  readonly least: number;
  readonly greatest: number;
}

/** Where a curve first is as low and as high as it gets; undefined where it is level or has no figure. */
export function extremesOf(values: Float64Array): Extremes | undefined {
  if (!known.has(values)) known.set(values, findExtremes(values));
  return known.get(values);
}

const known = new WeakMap<Float64Array, Extremes | undefined>();

function findExtremes(values: Float64Array): Extremes | undefined {
  const extent = extentOf(values);
  if (extent === undefined) return undefined;
  const [least, greatest] = extent;
  const same = SAME * Math.max(Math.abs(least), Math.abs(greatest));
  if (greatest - least <= same) return undefined;
  return { least: values.findIndex((value) => value <= least + same), greatest: values.findIndex((value) => value >= greatest - same) };
}

/** Of a figure: less is rounding of the computation. */
const SAME = 1e-9;

/** E.g. `12.3 N`, `over 10`; a dash where there is none. */
export function curveText({ upTo, unit }: Pick<DrawnChart, 'upTo' | 'unit'>, value: number, digits: number): string {
  const text = withUnit(figureText(value, digits), unit);
  return upTo !== undefined && value >= upTo ? WORDS.over(withUnit(figureText(upTo, 0), unit)) : text;
}

/** E.g. `effort: least 5.1 N at 0.0 %, greatest 24.3 N at 98.1 %`. */
export function extremesInWords(chart: DrawnChart, { label, values, digits }: ChartCurve, { stations }: Stations): string {
  const extremes = extremesOf(values);
  const first = values.findIndex((value) => !Number.isNaN(value));
  const textAt = (index: number): string => curveText(chart, values[index]!, digits);
  if (extremes === undefined) return first < 0 ? WORDS.noFigures(label) : WORDS.level(label, textAt(first));
  const placeAt = (index: number): string => percentText(stations[index]!);
  const { least, greatest } = extremes;
  return WORDS.extremes(label, [textAt(least), placeAt(least)], [textAt(greatest), placeAt(greatest)]);
}

/** The curves that are more than is shown, and where, e.g. `shaft 0.0 to 12.3 %`; empty where none is. */
export function beyondShown({ curves, upTo }: DrawnChart, { stations }: Stations): readonly string[] {
  if (upTo === undefined) return [];
  return curves.flatMap(({ label, values }) => {
    const ranges: string[] = [];
    for (let from = 0; from < values.length; from++) {
      if (!(values[from]! >= upTo)) continue;
      let to = from;
      while (to + 1 < values.length && values[to + 1]! >= upTo) to++;
      ranges.push(WORDS.stretch(figureText(100 * stations[from]!, 1), percentText(stations[to]!)));
      from = to;
    }
    return ranges.length === 0 ? [] : [`${label} ${ranges.join(', ')}`];
  });
}
