/** What closes the levers with plates, friction left out, and what each spring does to its lever. */
import type { Study } from '../../findings/study.ts';
import type { Column } from '../../table/column.ts';
import { alongLoadPath, movedLevers } from './loadPath.ts';
import { leastOfAll, type ChartPlan, type CurvePlan } from './plan.ts';

export function planTorques(study: Study): ChartPlan {
  const { mechanism } = study.travel;
  const curve = (column: Column | undefined, label: string, part: string): readonly CurvePlan[] =>
    column === undefined ? [] : [{ column, label, part, margin: leastOfAll }];
  const curves = [
    ...movedLevers(mechanism)
      .map((lever) => mechanism.levers[lever]!)
      .filter(({ plates }) => plates.length > 0)
      .flatMap(({ name }) => curve(study.columns.get(`${name}.closing`), `${name} closing`, name)),
    ...alongLoadPath(mechanism, mechanism.attached.springs).flatMap(({ name }) => curve(study.columns.get(`${name}.torque`), name, name)),
  ];
  // Below none it opens.
  const bands = curves.length === 0 ? [] : [{ severity: 'error' as const, from: undefined, to: 0, label: 'opens instead of closing' }];
  return { id: 'torques', title: 'Closing torque, friction left out', unit: 'N·mm', curves, bands, straight: false };
}
