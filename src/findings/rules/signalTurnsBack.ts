/**
 * The signal of a sensor goes back while the throttle still opens.
 *
 * Over that stretch two openings give one signal, and the engine cannot be mapped by it. It comes from a sensor on a lever of its own
 * that turns back, mostly because the arm on its spindle passes the line of its rod. A stretch in which the signal is held at an end
 * of its range is `sensor-past-range`. Where it turns back at a dead centre of the arm that drives it, that is what is told, with the signal
 * beside it.
 *
 * ```yaml
 * format: 1
 * levers:
 *   pedal: {pivot: [0, 0], arms: {out: {radius: 20 mm, angle: 120 deg}}}
 *   rotor: {pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 100 deg}}}
 * pedal: {lever: pedal, opens: counterclockwise, travel: 110 deg}
 * rods: {link: {from: pedal.out, to: rotor.arm}}
 * #      ^^^^ error[toggle-returning]: comes in line
 * plates: {bank: {lever: pedal, bore: 40 mm}}
 * #        ^^^^ warning[plate-past-square]: up to 20° past 90°
 * sensors:
 *   tps: {lever: rotor, at_closed: 30 deg, range: [20 deg, 60 deg], signal: [0.5 V, 4.5 V]}
 * ```
 *
 * Cure: clock the arm on the spindle nearer to square with its rod, or take a shorter arm that drives it.
 */
import { turnsBackWhileOpening } from '../../sensor/detections.ts';
import { drivenSensors } from '../drivenSensors.ts';
import type { Finding } from '../finding.ts';
import type { Study } from '../study.ts';
import { percent, rangeWords, volts } from '../words.ts';

export function signalTurnsBack(study: Study): readonly Finding[] {
  const { mechanism } = study.travel;
  return drivenSensors(study).flatMap((sensor): Finding[] => {
    const back = turnsBackWhileOpening(study.travel, sensor);
    if (back === undefined) return [];
    const { ranges, worst } = back;
    const lever = mechanism.levers[sensor.lever]!;
    return [
      {
        code: 'signal-turns-back',
        severity: 'warning',
        part: sensor.name,
        span: sensor.source.nameSpan,
        message: `The signal of ${sensor.name} goes back by ${volts(worst.value)} up to ${percent(worst.travel)} of pedal travel while the throttle opens (${rangeWords(ranges)}): there it tells two openings alike`,
        cure: `Keep ${lever.name} from turning back over the travel`,
        ranges,
        worst: { ...worst, dimension: 'voltage' },
        related: [{ span: lever.source.nameSpan, message: `${lever.name} turns the sensor` }],
      },
    ];
  });
}
