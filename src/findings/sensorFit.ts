/**
 * How a sensor would have to be turned on its spindle: the `at_closed` nearest to that of the file with which its rotor stays within its
 * range and its stops and, where the travel is short enough, its signal out of what electronics take for a fault.
 */
import { FAULT_BAND } from '../sensor/detections.ts';
import { rotorAngleAt } from '../sensor/sensorAt.ts';
import type { SensorModel } from '../kinematics/attached.ts';
import { greatestOf, leastOf } from '../travel/extremes.ts';
import type { Mend } from './finding.ts';
import { ANGLE_MARGIN } from './margin.ts';
import { writeBy, type Study } from './study.ts';

/** Nothing where no `at_closed` does it, or it follows from a formula. */
export function sensorFit(study: Study, sensor: SensorModel, kept: 'range' | 'signal'): { readonly mend?: Mend } {
  const { build, poseAt, samples } = study.travel;
  const angle = (at: number): number => rotorAngleAt(build, poseAt(at, sensor.lever), sensor);
  const [least, most] = [leastOf(angle, samples)?.value, greatestOf(angle, samples)?.value];
  if (least === undefined || most === undefined) return {};
  const range = within(study, sensor);
  const shifts = [narrowed(study, sensor, range), ...(kept === 'range' ? [range] : [])].map(({ from, to }) =>
    shiftInto(from + ANGLE_MARGIN - least, to - ANGLE_MARGIN - most),
  );
  const shift = shifts.find((each) => each !== undefined);
  return shift === undefined ? {} : writeBy(sensor.source.atClosed, build.parameters[sensor.atClosed]! + shift);
}

/** Whether its signal is one in volts of a 5 V supply, of which the band is known; taken so where the file gives no supply. */
export function hasFaultBand({ travel: { build } }: Study, { supply }: SensorModel): boolean {
  return supply === undefined || Math.abs(build.parameters[supply]! - USUAL_SUPPLY) <= SUPPLY_TOLERANCE;
}

/** V; the example of the rule is of sensors with such a supply. */
const USUAL_SUPPLY = 5;
/** V. Common practice, no source. */
const SUPPLY_TOLERANCE = 0.25;

interface Stretch {
  readonly from: number;
  readonly to: number;
}

function within({ travel: { build } }: Study, { range, mechanical }: SensorModel): Stretch {
  const ends = [range, ...(mechanical === undefined ? [] : [mechanical])];
  return {
    from: Math.max(...ends.map(([from]) => build.parameters[from]!)),
    to: Math.min(...ends.map(([, to]) => build.parameters[to]!)),
  };
}

/** Its angles with signals out of the band as well. */
function narrowed(study: Study, sensor: SensorModel, { from, to }: Stretch): Stretch {
  if (!hasFaultBand(study, sensor)) return { from, to };
  const { parameters } = study.travel.build;
  const [first, last] = sensor.range.map((end) => parameters[end]!);
  const [atFirst, atLast] = sensor.signal.map((end) => parameters[end]!);
  if (first === undefined || last === undefined || atFirst === undefined || atLast === undefined) return { from, to };
  const angles = [FAULT_BAND.low, FAULT_BAND.high].map((signal) => first + ((signal - atFirst) / (atLast - atFirst)) * (last - first));
  return { from: Math.max(from, Math.min(...angles)), to: Math.min(to, Math.max(...angles)) };
}

/** The least shift that lies between two; undefined where none does. */
function shiftInto(least: number, most: number): number | undefined {
  return least > most ? undefined : Math.min(Math.max(0, least), most);
}
