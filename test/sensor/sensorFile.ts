/** A shaft with plates and a sensor on a rotor, geared off a pedal: every figure follows by hand. */
import type { SensorModel } from '../../src/kinematics/attached.ts';
import { solveTravel, type Travel } from '../../src/travel/travel.ts';
import { mechanismOf } from '../support/solveSketch.ts';

export interface SensorFile {
  /** Degrees; the shaft opens by 2 for each degree of the pedal. */
  readonly travel?: number;
  /** Degrees of the rotor for a degree of the shaft. */
  readonly ratio?: number;
  /** Keys of the sensor besides its lever. */
  readonly sensor?: string;
  readonly on?: 'pedal' | 'shaft' | 'rotor';
  readonly stops?: string;
  readonly plates?: boolean;
}

export const SENSOR = 'at_closed: 12 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]';

export function sensorFile({
  travel = 40,
  ratio = -1,
  sensor = SENSOR,
  on = 'rotor',
  stops = 'closed: 0',
  plates = true,
}: SensorFile = {}): string {
  return `format: 1
levers:
  pedal: {pivot: [0, 0]}
  shaft: {pivot: [100, 0], stops: {${stops}}}
  rotor: {pivot: [200, 0]}
pedal: {lever: pedal, opens: counterclockwise, travel: ${travel}}
couplings:
  gear: {from: pedal, to: shaft, ratio: 2}
  drive: {from: shaft, to: rotor, ratio: ${ratio}}
${plates ? 'plates: {bank: {lever: shaft, bore: 45, shaft: 8, seat: 6 deg, idle: 1.5 deg}}\n' : ''}sensors: {tps: {lever: ${on}, ${sensor}}}
`;
}

export function sensorIn(
  text: string,
  values?: (path: string, nominal: number) => number,
): { readonly travel: Travel; readonly sensor: SensorModel } {
  const mechanism = mechanismOf(text);
  const vector = values && Float64Array.from(mechanism.dimensions, ({ path, nominal }) => values(path, nominal));
  const travel = solveTravel(mechanism, vector);
  return { travel, sensor: travel.mechanism.attached.sensors[0]! };
}
