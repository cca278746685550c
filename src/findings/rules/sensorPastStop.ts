/**
 * The throttle turns a sensor past its own stops.
 *
 * A position sensor is no throttle stop: turned beyond what it bears it breaks, or it holds the throttle before it is open or before
 * it is closed. The stops are those under `mechanical`; a rotor that just comes to one is not past it.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft: {pivot: [100, 0], drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}}
 * pedal: {cable: main, pull: 35 mm}
 * cables:
 *   main: {enters: [40, 24], to: shaft.wheel}
 * sensors:
 *   tps: {lever: shaft, at_closed: 36 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V], mechanical: [-5 deg, 115 deg]}
 * #                                ^^^^^^ error[sensor-past-stop]: tps would be turned 4.56° past its stop at 115°
 * ```
 *
 * Cure: turn the sensor on its spindle, or take one that turns further.
 */
import { beyondMechanical } from '../../sensor/detections.ts';
import { drivenSensors } from '../drivenSensors.ts';
import type { Finding } from '../finding.ts';
import { sensorFit } from '../sensorFit.ts';
import type { Study } from '../study.ts';
import { degrees, percent, rangeWords } from '../words.ts';

export function sensorPastStop(study: Study): readonly Finding[] {
  return drivenSensors(study).flatMap((sensor): Finding[] => {
    const mend = sensorFit(study, sensor, 'range');
    return beyondMechanical(study.travel, sensor).map(({ limit, worst, ranges }): Finding => ({
      code: 'sensor-past-stop',
      severity: 'error',
      part: sensor.name,
      span: sensor.source.atClosed.span,
      message: `${sensor.name} would be turned ${degrees(Math.abs(worst.value - limit))} past its stop at ${degrees(limit)}, at ${percent(worst.travel)} of pedal travel (${rangeWords(ranges)}): it breaks, or holds the throttle`,
      cure: mend.mend ? 'Turn the sensor on its spindle' : 'Take a sensor that turns further, or turn it by less',
      ranges,
      worst: { ...worst, dimension: 'angle' },
      limit: { value: limit, dimension: 'angle', from: 'mechanical range of this sensor' },
      ...mend,
      ...(sensor.source.mechanical && { related: [{ span: sensor.source.mechanical.span, message: `stops of ${sensor.name}` }] }),
    }));
  });
}
