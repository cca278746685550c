import { describe, expect, it } from 'vitest';
import { between, figureAt, lastKnown } from '../../../webview/drawing/interpolate.ts';

const stations = Float64Array.of(0, 0.25, 0.3, 0.7, 1);
const series = Float64Array.of(0.1, 0.7, 0.9000000000000001, -0.3, 1 / 3);

describe('interpolation', () => {
  it('is exact at each station', () => {
    stations.forEach((station, i) => expect(figureAt(series, between(stations, station))).toBe(series[i]));
  });

  it('is a straight line between two', () => {
    expect(figureAt(series, between(stations, 0.125))).toBeCloseTo(0.4, 12);
    expect(figureAt(series, between(stations, 0.6))).toBeCloseTo(0.9 - 1.2 * 0.75, 12);
  });

  it('ends at the first and the last station', () => {
    for (const travel of [-1, Number.NaN, 0]) expect(between(stations, travel)).toEqual({ from: 0, share: 0 });
    for (const travel of [1, 1.5]) expect(between(stations, travel)).toEqual({ from: 4, share: 0 });
    expect(between(Float64Array.of(0), 0.4)).toEqual({ from: 0, share: 0 });
  });

  it('has no figure where one of the two stations has none, but has it at the other', () => {
    const broken = Float64Array.of(1, 2, NaN, NaN, 5);
    expect(figureAt(broken, between(stations, 0.25))).toBe(2);
    expect(figureAt(broken, between(stations, 0.26))).toBeNaN();
    expect(figureAt(broken, between(stations, 0.9))).toBeNaN();
    expect(figureAt(broken, between(stations, 1))).toBe(5);
  });

  it('reads one of several figures of each station', () => {
    const triples = Float64Array.of(1, 10, 100, 2, 20, 200);
    expect(figureAt(triples, { from: 0, share: 0.5 }, 3, 1)).toBe(15);
    expect(figureAt(triples, { from: 1, share: 0 }, 3, 2)).toBe(200);
  });

  it('knows the last station with a figure', () => {
    expect([...lastKnown(Float64Array.of(NaN, 1, 2, NaN, NaN, 3, NaN))]).toEqual([1, 1, 2, 2, 2, 5, 5]);
    expect([...lastKnown(Float64Array.of(NaN, NaN))]).toEqual([-1, -1]);
  });
});
