/**
 * A sensor's signal at rest or at full pedal lies where electronics take it for a broken wire.
 *
 * Electronics watch for signals that a sound sensor never gives, and shut the engine down or fall back to an emergency map when they
 * see one. Formula SAE Rules 2024, IC.4.4.8, give a signal below 0.5 V or above 4.5 V as their example, read there; by those words
 * exactly 0.5 V and 4.5 V are sound. The example is of sensors on 5 V: with a `supply` further than 0.25 V from that it is not checked.
 * A signal that is held at an end of its range is told as `sensor-past-range` alone.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft: {pivot: [100, 0], drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}}
 * pedal: {cable: main, pull: 35 mm}
 * cables:
 *   main: {enters: [40, 24], to: shaft.wheel}
 * sensors:
 *   tps: {lever: shaft, at_closed: 5 deg, range: [0 deg, 110 deg], signal: [0.2 V, 4.8 V], supply: 5 V}
 * #                                ^^^^^ warning[signal-in-fault-band]: tps gives 0.409 V at rest, below 0.5 V
 * ```
 *
 * Cure: turn the sensor on its spindle so that both ends of the travel give a signal between 0.5 V and 4.5 V.
 */
import { FAULT_BAND, signalsTakenForFaults } from '../../sensor/detections.ts';
import { fullTravel, rotorAngleAt } from '../../sensor/sensorAt.ts';
import { drivenSensors } from '../drivenSensors.ts';
import type { SensorModel } from '../../kinematics/attached.ts';
import type { Finding } from '../finding.ts';
import { hasFaultBand, sensorFit } from '../sensorFit.ts';
import type { Study } from '../study.ts';
import { volts } from '../words.ts';

export function signalInFaultBand(study: Study): readonly Finding[] {
  const full = fullTravel(study.travel.build);
  return drivenSensors(study).flatMap((sensor): Finding[] => {
    if (!hasFaultBand(study, sensor)) return [];
    const mend = sensorFit(study, sensor, 'signal');
    return signalsTakenForFaults(study.travel, sensor).flatMap(({ at, side, signal, limit }): Finding[] => {
      const travel = at === 'rest' ? 0 : full;
      // A signal that is held there, since the rotor is past its range, is told as that.
      if (isHeld(study, sensor, travel)) return [];
      const finding: Finding = {
        code: 'signal-in-fault-band',
        severity: 'warning',
        part: sensor.name,
        span: sensor.source.atClosed.span,
        message: `${sensor.name} gives ${volts(signal)} at ${at}, ${side} ${volts(limit)}: electronics take that for a broken wire`,
        cure: mend.mend ? 'Turn the sensor on its spindle' : 'Take a sensor whose signal stays between 0.5 V and 4.5 V over the travel',
        ranges: [{ from: travel, to: travel }],
        worst: { value: signal, dimension: 'voltage', travel },
        limit: { value: limit, dimension: 'voltage', from: FAULT_BAND.from },
        ...mend,
      };
      return [finding];
    });
  });
}

function isHeld({ travel: { build, poseAt } }: Study, sensor: SensorModel, travel: number): boolean {
  const angle = rotorAngleAt(build, poseAt(travel), sensor);
  const [from, to] = sensor.range.map((end) => build.parameters[end]!);
  return from !== undefined && to !== undefined && (angle < from - SAME || angle > to + SAME);
}

/** rad; a rotor that just comes to an end of its range is within. */
const SAME = 1e-9;
