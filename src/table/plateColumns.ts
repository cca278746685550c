/** Columns of a set of plates: open area of one of them, and that of its greatest possible. */
import type { PlatesModel } from '../kinematics/attached.ts';
import { areaAt, fractionAt } from '../plates/platesAt.ts';
import { column, type Column } from './column.ts';

export function plateColumns(plates: PlatesModel): readonly Column[] {
  return [
    column(plates.name, 'area', 'area', 'mm²', (build, pose) => areaAt(build, pose, plates), { lever: plates.lever }),
    column(plates.name, 'fraction', 'number', '%', (build, pose) => fractionAt(build, pose, plates), { lever: plates.lever }),
  ];
}
