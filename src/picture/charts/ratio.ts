/** How fast the throttle turns for the pedal: of levers with plates, or of the last ones where the file has no plates. */
import type { Mechanism } from '../../kinematics/model.ts';
import type { Study } from '../../findings/study.ts';
import { movedLevers } from './loadPath.ts';
import { greatestOfAll, type ChartPlan, type CurvePlan } from './plan.ts';

export function planRatio(study: Study): ChartPlan {
  const { mechanism } = study.travel;
  const curves = shownLevers(mechanism).flatMap((lever): CurvePlan[] => {
    const { name } = mechanism.levers[lever]!;
    const column = study.columns.get(`${name}.ratio`);
    return column === undefined ? [] : [{ column, label: name, part: name, margin: (values) => -greatestOfAll(values) }];
  });
  const unit = mechanism.drive.kind === 'cable' ? 'deg/mm' : '';
  const title = mechanism.drive.kind === 'cable' ? 'Opening for each mm of pull' : 'Ratio to the pedal';
  return { id: 'ratio', title, unit, curves, bands: [], straight: false };
}

/** In load-path order. */
function shownLevers(mechanism: Mechanism): readonly number[] {
  const { levers, joints, attached } = mechanism;
  const moved = movedLevers(mechanism);
  const plated = moved.filter((lever) => attached.plates.some((each) => each.lever === lever));
  if (plated.length > 0) return plated;
  const driving = new Set(joints.map(({ driver }) => driver));
  return moved.filter((lever) => !driving.has(lever) && levers[lever]!.driver !== undefined);
}
