/** What the sensors tell, V. */
import type { Study } from '../../findings/study.ts';
import { alongLoadPath } from './loadPath.ts';
import { greatestOfAll, leastOfAll, type ChartPlan, type CurvePlan } from './plan.ts';

export function planSignal(study: Study): ChartPlan {
  const { mechanism } = study.travel;
  const curves = alongLoadPath(mechanism, mechanism.attached.sensors).flatMap(({ name }): CurvePlan[] => {
    const column = study.columns.get(`${name}.signal`);
    return column === undefined
      ? []
      : [{ column, label: name, part: name, margin: (values) => greatestOfAll(values) - leastOfAll(values) }];
  });
  return { id: 'signal', title: 'Sensor signal', unit: 'V', curves, bands: [], straight: false };
}
