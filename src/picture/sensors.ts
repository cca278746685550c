/** Sensors with the angle of their rotors. */
import type { DrawnSensor } from '../protocol/picture.ts';
import { rotorAngleAt } from '../sensor/sensorAt.ts';
import type { Drawable } from './drawable.ts';
import { seriesOf } from './series.ts';

export function drawSensors({ mechanism, build, poses, placeOf }: Drawable): readonly DrawnSensor[] {
  return mechanism.attached.sensors.flatMap((sensor): DrawnSensor[] => {
    const lever = placeOf(sensor.lever);
    const [from, to] = [build.parameters[sensor.range[0]]!, build.parameters[sensor.range[1]]!];
    if (lever === undefined || !Number.isFinite(from) || !Number.isFinite(to)) return [];
    const angle = seriesOf(poses, (pose) => rotorAngleAt(build, pose, sensor));
    return [{ name: sensor.name, lever, angle, range: [from, to] }];
  });
}
