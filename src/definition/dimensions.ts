/**
 * What kind of quantity a figure is. Places in the file expect one of these; formulas are checked against
 * them once, before anything is computed.
 */

/** The kinds of quantity that places of the file and columns of the table expect. */
export type Dimension =
  | 'number'
  | 'length'
  | 'area'
  | 'angle'
  | 'force'
  | 'torque'
  | 'linear-rate'
  | 'torsional-rate'
  | 'inertia'
  | 'voltage'
  | 'pressure'
  /** Degrees of a lever per millimetre of cable: `<lever>.ratio` where the pedal is a cable. */
  | 'angle-per-length';

/** Unit that a bare number takes at a place of each dimension, as written in a file. */
export const PLACE_UNIT: Readonly<Record<Dimension, string>> = {
  number: '',
  length: 'mm',
  area: 'mm²',
  angle: 'deg',
  force: 'N',
  torque: 'N·mm',
  'linear-rate': 'N/mm',
  'torsional-rate': 'N·mm/deg',
  inertia: 'kg·mm²',
  voltage: 'V',
  pressure: 'kPa',
  'angle-per-length': 'deg/mm',
};

const DEGREE = Math.PI / 180;

/** SI value of one place unit: the place value times this is SI. */
export const PLACE_UNIT_SI: Readonly<Record<Dimension, number>> = {
  number: 1,
  length: 1e-3,
  area: 1e-6,
  angle: DEGREE,
  force: 1,
  torque: 1e-3,
  'linear-rate': 1e3,
  'torsional-rate': 1e-3 / DEGREE,
  inertia: 1e-6,
  voltage: 1,
  pressure: 1e3,
  'angle-per-length': DEGREE / 1e-3,
};

/** What a figure can be: also what only comes out, which no place of the file takes and no formula speaks of. */
export type FigureDimension = Dimension | 'energy' | 'time' | 'angular-speed';

/** Unit in which a figure is shown: that of its place, where it has one. */
export const FIGURE_UNIT: Readonly<Record<FigureDimension, string>> = {
  ...PLACE_UNIT,
  energy: 'J',
  time: 's',
  'angular-speed': 'deg/s',
};

/** SI value of one such unit. */
export const FIGURE_UNIT_SI: Readonly<Record<FigureDimension, number>> = {
  ...PLACE_UNIT_SI,
  energy: 1,
  time: 1,
  'angular-speed': DEGREE,
};
