/**
 * The rotor of a sensor turns past the range in which its signal follows it.
 *
 * Outside, the signal is held at its end: the throttle goes on and the engine's electronics see it stand still. A rotor that just
 * comes to an end of its range stays within. Where it passes its own stops on that side, only that is told, as `sensor-past-stop`.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft: {pivot: [100, 0], drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}}
 * pedal: {cable: main, pull: 35 mm}
 * cables:
 *   main: {enters: [40, 24], to: shaft.wheel}
 * sensors:
 *   tps: {lever: shaft, at_closed: 30 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]}
 * #                                ^^^^^^ warning[sensor-past-range]: tps is turned 3.56° past the end of its range at 110°
 * ```
 *
 * Cure: turn the sensor on its spindle, or take one with a greater range.
 */
import { beyondElectrical, beyondMechanical } from '../../sensor/detections.ts';
import { drivenSensors } from '../drivenSensors.ts';
import type { Finding } from '../finding.ts';
import { sensorFit } from '../sensorFit.ts';
import type { Study } from '../study.ts';
import { degrees, percent, rangeWords } from '../words.ts';

export function sensorPastRange(study: Study): readonly Finding[] {
  return drivenSensors(study).flatMap((sensor): Finding[] => {
    const broken = new Set(beyondMechanical(study.travel, sensor).map(({ side }) => side));
    const mend = sensorFit(study, sensor, 'range');
    return beyondElectrical(study.travel, sensor)
      .filter(({ side }) => !broken.has(side))
      .map(({ limit, worst, ranges }): Finding => ({
        code: 'sensor-past-range',
        severity: 'warning',
        part: sensor.name,
        span: sensor.source.atClosed.span,
        message: `${sensor.name} is turned ${degrees(Math.abs(worst.value - limit))} past the end of its range at ${degrees(limit)}, at ${percent(worst.travel)} of pedal travel: its signal is held at that end ${rangeWords(ranges)}`,
        cure: mend.mend ? 'Turn the sensor on its spindle' : 'Take a sensor with a greater range, or turn it by less',
        ranges,
        worst: { ...worst, dimension: 'angle' },
        limit: { value: limit, dimension: 'angle', from: 'range of this sensor' },
        ...mend,
        related: [{ span: sensor.source.range.span, message: `range of ${sensor.name}` }],
      }));
  });
}
