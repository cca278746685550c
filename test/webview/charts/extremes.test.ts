/** Least, greatest and what is more than is shown, in words and as marks. */
import { describe, expect, test } from 'vitest';
import type { ChartCurve } from '../../../src/protocol/charts.ts';
import type { DrawnChart } from '../../../webview/charts/drawn.ts';
import { beyondShown, curveText, extremesInWords, extremesOf } from '../../../webview/charts/extremes.ts';
import { layOutChart } from '../../../webview/charts/layOut.ts';
import { chartCsv } from '../../../webview/charts/saveTable.ts';
import { EXAMPLE, showOf } from '../../support/viewForAll.ts';

const stations = Float64Array.from({ length: 11 }, (_, i) => i / 10);
const curve = (figure: (at: number) => number): ChartCurve => ({
  column: 'shaft.margin',
  label: 'shaft',
  part: 'shaft',
  values: stations.map(figure),
  digits: 1,
});
const chart = (each: ChartCurve, upTo?: number): DrawnChart => ({
  id: 'margins',
  title: 'Margins',
  unit: '',
  curves: [each],
  bands: [],
  straight: false,
  upTo,
});
const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const told = (figure: (at: number) => number, upTo?: number) => {
  const each = curve(figure);
  return plain(extremesInWords(chart(each, upTo), each, { stations }));
};

describe('least and greatest', () => {
  test('are told with the first place where they are', () => {
    expect(told((at) => (at - 0.3) ** 2)).toBe('shaft: least 0.0 at 30.0 %, greatest 0.5 at 100.0 %');
    expect(told((at) => Math.min(at, 0.6))).toBe('shaft: least 0.0 at 0.0 %, greatest 0.6 at 60.0 %');
    expect(told((at) => (at < 0.2 ? NaN : -at))).toBe('shaft: least −1.0 at 100.0 %, greatest −0.2 at 20.0 %');
  });

  test('are one figure where a curve is level but for rounding, and none where it has no figure', () => {
    expect(told((at) => 7 + 1e-12 * at)).toBe('shaft: 7.0 all along');
    expect(told(() => NaN)).toBe('shaft: no figure');
  });

  test('are the same as a look at every figure finds, and stand on the curve, in each chart of an example', () => {
    const { charts, picture } = showOf(EXAMPLE);
    for (const each of charts) {
      const laid = layOutChart(each, picture, [], 600, { left: 40, right: 90 }, (text) => 6 * text.length);
      for (const { curve: drawn, extremes } of laid.curves) {
        const known = [...drawn.values].filter((value) => !Number.isNaN(value));
        const found = extremesOf(drawn.values);
        if (found === undefined) {
          expect(Math.max(...known) - Math.min(...known)).toBeLessThanOrEqual(1e-9 * Math.max(...known.map(Math.abs)));
          continue;
        }
        expect(drawn.values[found.least]).toBeCloseTo(Math.min(...known), 6);
        expect(drawn.values[found.greatest]).toBeCloseTo(Math.max(...known), 6);
        const dots = [found.least, found.greatest].map(
          (at) => `M${laid.plot.x(picture.stations[at]!).toFixed(1)} ${laid.plot.y(drawn.values[at]!).toFixed(1)}h0`,
        );
        expect(extremes).toBe(dots.join(''));
      }
    }
  });
});

describe('what is more than a chart shows', () => {
  const clipped = (at: number) => (at <= 0.2 ? 10 : at === 0.5 ? 10 : at);

  test('is said to be over it, wherever a figure of it is told', () => {
    expect([10, 9.94, NaN].map((value) => curveText({ upTo: 10, unit: '' }, value, 1))).toEqual(['over 10', '9.9', '–']);
    expect(curveText({ unit: 'N' }, 10, 1)).toBe('10.0\u00a0N');
    expect(told(clipped, 10)).toBe('shaft: least 0.3 at 30.0 %, greatest over 10 at 0.0 %');
    expect(chartCsv(chart(curve(clipped), 10), { stations }).split('\r\n')[0]).toBe('pedal.travel [%],shaft.margin [up to 10]');
  });

  test('is told with the stretches where it is', () => {
    expect(beyondShown(chart(curve(clipped), 10), { stations }).map(plain)).toEqual(['shaft from 0.0 to 20.0 %, at 50.0 %']);
    expect(beyondShown(chart(curve(clipped)), { stations })).toEqual([]);
    expect(
      beyondShown(
        chart(
          curve((at) => at),
          10,
        ),
        { stations },
      ),
    ).toEqual([]);
  });
});
