/** What stands in a chart before its figures are read. */
import type { Column } from '../../table/column.ts';
import type { Along } from '../../travel/extremes.ts';
import type { Chart, ChartCurve } from '../../protocol/charts.ts';

export interface ChartPlan extends Omit<Chart, 'curves'> {
  /** In load-path order. */
  readonly curves: readonly CurvePlan[];
}

export interface CurvePlan extends Pick<ChartCurve, 'label' | 'part'> {
  readonly column: Column | AlongColumn;
  /** The chart's figure of one of the table, where it is not the same. */
  readonly shown?: (value: number) => number;
  /** How much it matters, the least first: in the chart's unit, how far its figures keep from their limit. NaN figures are left out. */
  readonly margin: (values: Float64Array) => number;
}

/** Figures that are no column of the table, and are worked out at each travel. */
export interface AlongColumn extends Pick<Column, 'name' | 'dimension' | 'unit' | 'scale'> {
  /** SI; NaN where there is no value. */
  readonly along: Along;
  /** The same of any build, where no column of the table has it. */
  readonly read?: Column['read'];
}

/** Least of the figures that there are; Infinity where there are none. */
export function leastOfAll(values: Float64Array): number {
  let least = Infinity;
  for (let i = 0; i < values.length; i++) if (values[i]! < least) least = values[i]!;
  return least;
}

/** Greatest of the figures that there are; -Infinity where there are none. */
export function greatestOfAll(values: Float64Array): number {
  let greatest = -Infinity;
  for (let i = 0; i < values.length; i++) if (values[i]! > greatest) greatest = values[i]!;
  return greatest;
}
