/** Of very many curves those that matter least: as what they all lie between, since so many lines could not be told apart. */
import type { ChartCurve } from '../../src/protocol/charts.ts';
import type { Spread } from './drawn.ts';

/** The least and the greatest of the figures that there are at each station; NaN where none has one. @returns as one column without a name */
export function between(curves: readonly ChartCurve[], stations: Float64Array): Spread {
  const low = new Float64Array(stations.length).fill(Number.NaN);
  const high = low.slice();
  for (const { values } of curves) {
    for (let i = 0; i < low.length; i++) {
      const value = values[i]!;
      // Whatever is compared with NaN is not smaller, so that the first figure takes its place.
      if (!(low[i]! <= value) && !Number.isNaN(value)) low[i] = value;
      if (!(high[i]! >= value) && !Number.isNaN(value)) high[i] = value;
    }
  }
  return { stations, columns: [{ column: '', low, high }] };
}
