/** Columns of a sensor: the angle of its rotor, its signal, and the signal within its own span from rest to full pedal. */
import type { SensorModel } from '../kinematics/attached.ts';
import type { Build } from '../kinematics/build.ts';
import { rotorAngleAt, shareOf, signalAt, signalEnds, type SignalEnds } from '../sensor/sensorAt.ts';
import type { Travel } from '../travel/travel.ts';
import { column, type Column } from './column.ts';

export function sensorColumns(travel: Travel, sensor: SensorModel): readonly Column[] {
  const { name } = sensor;
  // Found when first asked for: most of those who want columns do not want this one.
  let ends: SignalEnds | undefined;
  const { lever } = sensor;
  const own = ({ parameters: p }: Build): readonly number[] => [
    sensor.way,
    ...[sensor.atClosed, ...sensor.range, ...sensor.signal].map((at) => p[at]!),
  ];
  return [
    column(name, 'angle', 'angle', 'deg', (build, pose) => rotorAngleAt(build, pose, sensor) + 0, { lever, own }),
    column(name, 'signal', 'voltage', 'V', (build, pose) => signalAt(build, pose, sensor), { lever, own }),
    column(name, 'percent', 'number', '%', (build, pose) => {
      ends ??= signalEnds(travel.build, sensor);
      return shareOf(ends, signalAt(build, pose, sensor)) + 0;
    }),
  ];
}
