/**
 * Series that say the same as before are the same arrays as before: what has been drawn of them is kept by them, and need not be drawn again.
 */
import type { Chart } from '../../src/protocol/charts.ts';
import type { Picture } from '../../src/protocol/picture.ts';
import type { HeldChart } from './follows.ts';

interface Drawn {
  readonly picture: Picture;
  readonly charts: readonly Chart[];
}

/** The same, with arrays of the charts before wherever their figures are at the same stations and are the same. */
export function keptFigures({ picture, charts }: Drawn, before: readonly HeldChart[]): Drawn {
  const stations = before.find((each) => isSame(each.picture.stations, picture.stations))?.picture.stations;
  if (stations === undefined) return { picture, charts };
  return {
    picture: { ...picture, stations },
    charts: charts.map((chart) => {
      const former = before.find((each) => each.chart.id === chart.id && each.picture.stations === stations)?.chart;
      const known = new Map(former?.curves.map(({ column, values }) => [column, values]));
      const curves = chart.curves.map((curve) => {
        const values = known.get(curve.column);
        return values !== undefined && isSame(values, curve.values) ? { ...curve, values } : curve;
      });
      return { ...chart, curves };
    }),
  };
}

/** Figure by figure; where there is none in either is the same. */
function isSame(one: Float64Array, other: Float64Array): boolean {
  if (one === other) return true;
  if (one.length !== other.length) return false;
  for (let i = 0; i < one.length; i++) if (!Object.is(one[i], other[i])) return false;
  return true;
}
