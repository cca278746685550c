/** Columns of a set of plates: open area of one of them, and that of its greatest possible. */
import type { PlatesModel } from '../kinematics/attached.ts';
import type { Build } from '../kinematics/build.ts';
import { areaAt, fractionAt } from '../plates/platesAt.ts';
import { column, type Column } from './column.ts';

export function plateColumns(plates: PlatesModel): readonly Column[] {
  const { lever } = plates;
  const own = ({ parameters: p }: Build): readonly number[] => [plates.bore, plates.shaft, plates.seat, plates.idle].map((at) => p[at]!);
  return [
    column(plates.name, 'area', 'area', 'mm²', (build, pose) => areaAt(build, pose, plates), { lever, own }),
    column(plates.name, 'fraction', 'number', '%', (build, pose) => fractionAt(build, pose, plates), { lever, own }),
  ];
}
