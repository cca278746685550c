/** Closing torque over friction of all that has to come back by itself, with all springs and with each return spring off. */
import { frictionUnits, LOCKS_AT, unitMargin, type FrictionUnit } from '../../findings/frictionUnits.ts';
import { limitOf, type Study } from '../../findings/study.ts';
import type { LimitBand } from '../../protocol/charts.ts';
import { leastOfAll, type AlongColumn, type ChartPlan, type CurvePlan } from './plan.ts';

/** More is as good as free of friction, and would leave no room for what matters. */
const MOST = 10;

/** Without curves where the file gives no friction. */
export function planMargins(study: Study): ChartPlan {
  const units = frictionUnits(study);
  const curves = units.flatMap((unit) =>
    [undefined, ...unit.springs.filter(({ source }) => source.countsAsReturn).map(({ name }) => name)].map((without): CurvePlan => {
      const { name } = unit.lever;
      const off = units.length === 1 ? `${without} off` : `${name} (${without} off)`;
      return {
        column: columnOf(study, unit, without),
        label: without === undefined ? name : off,
        part: without ?? name,
        shown: (value) => Math.min(value, MOST),
        margin: leastOfAll,
      };
    }),
  );
  const title = `Closing torque over friction, shown up to ${MOST} times`;
  return { id: 'margins', title, unit: '', curves, bands: curves.length === 0 ? [] : bandsOf(study), straight: false, upTo: MOST };
}

function columnOf(study: Study, unit: FrictionUnit, without: string | undefined): AlongColumn {
  const name = `${unit.lever.name}.margin${without === undefined ? '' : ` without ${without}`}`;
  return { name, dimension: 'number', unit: '', scale: 1, along: unitMargin(study, unit, without) };
}

function bandsOf(study: Study): readonly LimitBand[] {
  const { warning, error = LOCKS_AT } = limitOf(study, 'closing_margin');
  return [
    { severity: 'error', from: undefined, to: error, label: `under ${error} times the friction` },
    ...(error < warning ? [{ severity: 'warning' as const, from: error, to: warning, label: `under ${warning} times the friction` }] : []),
  ];
}
