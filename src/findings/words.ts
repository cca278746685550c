/** Figures in words, for messages; pedal positions and ranges besides. */
import { fixed } from '../travel/words.ts';

export { percent, rangeWords } from '../travel/words.ts';

export function degrees(angle: number, digits = 1): string {
  return `${fixed((angle * 180) / Math.PI, digits)}°`;
}

export function millimetres(length: number, digits = 2): string {
  return `${fixed(length * 1e3, digits)} mm`;
}

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
  return `${fixed(voltage, 3)} V`;
}

/** Names in a row, e.g. `front and rear`. */
export function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
