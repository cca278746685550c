/**
 * Every column of a linkage, in load-path order: the pedal, each joint, the lever that it drives with the plates and sensors on it, and
 * the springs.
 */
import type { Joint, Mechanism } from '../kinematics/model.ts';
import type { Travel } from '../travel/travel.ts';
import { cableColumns } from './cableColumns.ts';
import { column, type Column } from './column.ts';
import { forceColumns } from './forceColumns.ts';
import { plateColumns } from './plateColumns.ts';
import { rodColumns } from './rodColumns.ts';
import { sensorColumns } from './sensorColumns.ts';
import { slotColumns } from './slotColumns.ts';

export function columnsOf(travel: Travel): readonly Column[] {
  const { mechanism } = travel;
  const { drive } = mechanism;
  const forces = forceColumns(travel);
  const ofLever = (lever: number): readonly Column[] => [
    ...leverColumns(mechanism, lever),
    ...forces.ofLever(lever),
    ...attachedColumns(travel, lever),
  ];
  return [
    pedalTravel,
    ...forces.pedal,
    ...(drive.kind === 'lever' ? ofLever(drive.lever) : []),
    ...mechanism.joints.flatMap((joint) => [
      ...jointColumns(travel, joint),
      ...(joint.kind === 'cable' ? forces.ofCable(joint.cable) : []),
      ...ofLever(joint.driven),
    ]),
    ...forces.springs,
  ];
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

function attachedColumns(travel: Travel, lever: number): readonly Column[] {
  const { plates, sensors } = travel.mechanism.attached;
  return [
    ...plates.filter((each) => each.lever === lever).flatMap(plateColumns),
    ...sensors.filter((each) => each.lever === lever).flatMap((each) => sensorColumns(travel, each)),
  ];
}

function leverColumns(mechanism: Mechanism, lever: number): readonly Column[] {
  const { name } = mechanism.levers[lever]!;
  const sense = mechanism.senses[lever]!;
  const { drive } = mechanism;
  const perLength = drive.kind === 'cable';
  return [
    column(name, 'rotation', 'angle', 'deg', (_, pose) => pose.rotation[lever]!, { lever }),
    // Adding zero turns a negative zero into zero.
    column(name, 'opening', 'angle', 'deg', (_, pose) => sense * pose.rotation[lever]! + 0, { lever }),
    column(
      name,
      'ratio',
      perLength ? 'angle-per-length' : 'number',
      perLength ? 'deg/mm' : '',
      (build, pose) => (Number.isNaN(pose.rotation[lever]!) ? NaN : (sense * pose.rate[lever]!) / build.parameters[drive.travel]! + 0),
      { lever },
    ),
  ];
}
