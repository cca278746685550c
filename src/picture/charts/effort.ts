/** What the foot feels, pressing and coming back; one curve where friction is left out, since the pedal then gives back what it takes. */
import { isGiven } from '../../forces/friction/missing.ts';
import type { Study } from '../../findings/study.ts';
import { greatestOfAll, type ChartPlan, type CurvePlan } from './plan.ts';

export function planEffort(study: Study): ChartPlan {
  const rubs = isGiven(study.travel.mechanism.friction);
  const curves = (rubs ? (['effort', 'release'] as const) : (['effort'] as const)).flatMap((key): CurvePlan[] => {
    const column = study.columns.get(`pedal.${key}`);
    return column === undefined ? [] : [{ column, label: key, part: 'pedal', margin: (values) => -greatestOfAll(values) }];
  });
  const { pad } = study.travel.mechanism.attached;
  const where = pad === undefined || (pad.kind === 'cable' && pad.ratio === undefined) ? 'cable' : 'pad';
  const friction = rubs ? '' : ', friction left out: pressing and releasing alike';
  return { id: 'effort', title: `Force at the ${where}${friction}`, unit: 'N', curves, bands: [], straight: false };
}
