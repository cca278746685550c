/** Sensors on levers that the pedal moves. */
import type { SensorModel } from '../kinematics/attached.ts';
import type { Study } from './study.ts';

export function drivenSensors({ travel: { mechanism } }: Study): readonly SensorModel[] {
  return mechanism.attached.sensors.filter((sensor) => mechanism.levers[sensor.lever]!.group >= 0);
}
