/** Charts of very many curves: which are drawn, and what the others lie between, against the figures themselves. */
import { describe, expect, test } from 'vitest';
import type { Chart } from '../../../src/protocol/charts.ts';
import { layOutChart } from '../../../webview/charts/layOut.ts';
import { between } from '../../../webview/charts/manyCurves.ts';

const stations = Float64Array.from({ length: 41 }, (_, index) => index / 40);
/** Each higher than the one before by 1 in the middle, crossing it towards the end; a few have no figure in places. */
const chartOf = (count: number): Chart => ({
  id: 'angles',
  title: 'Angles',
  unit: 'deg',
  curves: Array.from({ length: count }, (_, i) => ({
    column: `rod_${i}.transmission`,
    label: `rod_${i}`,
    part: `rod_${i}`,
    digits: 1,
    values: stations.map((at) => (i % 5 === 4 && at > 0.8 ? Number.NaN : 40 + i * Math.cos(4 * at))),
  })),
  bands: [],
  straight: false,
});
const laid = (chart: Chart, width = 300) => layOutChart(chart, { stations }, [], width, { left: 40, right: 60 }, (text) => 6 * text.length);

describe('a chart of very many curves', () => {
  test('draws the foremost, and of the others the least and the greatest at each station', () => {
    const chart = chartOf(60);
    const { others, curves, plot } = laid(chart);
    expect(others!.count).toBe(52);
    expect(curves.filter(({ stroke }) => stroke !== undefined).map(({ curve }) => curve.column)).toEqual(
      chart.curves.slice(0, 8).map(({ column }) => column),
    );
    const rest = chart.curves.slice(8);
    const edges = [Math.max, Math.min].map((most) =>
      Array.from(stations, (at, i) => {
        const figures = rest.map(({ values }) => values[i]!).filter((value) => !Number.isNaN(value));
        return `${plot.x(at).toFixed(1)} ${plot.y(most(...figures)).toFixed(1)}`;
      }),
    );
    // There along the upper edge, back along the lower.
    expect(others!.path).toBe(`M${[...edges[0]!, ...edges[1]!.reverse()].join('L')}Z`);
  });

  test('has a gap where none of the others has a figure, and one curve alone lies between itself', () => {
    const [curve] = chartOf(5).curves.slice(4);
    const { columns } = between([curve!], stations);
    expect(columns[0]!.low).toEqual(curve!.values);
    expect(columns[0]!.high).toEqual(curve!.values);
    expect(between([], stations).columns[0]!.low.every(Number.isNaN)).toBe(true);
  });

  test('draws each of a few more as a line, and any of the others once it is wanted', () => {
    expect(laid(chartOf(12)).others).toBeUndefined();
    expect(laid(chartOf(12)).curves.at(-1)!.path).toMatch(/^M40 /);
    expect(laid(chartOf(13)).others!.count).toBe(5);
    const { curves } = laid(chartOf(13));
    expect(curves.at(-1)!.path).toBe(laid({ ...chartOf(13), curves: chartOf(13).curves.toReversed() }).curves[0]!.path);
  });
});
