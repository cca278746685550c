/**
 * A sensor uses less than half of its signal's span.
 *
 * What the tuner gets for a degree of throttle is then less than half of what the sensor could give, and noise counts for more than
 * twice as much. Half of the span is common practice, no source. A sensor that is turned past its range or its stops is told of that
 * alone, and one that hardly turns because the throttle does not open is not told of.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft: {pivot: [100, 0], drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}}
 * pedal: {cable: main, pull: 35 mm}
 * cables:
 *   main: {enters: [40, 24], to: shaft.wheel}
 * sensors:
 *   tps: {lever: shaft, at_closed: 14 deg, range: [0 deg, 250 deg], signal: [0.5 V, 4.5 V]}
 * #                                               ^^^^^^^^^^^^^^^^ warning[signal-span]: 1.337 V of the 4 V
 * ```
 *
 * Cure: take a sensor with a smaller range, or turn it by more than the shaft, with a rod or gears between. The finding says which range uses
 * half of the span; it is not written into the file, since another range is another sensor.
 */
import { beyondElectrical, beyondMechanical, shareOfSpan } from '../../sensor/detections.ts';
import { throttleLever } from '../../sensor/resolution.ts';
import { greatestOf } from '../../travel/extremes.ts';
import { drivenSensors } from '../drivenSensors.ts';
import type { Finding } from '../finding.ts';
import { OPENING_TOLERANCE } from '../openingTolerance.ts';
import { along, type Study } from '../study.ts';
import { degrees, percent, volts } from '../words.ts';

/** Of the span. Common practice, no source. */
const LEAST_SHARE = 0.5;
const ROUNDING = 1e-9;

export function signalSpan(study: Study): readonly Finding[] {
  const { travel } = study;
  const { build, mechanism } = travel;
  return drivenSensors(study).flatMap((sensor): Finding[] => {
    const share = shareOfSpan(travel, sensor);
    if (share === undefined || !(share < LEAST_SHARE - ROUNDING)) return [];
    if (beyondElectrical(travel, sensor).length + beyondMechanical(travel, sensor).length > 0) return [];
    const throttle = mechanism.levers[throttleLever(mechanism, sensor)]!;
    const opened = greatestOf(along(study, `${throttle.name}.opening`), travel.samples)?.value ?? 0;
    if (opened <= OPENING_TOLERANCE) return [];
    // A throttle that does not open fully turns it too little: that is told, and nothing is wrong with the sensor.
    const full = throttle.fullOpening === undefined ? opened : build.parameters[throttle.fullOpening]!;
    if (opened < full - OPENING_TOLERANCE && share * (full / opened) >= LEAST_SHARE) return [];
    const range = Math.abs(build.parameters[sensor.range[1]]! - build.parameters[sensor.range[0]]!);
    const span = Math.abs(build.parameters[sensor.signal[1]]! - build.parameters[sensor.signal[0]]!);
    return [
      {
        code: 'signal-span',
        severity: 'warning',
        part: sensor.name,
        span: sensor.source.range.span,
        message: `${sensor.name} gives ${volts(share * span)} of the ${volts(span)} that its signal spans: ${percent(share)}`,
        cure: `Take a sensor with a range of ${degrees(range * (share / LEAST_SHARE))} or less, or turn it further with a rod or gears between`,
        limit: { value: LEAST_SHARE * span, dimension: 'voltage', from: 'half of its span: common practice, no source' },
      },
    ];
  });
}
