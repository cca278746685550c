/** The charts beside the drawing: curves over the pedal's travel, in the units in which they are read. */

/** In the order in which they are shown. */
export const CHART_IDS = ['progression', 'ratio', 'angles', 'signal', 'torques', 'margins', 'effort'] as const;

export type ChartId = (typeof CHART_IDS)[number];

export interface Chart {
  readonly id: ChartId;
  readonly title: string;
  /** Of all its curves; empty for a plain number. */
  readonly unit: string;
  /** At least one. In load-path order; of more than eight those first that matter most, e.g. that come nearest to their limit. */
  readonly curves: readonly ChartCurve[];
  /** Where a curve should not be. */
  readonly bands: readonly LimitBand[];
  /** Whether the straight line from closed to full is drawn for comparison: equal throttle for equal pedal. */
  readonly straight: boolean;
  /** Figures above it stand at it: they are as good as any; absent where the figures are as they are. */
  readonly upTo?: number | undefined;
}

export interface ChartCurve {
  /** Column of the table, as in the file format. */
  readonly column: string;
  /** Short: it stands at the curve's end. */
  readonly label: string;
  /** The part that it is about. */
  readonly part: string;
  /** A figure for each station of the picture, in the chart's unit; NaN where there is none. */
  readonly values: Float64Array;
  /** Digits behind the point that say something. */
  readonly digits: number;
}

export interface LimitBand {
  readonly severity: 'error' | 'warning';
  /** Stretch of the chart's unit in which it holds; open to one side where undefined. */
  readonly from: number | undefined;
  readonly to: number | undefined;
  /** E.g. `transmission below 40°`. */
  readonly label: string;
}
