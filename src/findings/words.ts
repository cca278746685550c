/** Figures in words, for messages; pedal positions and ranges besides. */
import { digitsFor } from '../definition/digits.ts';
import { PLACE_UNIT, type Dimension } from '../definition/dimensions.ts';
import { formatQuantity } from '../definition/edit.ts';
import { fixed } from '../travel/words.ts';

export { percent, rangeWords } from '../travel/words.ts';

/** @param digits behind the point, for what is to be made so; else as everywhere */
export function degrees(angle: number, digits?: number): string {
  const shown = (angle * 180) / Math.PI;
  return `${fixed(shown, digits ?? digitsFor(shown, 'angle'))}°`;
}

/** @param digits as for `degrees` */
export function millimetres(length: number, digits?: number): string {
  const shown = length * 1e3;
  return `${fixed(shown, digits ?? digitsFor(shown, 'length'))} mm`;
}

/** A figure that is to be written, whole, in the unit of the file, as its fix writes it; degrees as everywhere in words. @param unit as in `Value.unit`; that of its place where left out */
export function quantityWords(value: number, dimension: Dimension, unit = ''): string {
  const written = unit === '' ? PLACE_UNIT[dimension] : unit;
  return formatQuantity(value, written === 'deg' ? '°' : written, WHOLE) ?? String(value);
}

/** Significant digits: more than any rounded figure has, less than would show how a computer rounds. */
const WHOLE = 12;

export function squareMillimetres(area: number): string {
  return `${fixed(area * 1e6, 1)} mm²`;
}

export function decimal(value: number): string {
  return fixed(value, 2);
}

/** E.g. `240 N·mm`; one digit behind the point below 10. */
export function newtonMillimetres(torque: number): string {
  const shown = torque * 1e3;
  return `${fixed(shown, Math.abs(shown) < 10 ? 1 : 0)} N·mm`;
}

/** E.g. `1240 MPa`. */
export function megapascals(stress: number): string {
  return `${fixed(stress * 1e-6, 0)} MPa`;
}

/** E.g. `78 %`, of something other than the travel. */
export function share(fraction: number): string {
  return `${fixed(fraction * 100, 0)} %`;
}

export function volts(voltage: number): string {
  return `${fixed(voltage, digitsFor(voltage, 'voltage'))} V`;
}

/** Names in a row, e.g. `front and rear`. */
export function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
