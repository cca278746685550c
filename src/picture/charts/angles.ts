/** Transmission and drive angles of rods, slots and cables, with the limits that hold for this file. A drum is pulled square always. */
import type { LimitPair } from '../../findings/limits.ts';
import { limitOf, type Study } from '../../findings/study.ts';
import type { Joint } from '../../kinematics/model.ts';
import { figureText } from '../../outputs/figure.ts';
import type { LimitBand } from '../../protocol/charts.ts';
import { leastOfAll, type ChartPlan, type CurvePlan } from './plan.ts';

const ANGLES = ['transmission', 'drive'] as const;
type Angle = (typeof ANGLES)[number];

export function planAngles(study: Study): ChartPlan {
  const limits = { transmission: limitOf(study, 'transmission'), drive: limitOf(study, 'drive') };
  const shown = study.travel.mechanism.joints.flatMap((joint) =>
    anglesOf(joint).flatMap((angle) => {
      const column = study.columns.get(`${joint.name}.${angle}`);
      return column === undefined ? [] : [{ joint, angle, column }];
    }),
  );
  const curves = shown.map(({ joint: { name }, angle, column }): CurvePlan => {
    const warning = limits[angle].warning * column.scale;
    return { column, label: `${name} ${angle}`, part: name, margin: (values) => leastOfAll(values) - warning };
  });
  const bands = ANGLES.filter((angle) => shown.some((each) => each.angle === angle)).flatMap((angle) => bandsOf(angle, limits[angle]));
  return { id: 'angles', title: 'Transmission and drive angles', unit: 'deg', curves, bands, straight: false };
}

/** Those that can differ from 90°. */
function anglesOf(joint: Joint): readonly Angle[] {
  switch (joint.kind) {
    case 'rod':
    case 'slot':
      return ANGLES;
    case 'cable':
      return [
        ...(joint.drivenEnd.kind === 'pin' ? (['transmission'] as const) : []),
        ...(joint.driverEnd?.kind === 'pin' ? (['drive'] as const) : []),
      ];
    case 'coupling':
      return [];
  }
}

function bandsOf(angle: Angle, { warning, error }: LimitPair): readonly LimitBand[] {
  const degrees = (value: number): number => (value * 180) / Math.PI;
  const label = (value: number): string => `${angle} below ${figureText({ value, dimension: 'angle' })}`;
  const bands: LimitBand[] = [];
  if (error !== undefined) bands.push({ severity: 'error', from: undefined, to: degrees(error), label: label(error) });
  if (error === undefined || error < warning) {
    bands.push({
      severity: 'warning',
      from: error === undefined ? undefined : degrees(error),
      to: degrees(warning),
      label: label(warning),
    });
  }
  return bands;
}
