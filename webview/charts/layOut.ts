/** Where everything in a chart stands: plot, ticks, curves with their strokes, labels at their ends. */
import type { ChartCurve, LimitBand } from '../../src/protocol/charts.ts';
import { WORDS } from '../words.ts';
import { curvePath, lastFigure } from './curve.ts';
import type { Plot } from './curve.ts';
import type { DrawnChart, Spread, Stations } from './drawn.ts';
import { nudge } from './endLabels.ts';
import { extremesOf, type Extremes } from './extremes.ts';
import { between } from './manyCurves.ts';
import { extent, extentOf, niceScale } from './scale.ts';
import { arrowsOn, loopOf, wayOf } from './loop.ts';
import type { Loop } from './loop.ts';
import type { Scale } from './scale.ts';
import type { TextWidth } from './textWidth.ts';

/** Another state's curves, drawn behind: before a trial, or of what is compared with. */
export interface Ghost {
  readonly kind: 'before' | 'compared';
  /** What it is called, e.g. `HEAD`. */
  readonly label: string;
  readonly picture: Stations;
  readonly charts: readonly DrawnChart[];
}

export interface LaidChart {
  readonly width: number;
  readonly height: number;
  readonly plot: Plot;
  readonly scale: Scale;
  readonly travelTicks: readonly number[];
  readonly bands: readonly LaidBand[];
  readonly ghosts: readonly { readonly kind: Ghost['kind']; readonly column: string; readonly path: string }[];
  readonly curves: readonly LaidCurve[];
  /** What the curves without a label lie between, and how many they are; undefined where each of them is drawn. */
  readonly others: { readonly path: string; readonly count: number } | undefined;
  /** Undefined where no two curves make one. */
  readonly loop: Loop | undefined;
  /** From closed to full; undefined where the chart has none. */
  readonly straight: string | undefined;
}

export interface LaidBand {
  readonly severity: LimitBand['severity'];
  readonly label: string;
  readonly y: number;
  readonly height: number;
  /** Edges that are within the chart, px. */
  readonly edges: readonly number[];
}

export interface LaidCurve {
  readonly curve: ChartCurve;
  readonly path: string;
  /** What most builds lie within, closed; empty where that is not known. */
  readonly spread: string;
  /** Heads that say which way it is gone through; empty where it has none. */
  readonly arrows: string;
  /** Dots where it is least and greatest; empty where it is level, or one of many. */
  readonly extremes: string;
  /** Which of the strokes; undefined for one of many, which is thin and has no label. */
  readonly stroke: number | undefined;
  readonly label: { readonly text: string; readonly y: number; readonly leader: string; readonly isFar: boolean } | undefined;
}

/** So many curves have a stroke and a label of their own. */
export const LABELLED = 8;
/** So many more are still told apart as thin lines. */
const THIN = 4;

export const HEIGHT = 168;
const TOP = 10;
const BOTTOM = 30;
const LINE_PX = 15;
const TICK_EVERY_PX = 31;
/** Labels take no more than this share of the width. */
const LABEL_SHARE = 0.36;
/** From the curve's end to its label. */
const LEADER_PX = 14;
/** From the end of the pedal axis, under which its last figure stands, to the name of the axis. */
export const AXIS_LABEL_GAP_PX = 18;
/** The lowest label stands this much above the axis, so that it keeps clear of the axis's name. */
const AXIS_CLEAR_PX = 5;
/** A limit is drawn unless it would widen the scale by more than this share. */
const WIDEN = 0.75;

/** What stands beside the plots, px; the same for all charts, so that their pedal axes stand one under another. */
export interface Margins {
  readonly left: number;
  readonly right: number;
}

/** Wide enough for the widest figure on the left, and on the right for the widest label as long as enough is left for the plot. */
export function marginsOf(charts: readonly DrawnChart[], ghosts: readonly Ghost[], width: number, textWidth: TextWidth): Margins {
  const ticks = charts.flatMap((chart) => {
    const { ticks: figures, digits } = scaleOf(chart, behindOf(chart, ghosts));
    return figures.map((tick) => textWidth(tick.toFixed(digits)));
  });
  const labels = charts.flatMap(({ curves }) => curves.slice(0, LABELLED).map(({ label }) => textWidth(label)));
  const room = Math.max(Math.min(width * LABEL_SHARE, Math.max(...labels)), AXIS_LABEL_GAP_PX - LEADER_PX + textWidth(WORDS.pedalAxis));
  return { left: Math.ceil(Math.max(...ticks)) + 12, right: Math.ceil(room) + LEADER_PX + 2 };
}

export function layOutChart(
  chart: DrawnChart,
  picture: Stations,
  ghosts: readonly Ghost[],
  width: number,
  margins: Margins,
  textWidth: TextWidth,
  spread?: Spread,
): LaidChart {
  const labelled = chart.curves.slice(0, LABELLED);
  const unlabelled = chart.curves.slice(LABELLED);
  const isMany = unlabelled.length > THIN;
  const behind = ghosts.flatMap(({ kind, picture: other, charts }) => {
    const same = charts.find(({ id }) => id === chart.id);
    const drawn = isMany ? same?.curves.filter(({ column }) => labelled.some((each) => each.column === column)) : same?.curves;
    return (drawn ?? []).map((curve) => ({ kind, curve, stations: other.stations }));
  });
  const scale = scaleOf(chart, behindOf(chart, ghosts), spread);
  const { left } = margins;
  const right = Math.max(left + 40, width - margins.right);
  const room = width - right - LEADER_PX;
  const bottom = HEIGHT - BOTTOM;
  const plot: Plot = {
    left,
    right,
    top: TOP,
    bottom,
    x: (travel) => left + travel * (right - left),
    y: (figure) => bottom - ((figure - scale.least) / (scale.greatest - scale.least)) * (bottom - TOP),
  };
  const ends = labelled.map(({ values }) => endOf(values, picture.stations, plot));
  const places = nudge(
    ends.map((end) => end?.y ?? plot.bottom),
    LINE_PX,
    TOP,
    bottom - AXIS_CLEAR_PX,
  );
  const paths = new Map(labelled.map(({ column, values }) => [column, pathOf(picture.stations, values, plot, scale)]));
  const loop = loopOf(chart, paths);
  return {
    width,
    height: HEIGHT,
    plot,
    scale,
    travelTicks: right - left < 220 ? [0, 0.5, 1] : [0, 0.25, 0.5, 0.75, 1],
    bands: chart.bands.map((band) => layOutBand(band, plot, scale)).filter((band) => band.height > 0),
    ghosts: behind.map(({ kind, curve, stations }) => ({ kind, column: curve.column, path: pathOf(stations, curve.values, plot, scale) })),
    curves: chart.curves.map((curve, index) => {
      const end = ends[index];
      const path = paths.get(curve.column) ?? '';
      const way = loop && wayOf(curve.column);
      const around = spread === undefined ? '' : spreadPath(curve.column, spread, plot);
      const arrows = way === undefined ? '' : arrowsOn(picture.stations, curve.values, plot, way);
      // One of many is drawn when its part is lit, and not before.
      const other = { curve, spread: around, arrows, extremes: '', stroke: undefined, label: undefined };
      if (index >= LABELLED)
        return {
          ...other,
          get path() {
            return pathOf(picture.stations, curve.values, plot, scale);
          },
        };
      if (end === undefined) return { curve, path, spread: around, arrows, extremes: '', stroke: index, label: undefined };
      // A curve that ends early is led to its label by a line that is not taken for the curve.
      const isFar = end.x < right - 1;
      const leader = `M${end.x} ${end.y}L${right} ${end.y}L${right + LEADER_PX - 3} ${places[index]!}`;
      return {
        curve,
        path,
        spread: around,
        arrows,
        extremes: dotsAt(extremesOf(curve.values), curve.values, picture.stations, plot),
        stroke: index,
        label: { text: fitted(curve.label, room, textWidth), y: places[index]!, leader, isFar },
      };
    }),
    others: isMany ? { path: spreadPath('', between(unlabelled, picture.stations), plot), count: unlabelled.length } : undefined,
    loop,
    straight: straightOf(chart, plot),
  };
}

/** Kept for each series, with what it was drawn in: of a state behind it is the same from picture to picture. */
function pathOf(stations: Float64Array, values: Float64Array, plot: Plot, { least, greatest }: Scale): string {
  const drawnIn = `${plot.left} ${plot.right} ${least} ${greatest}`;
  const before = drawnPaths.get(values);
  if (before?.drawnIn === drawnIn) return before.path;
  const path = curvePath(stations, values, plot);
  drawnPaths.set(values, { drawnIn, path });
  return path;
}

const drawnPaths = new WeakMap<Float64Array, { readonly drawnIn: string; readonly path: string }>();

const behindOf = ({ id }: DrawnChart, ghosts: readonly Ghost[]) =>
  ghosts.flatMap(({ charts }) => charts.find((chart) => chart.id === id)?.curves ?? []);

/** Wide enough for all curves, and for the limits that they come near. */
function scaleOf(chart: DrawnChart, others: readonly ChartCurve[], spread?: Spread): Scale {
  const around = chart.curves.flatMap(({ column }) => spread?.columns.filter((each) => each.column === column) ?? []);
  const series = [...[...chart.curves, ...others].map(({ values }) => values), ...around.flatMap(({ low, high }) => [low, high])];
  const extents = series.map((values) => extentOf(values)).filter((each) => each !== undefined);
  let [least, greatest] = extent(extents.flat()) ?? [0, 1];
  if (chart.straight) greatest = Math.max(greatest, FULLY_OPEN);
  const span = greatest - least;
  for (const { from, to } of chart.bands) {
    for (const edge of [from, to]) {
      if (edge === undefined || edge < least - WIDEN * span || edge > greatest + WIDEN * span) continue;
      [least, greatest] = [Math.min(least, edge), Math.max(greatest, edge)];
    }
  }
  return niceScale(least, greatest, (HEIGHT - TOP - BOTTOM) / TICK_EVERY_PX);
}

/** There along the upper edge, back along the lower: a piece for each stretch in which both are known. */
function spreadPath(column: string, { stations, columns }: Spread, plot: Plot): string {
  const spread = columns.find((each) => each.column === column);
  if (spread === undefined) return '';
  const { low, high } = spread;
  let path = '';
  let back = '';
  const end = (): void => {
    if (back !== '') path += `${back}Z`;
    back = '';
  };
  stations.forEach((at, i) => {
    if (Number.isNaN(low[i]) || Number.isNaN(high[i])) return end();
    const x = plot.x(at).toFixed(1);
    path += `${back === '' ? 'M' : 'L'}${x} ${plot.y(high[i]!).toFixed(1)}`;
    back = `L${x} ${plot.y(low[i]!).toFixed(1)}${back}`;
  });
  end();
  return path;
}

function dotsAt(extremes: Extremes | undefined, values: Float64Array, stations: Float64Array, plot: Plot): string {
  if (extremes === undefined) return '';
  const dot = (at: number): string => `M${plot.x(stations[at]!).toFixed(1)} ${plot.y(values[at]!).toFixed(1)}h0`;
  return dot(extremes.least) + dot(extremes.greatest);
}

function endOf(values: Float64Array, stations: Float64Array, plot: Plot) {
  const last = lastFigure(values);
  return last === undefined
    ? undefined
    : { x: Math.round(10 * plot.x(stations[last]!)) / 10, y: Math.round(10 * plot.y(values[last]!)) / 10 };
}

function layOutBand({ severity, from, to, label }: LimitBand, plot: Plot, { least, greatest }: Scale): LaidBand {
  const held = (figure: number) => Math.min(greatest, Math.max(least, figure));
  const top = plot.y(held(to ?? greatest));
  const bottom = plot.y(held(from ?? least));
  const edges = [from, to].filter((edge) => edge !== undefined && edge > least && edge < greatest).map((edge) => plot.y(edge!));
  return { severity, label, y: top, height: bottom - top, edges };
}

/** Equal throttle for equal pedal: from where the first curve begins to fully open at full pedal, in the percent that such a chart is in. */
function straightOf({ straight, curves }: DrawnChart, plot: Plot): string | undefined {
  const first = curves[0]!.values[0]!;
  if (!straight || Number.isNaN(first)) return undefined;
  return `M${plot.x(0)} ${plot.y(first).toFixed(1)}L${plot.x(1).toFixed(1)} ${plot.y(FULLY_OPEN).toFixed(1)}`;
}

/** % */
const FULLY_OPEN = 100;

/** As much of a label as there is room for. */
function fitted(label: string, room: number, textWidth: (text: string) => number): string {
  if (textWidth(label) <= room) return label;
  let length = label.length - 1;
  while (length > 1 && textWidth(`${label.slice(0, length)}…`) > room) length -= 1;
  return `${label.slice(0, length)}…`;
}
