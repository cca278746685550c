/** How much throttle for how much pedal: opening of full opening, and open area of the greatest possible, both in percent. */
import type { Study } from '../../findings/study.ts';
import { alongLoadPath } from './loadPath.ts';
import { greatestOfAll, type ChartPlan, type CurvePlan } from './plan.ts';

export function planProgression(study: Study): ChartPlan {
  const { mechanism, build } = study.travel;
  const curves = alongLoadPath(mechanism, mechanism.attached.plates).flatMap(({ name, lever }, i, all): CurvePlan[] => {
    const { name: shaft, fullOpening } = mechanism.levers[lever]!;
    const opening = study.columns.get(`${shaft}.opening`);
    const fraction = study.columns.get(`${name}.fraction`);
    const full = fullOpening === undefined ? NaN : build.parameters[fullOpening]!;
    const isFirst = all.findIndex((each) => each.lever === lever) === i;
    return [
      ...(opening === undefined || !isFirst
        ? []
        : [
            {
              column: opening,
              label: `${shaft} opening`,
              part: shaft,
              shown: (value: number) => (100 * value) / (full * opening.scale),
              margin,
            },
          ]),
      ...(fraction === undefined ? [] : [{ column: fraction, label: `${name} area`, part: name, margin }]),
    ];
  });
  return { id: 'progression', title: 'Opening and open area', unit: '%', curves, bands: [], straight: true };
}

/** What opens least matters most. */
const margin: CurvePlan['margin'] = greatestOfAll;
