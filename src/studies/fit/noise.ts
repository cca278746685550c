/**
 * How far a reading scatters where the file does not say: one standard deviation by the kind of what is read.
 *
 * Common practice, no source: what a digital angle gauge, a voltmeter at the sensor, a calliper and a hand-held spring balance give in an
 * engine bay. Whoever knows better writes `noise`.
 */
import type { Column } from '../../table/column.ts';
import type { Dimension } from '../../definition/dimensions.ts';

const DEGREE = Math.PI / 180;

/** SI. */
const COMMON_NOISE: Readonly<Record<Dimension, number>> = {
  number: 0.02,
  length: 0.2e-3,
  area: 5e-6,
  angle: 0.2 * DEGREE,
  force: 1,
  torque: 0.02,
  'linear-rate': 50,
  'torsional-rate': 0.1e-3 / DEGREE,
  inertia: 1e-6,
  voltage: 0.005,
  pressure: 1e3,
  'angle-per-length': (0.1 * DEGREE) / 1e-3,
};

/** Of columns in percent: half a percent. */
const COMMON_SHARE = 0.005;

/** One standard deviation, SI. */
export function commonNoise({ dimension, unit }: Pick<Column, 'dimension' | 'unit'>): number {
  return unit === '%' ? COMMON_SHARE : COMMON_NOISE[dimension];
}
