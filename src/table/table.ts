/** Stations beside columns. */
import type { Travel } from '../travel/travel.ts';
import type { Column, Table } from './column.ts';

/** @param stations pedal travels, fractions; rows come in the order given */
export function tabulate(travel: Travel, columns: readonly Column[], stations: readonly number[]): Table {
  const values = columns.map((): (number | null)[] => []);
  for (const station of stations) {
    const pose = travel.poseAt(station);
    columns.forEach((column, i) => {
      const read = column.read(travel.build, pose);
      const value = tableValue(column, read);
      values[i]!.push(Number.isFinite(value) ? value : null);
    });
  }
  return { stations, columns: columns.map(({ name, unit }, i) => ({ name, unit, values: values[i]! })) };
}

/** What a table shows of a column's SI value, in its unit. */
export function tableValue({ scale }: Column, read: number): number {
  return Math.abs(read) < ROUNDING ? 0 : read * scale;
}

/** SI; what is smaller is what rounding left of nothing, such as the opening of a shaft that rests as drawn. */
const ROUNDING = 1e-13;
