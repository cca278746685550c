/** What a chart is drawn of: one of the file, or one of a study. */
import type { Picture } from '../../src/protocol/picture.ts';
import type { SpreadColumn, StudyChart } from '../../src/protocol/studies.ts';

export type DrawnChart = StudyChart;

/** Pedal travels of the curves' figures. */
export type Stations = Pick<Picture, 'stations'>;

/** How far curves spread, by their columns. */
export interface Spread {
  readonly stations: Float64Array;
  readonly columns: readonly SpreadColumn[];
}
