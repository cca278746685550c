/**
 * Every column that the geometry of a linkage gives, in load-path order.
 */
import type { Joint, Mechanism } from '../kinematics/model.ts';
import type { Travel } from '../travel/travel.ts';
import { cableColumns } from './cableColumns.ts';
import { column, type Column } from './column.ts';
import { rodColumns } from './rodColumns.ts';
import { slotColumns } from './slotColumns.ts';

export function columnsOf(travel: Travel): readonly Column[] {
  const { mechanism } = travel;
  const columns: Column[] = [pedalTravel];
  const { drive } = mechanism;
  if (drive.kind === 'lever') columns.push(...leverColumns(mechanism, drive.lever));
  for (const joint of mechanism.joints) {
    columns.push(...jointColumns(travel, joint));
    columns.push(...leverColumns(mechanism, joint.driven));
  }
  return columns;
}

const pedalTravel = column('pedal', 'travel', 'number', '%', (_, pose) => pose.travel);

function jointColumns(travel: Travel, joint: Joint): readonly Column[] {
  switch (joint.kind) {
    case 'rod':
      return rodColumns(joint);
    case 'cable':
      return cableColumns(travel, joint);
    case 'slot':
      return slotColumns(joint);
    case 'coupling':
      return [];
  }
}

function leverColumns(mechanism: Mechanism, lever: number): readonly Column[] {
  const { name } = mechanism.levers[lever]!;
  const sense = mechanism.senses[lever]!;
  const { drive } = mechanism;
  const perLength = drive.kind === 'cable';
  return [
    column(name, 'rotation', 'angle', 'deg', (_, pose) => pose.rotation[lever]!),
    // Adding zero turns a negative zero into zero.
    column(name, 'opening', 'angle', 'deg', (_, pose) => sense * pose.rotation[lever]! + 0),
    column(name, 'ratio', perLength ? 'angle-per-length' : 'number', perLength ? 'deg/mm' : '', (build, pose) =>
      Number.isNaN(pose.rotation[lever]!) ? NaN : (sense * pose.rate[lever]!) / build.parameters[drive.travel]! + 0,
    ),
  ];
}
