/** Readings of a run as figures: those that stand in the throttle file, and how many they are. Those of a CSV file: `csvReadings.ts`. */
import type { ColumnReference } from '../../definition/definition.ts';
import type { Run } from '../../definition/measured.ts';

/** A column of readings: one of the table. */
export type ReadColumn = Omit<ColumnReference, 'span'>;

/** What was read in one run. */
export interface Readings {
  /** The first says where the pedal is. */
  readonly columns: readonly ReadColumn[];
  /** In the order of the text. */
  readonly rows: readonly ReadingsRow[];
}

/** Readings at one position of the pedal. */
export interface ReadingsRow {
  /** Of the CSV file, from 1; undefined for a row of the throttle file, whose place is in the run. */
  readonly line?: number;
  /** SI, one a column; undefined where it was not taken, which the first never is. */
  readonly values: readonly (number | undefined)[];
}

/** Readings that stand in the throttle file; undefined for a run that names a file. */
export function inlineReadings({ columns, readings }: Run): Readings | undefined {
  if (readings.kind !== 'rows' || columns === undefined) return undefined;
  return { columns, rows: readings.rows.map(({ values }) => ({ values: values.map((value) => value?.nominal) })) };
}

/** Readings that were taken, the pedal's positions left out. */
export function countReadings({ rows }: Readings): number {
  return rows.reduce((count, { values }) => count + values.filter((value, index) => index > 0 && value !== undefined).length, 0);
}
