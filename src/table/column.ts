/**
 * The columns of a solved file. Faces, reports, requirements and exports all use these names.
 */
import { PLACE_UNIT_SI, type Dimension } from '../definition/dimensions.ts';
import type { Build } from '../kinematics/build.ts';
import type { Pose } from '../kinematics/pose.ts';

export interface Column {
  /** `owner.key`, e.g. `shaft.opening`. */
  readonly name: string;
  readonly owner: string;
  readonly key: string;
  /** Kind of quantity; `number` for percent columns, which are fractions inside. */
  readonly dimension: Dimension;
  /** Unit in tables: `%`, `deg`, `mm`, `deg/mm`, or empty for a plain number. */
  readonly unit: string;
  /** SI value times this is the table's value. */
  readonly scale: number;
  /** Index of the joint whose turning places are this column's, for rods, slots and cables. */
  readonly joint?: number;
  /** The lever to which alone a pose must be right for it; absent where more of the linkage counts. */
  readonly lever?: number;
  /** What it follows from besides the way of its lever; absent where it follows from that alone. SI. */
  own?(build: Build): readonly number[];
  /** Whether it follows from what acts, all along the load path, besides. */
  readonly forces?: true;
  /** SI; NaN where there is no value. */
  read(build: Build, pose: Pose): number;
}

/** Makes a column whose table value is in the unit of its place. */
export function column(
  owner: string,
  key: string,
  dimension: Dimension,
  unit: string,
  read: (build: Build, pose: Pose) => number,
  of: Pick<Column, 'joint' | 'lever' | 'own' | 'forces'> = {},
): Column {
  const scale = unit === '%' ? 100 : 1 / PLACE_UNIT_SI[dimension];
  return { name: `${owner}.${key}`, owner, key, dimension, unit, scale, read, ...of };
}

/** A solved table: columns beside each other, a value a station. */
export interface Table {
  /** Pedal travel of each row, a fraction. */
  readonly stations: readonly number[];
  readonly columns: readonly TableColumn[];
}

export interface TableColumn {
  readonly name: string;
  readonly unit: string;
  /** In `unit`; null where there is no value. */
  readonly values: readonly (number | null)[];
}
