/** Readings there and back: a line of its own for each pass of the pedal, so that what is lost between them is seen. */
import { expect, test } from 'vitest';
import { columnCharts } from '../../src/picture/studies/fitCharts.ts';
import { benchText, fitted } from '../studies/fit/bench.ts';

const THERE = [10, 30, 50, 70];
const BACK = [60, 50, 40, 20];
const base = { columns: ['pedal.travel', 'shaft.opening'], fit: ['link.length', 'main.slack'], noise: ['0.1 deg'] };

function curves(at: readonly number[], off: Readonly<Record<string, number>> = {}) {
  const fit = fitted(benchText({ ...base, at, off }));
  const [block] = columnCharts(fit, fit.columns[0]!, 0);
  return {
    fit,
    stations: block!.stations,
    read: block!.charts[0]!.curves.filter(({ label }) => label.startsWith('read')),
    misses: block!.charts[1]!.curves,
  };
}

test('each pass has its own curve of what was read and of the misses, through its own readings', () => {
  const { fit, stations, read, misses } = curves([...THERE, ...BACK]);
  expect(read.map(({ label }) => label)).toEqual(['read, there', 'read, back']);
  expect(misses.map(({ label }) => label)).toEqual(['read less found, there', 'read less found, back']);
  fit.readings.forEach(({ travel, value }, i) => {
    const own = read[i < THERE.length ? 0 : 1]!;
    const at = stations.reduce((nearest, each, k) => {
      const isOwn = Math.abs(own.values[k]! - (value * 180) / Math.PI) < 1e-9;
      return isOwn && Math.abs(each - travel) < 1e-6 ? k : nearest;
    }, -1);
    expect(at).toBeGreaterThanOrEqual(0);
  });
  // 60 % of the pass there lies on the straight line from 50 to 70 %, which is drawn so anyway; the pass back ends at 20 and 60 %.
  const at60 = stations.findIndex((each) => Math.abs(each - 0.6) < 1e-6);
  const [from, to] = [fit.readings[2]!.value, fit.readings[3]!.value].map((value) => (value * 180) / Math.PI);
  expect(read[0]!.values[at60]).toBeCloseTo((from! + to!) / 2, 6);
  expect(read[1]!.values[0]).toBeNaN();
  expect(read[1]!.values.at(-1)).toBeNaN();
});

test('one pass, or readings in no order, have one', () => {
  expect(curves([10, 20, 30, 40, 50, 60]).read.map(({ label }) => label)).toEqual(['read']);
  expect(curves([10, 50, 20, 60, 30, 40, 15]).read.map(({ label }) => label)).toEqual(['read']);
});
