/** The charts of a solved file, in the order in which they are shown. */
import { figureDigits } from '../../outputs/figure.ts';
import { CHART_IDS } from '../../protocol/charts.ts';
import type { Chart, ChartCurve, ChartId } from '../../protocol/charts.ts';
import { forcesCause } from '../../findings/forcesCause.ts';
import { along, type Study } from '../../findings/study.ts';
import { tableValue, tabulate } from '../../table/table.ts';
import { valuesOver } from '../../travel/extremes.ts';
import { once } from '../../travel/once.ts';
import { planAngles } from './angles.ts';
import { planEffort } from './effort.ts';
import { planMargins } from './margins.ts';
import { greatestOfAll, leastOfAll, type ChartPlan, type CurvePlan } from './plan.ts';
import { planProgression } from './progression.ts';
import { planRatio } from './ratio.ts';
import { planSignal } from './signal.ts';
import { planTorques } from './torques.ts';

const PLAN_OF: Readonly<Record<ChartId, (study: Study) => ChartPlan>> = {
  progression: planProgression,
  ratio: planRatio,
  angles: planAngles,
  signal: planSignal,
  torques: planTorques,
  margins: planMargins,
  effort: planEffort,
};

/** What every chart shows of a file. */
export const PLANS: readonly ((study: Study) => ChartPlan)[] = CHART_IDS.map((id) => PLAN_OF[id]);

/** Those with at least one curve that has a figure somewhere. */
export function drawCharts(study: Study): readonly Chart[] {
  return CHART_IDS.flatMap((id) => drawChart(study, id) ?? []);
}

/** Undefined where none of its curves has a figure anywhere. */
export function drawChart(study: Study, id: ChartId): Chart | undefined {
  const { samples } = study.travel;
  const { curves, ...chart } = PLAN_OF[id](study);
  // What rules have looked at is known already.
  const figuresOf = ({ column }: CurvePlan): readonly (number | null)[] => {
    if ('along' in column) return valuesOver(column.along, samples).map((value) => value * column.scale);
    const acting = column.forces === true ? actingIn(study).get(column.name) : undefined;
    return acting ?? valuesOver(along(study, column.name), samples).map((value) => tableValue(column, value));
  };
  const drawn = drawCurves(curves, (plan) => valuesOf(plan, figuresOf(plan)));
  return drawn.length === 0 ? undefined : { ...chart, curves: drawn };
}

/**
 * Figures of all charted columns of what acts, by name, in the table's units: all at once, so that what several of them rest on, of one
 * chart or two, is worked out once a station.
 */
const actingIn = once((study: Study): ReadonlyMap<string, readonly (number | null)[]> => {
  const { travel } = study;
  const planned = PLANS.flatMap((plan) => plan(study).curves);
  const columns = [...new Set(planned.flatMap(({ column }) => ('along' in column || column.forces !== true ? [] : [column])))];
  const make = (): ReadonlyMap<string, readonly (number | null)[]> =>
    new Map(tabulate(travel, columns, travel.samples).columns.map(({ name, values }) => [name, values]));
  const forces = forcesCause(study);
  if (travel.memory === undefined || forces === undefined) return make();
  const figures = columns.flatMap(({ own }) => own?.(travel.build) ?? []);
  const cause = travel.memory.cause('charted forces', { after: [forces], words: columns.map(({ name }) => name).join(' '), figures });
  return travel.memory.kept('charted forces', cause, make);
});

function valuesOf({ shown }: CurvePlan, figures: readonly (number | null)[]): Float64Array {
  const values = new Float64Array(figures.length);
  for (let i = 0; i < figures.length; i++) {
    const figure = figures[i] ?? NaN;
    const value = shown === undefined ? figure : shown(figure);
    values[i] = Number.isFinite(value) ? value : NaN;
  }
  return values;
}

/** More curves than these cannot be taken in at a glance. */
const MOST_AT_A_GLANCE = 8;

function drawCurves(plans: readonly CurvePlan[], valuesFor: (plan: CurvePlan) => Float64Array): readonly ChartCurve[] {
  const drawn = plans
    .map((plan) => ({ plan, values: valuesFor(plan) }))
    .filter(({ values }) => leastOfAll(values) < Infinity)
    .map(({ plan, values }) => ({ curve: drawCurve(plan, values), margin: plan.margin(values) }));
  if (drawn.length > MOST_AT_A_GLANCE) drawn.sort((a, b) => a.margin - b.margin);
  return drawn.map(({ curve }) => curve);
}

function drawCurve({ column, label, part, shown }: CurvePlan, values: Float64Array): ChartCurve {
  const size = Math.max(greatestOfAll(values), -leastOfAll(values));
  const isShare = shown !== undefined || column.unit === '%';
  const digits = isShare ? 1 : figureDigits({ value: size / column.scale, dimension: column.dimension });
  return { column: column.name, label, part, values, digits };
}
