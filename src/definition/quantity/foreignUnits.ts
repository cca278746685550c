/**
 * Units that people write and the file does not know: what each measures, and, where its definition is exact, what it is in a unit that the
 * file knows. The nearest known word would be worse than nothing: `hPa` is no `Pa`, `mA` no `mm`.
 *
 * Definitions, from memory, as in NIST SP 811: standard atmosphere 101 325 Pa; torr 1/760 of it; conventional millimetre of mercury
 * 13 595.1 kg/m³ × 9.806 65 m/s² × 1 mm = 133.322 387 415 Pa, of water 9.806 65 Pa; yard 3 feet; ounce 1/16 pound; dyne 10 µN; gon
 * 1/400 turn. All exact.
 */
import type { Dimension } from '../dimensions.ts';
import { describeDimension } from '../formula/kind.ts';
import type { Span } from '../span.ts';
import { replaceFault, type Fault } from './fault.ts';
import { UNITS } from './units.ts';

export type ForeignUnit =
  /** `times / over` of `unit`, which the file knows. */
  | { readonly dimension: Dimension | 'mass'; readonly unit: string; readonly times: number; readonly over: number }
  /** What nothing in a throttle file is measured by, e.g. `a current`. */
  | { readonly what: string };

/** Undefined for a word that is none, or that the file knows. */
export function foreignUnit(word: string): ForeignUnit | undefined {
  return UNITS.has(word) ? undefined : FOREIGN.get(word);
}

/**
 * The fault of such a unit right behind a number.
 * @param figure the number as written and what it is; undefined where the unit is only a factor of another
 * @param expected what the place wants; undefined where that is not known
 */
export function foreignFault(
  word: string,
  where: Span,
  figure: (Span & { readonly value: number }) | undefined,
  expected?: { readonly dimension: Dimension; readonly fitting: string },
): Fault | undefined {
  const foreign = foreignUnit(word);
  if (foreign === undefined) return undefined;
  const fault = { code: 'unknown-unit', start: where.start, end: where.end } as const;
  const wanted = expected && `${describeDimension(expected.dimension)} is wanted here`;
  if ('what' in foreign) {
    const message = `\`${word}\` is ${foreign.what}, which has no place in a throttle file`;
    return expected === undefined
      ? { ...fault, message, cure: 'Leave it out; a file knows lengths, angles, forces, torques, masses, voltages and pressures' }
      : { ...fault, message: `${message}; ${wanted ?? ''}`, cure: `Write ${expected.fitting}` };
  }
  const measures = foreign.dimension === 'mass' ? 'a mass' : describeDimension(foreign.dimension);
  if (expected !== undefined && expected.dimension !== foreign.dimension && foreign.dimension !== 'mass') {
    return { ...fault, message: `\`${word}\` is ${measures}, but ${wanted ?? ''}`, cure: `Write ${expected.fitting}` };
  }
  const message = `\`${word}\` is ${measures} in a unit that the file does not know`;
  const { unit, times, over } = foreign;
  if (figure === undefined) return { ...fault, message, cure: `Write it in ${unit}: 1 ${word} is ${digits(times / over)} ${unit}` };
  const converted = `${digits((figure.value * times) / over)} ${unit}`;
  return replaceFault('unknown-unit', where, message, converted, { start: figure.start, end: where.end });
}

/** Ten significant digits, more than anything is measured to, without needless zeros. */
function digits(value: number): string {
  return String(Number(value.toPrecision(10)));
}

const known = (dimension: Dimension | 'mass', unit: string, times: number, over = 1): ForeignUnit => ({ dimension, unit, times, over });

const of = (what: string, ...words: readonly string[]): readonly (readonly [string, ForeignUnit])[] =>
  words.map((word) => [word, { what }]);

const each = (unit: ForeignUnit, ...words: readonly string[]): readonly (readonly [string, ForeignUnit])[] =>
  words.map((word) => [word, unit]);

const FOREIGN: ReadonlyMap<string, ForeignUnit> = new Map([
  ...each(known('pressure', 'kPa', 133322387415, 1e12), 'mmHg', 'mmhg'),
  ...each(known('pressure', 'kPa', 133322387415 * 25.4, 1e12), 'inHg', 'inhg', 'inchHg'),
  ...each(known('pressure', 'kPa', 101.325, 760), 'torr', 'Torr'),
  ...each(known('pressure', 'kPa', 101.325), 'atm'),
  ...each(known('pressure', 'kPa', 1, 10), 'mbar', 'mbars', 'hPa'),
  ...each(known('pressure', 'kPa', 1000), 'MPa'),
  ...each(known('pressure', 'kPa', 980665, 1e8), 'mmH2O'),
  ...each(known('pressure', 'kPa', 980665 * 25.4, 1e8), 'inH2O'),
  ...each(known('length', 'mm', 254, 1e4), 'thou', 'thous', 'mil', 'mils'),
  ...each(known('length', 'mm', 9144, 10), 'yd', 'yard', 'yards'),
  ...each(known('length', 'mm', 1e6), 'km'),
  ...each(known('length', 'mm', 100), 'dm'),
  ...each(known('angle', 'deg', 360), 'turn', 'turns', 'rev', 'revs', 'revolution', 'revolutions'),
  ...each(known('angle', 'deg', 9, 10), 'gon', 'grad', 'grads', 'gradian', 'gradians'),
  ...each(known('angle', 'deg', 1, 60), 'arcmin'),
  ...each(known('angle', 'deg', 1, 3600), 'arcsec'),
  ...each(known('angle', 'rad', 1, 1000), 'mrad'),
  ...each(known('force', 'N', 1, 1000), 'mN'),
  ...each(known('force', 'N', 1, 1e5), 'dyn'),
  ...each(known('force', 'kgf', 1), 'kp'),
  ...each(known('force', 'kgf', 1, 1000), 'gf'),
  ...each(known('force', 'lbf', 1, 16), 'ozf'),
  ...each(known('torque', 'N*mm', 1), 'mNm'),
  ...each(known('torque', 'N*mm', 10), 'Ncm'),
  ...each(known('torque', 'N*m', 1000), 'kNm'),
  ...each(known('mass', 'g', 45359237, 1.6e6), 'oz'),
  ...each(known('mass', 'g', 1, 1000), 'mg'),
  ...each(known('voltage', 'V', 1000), 'kV'),
  ...of('a current', 'A', 'mA', 'amp', 'amps', 'ampere', 'amperes'),
  ...of('a resistance', 'Ω', 'Ω', 'kΩ', 'kΩ', 'ohm', 'ohms', 'Ohm', 'kohm'),
  ...of('a power', 'W', 'kW', 'watt', 'watts', 'hp', 'PS'),
  ...of('a frequency', 'Hz', 'kHz'),
  ...of('a temperature', '°C', '°F', 'C', 'K', 'degC', 'degF', 'celsius', 'Celsius', 'fahrenheit', 'Fahrenheit', 'kelvin', 'Kelvin'),
  ...of('a time', 's', 'ms', 'sec', 'secs', 'second', 'seconds', 'min', 'mins', 'minute', 'minutes', 'h', 'hr', 'hour', 'hours'),
  ...of('a speed of rotation', 'rpm', 'RPM'),
  ...of('a speed', 'mph', 'kph', 'kmh'),
  ...of('a volume', 'l', 'L', 'ml', 'mL', 'cc'),
]);
