/** What the foot feels; one curve where friction is left out, since the pedal then gives back what it takes. */
import type { Study } from '../../findings/study.ts';
import { greatestOfAll, type ChartPlan, type CurvePlan } from './plan.ts';

export function planEffort(study: Study): ChartPlan {
  const curves = (['effort', 'release'] as const).flatMap((key): CurvePlan[] => {
    const column = study.columns.get(`pedal.${key}`);
    return column === undefined ? [] : [{ column, label: key, part: 'pedal', margin: (values) => -greatestOfAll(values) }];
  });
  const { pad } = study.travel.mechanism.attached;
  const where = pad === undefined || (pad.kind === 'cable' && pad.ratio === undefined) ? 'cable' : 'pad';
  const friction = study.columns.has('pedal.release') ? '' : ', friction left out: pressing and releasing alike';
  return { id: 'effort', title: `Force at the ${where}${friction}`, unit: 'N', curves, bands: [], straight: false };
}
