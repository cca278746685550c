/** A shaft with springs on it, and what they bring to it by hand. Lengths mm, angles degrees, torques N·mm. */
import { distance, polar, type Point } from './handGeometry.ts';

export const STEADY = 'one: {lever: shaft, rate: 2 N*mm/deg, preload: 300 N*mm}';
export const TWO = [STEADY, STEADY.replace('one', 'two')];

const BANK = 'plates: {bank: {lever: shaft, count: 4, bore: 40, seat: 6 deg, idle: 1.5 deg}}\n';

/** Two shafts with plates that close together. */
export const together = (springs: string): string => `format: 1
levers:
  front: {pivot: [0, 0], stops: {open: 60 deg}}
  rear: {pivot: [100, 0], stops: {open: 60 deg}}
pedal: {lever: front, opens: counterclockwise, travel: 60 deg}
couplings: {on: {from: front, to: rear}}
plates:
  front_bank: {lever: front, bore: 40, seat: 6 deg, idle: 1.5 deg}
  rear_bank: {lever: rear, bore: 40, seat: 6 deg, idle: 1.5 deg}
springs:
${springs}`;

/** A shaft that the pedal's cable turns 60° open by a drum of 24 mm, with an arm of 20 mm at its drawn angle. */
export const onShaft = (springs: readonly string[], { plates = BANK, angle }: { plates?: string; angle?: number } = {}): string => {
  const drawn = angle ?? (springs.some((spring) => spring.includes('[60, ')) ? 0 : 240);
  return `format: 1
levers:
  shaft: {pivot: [100, 0], arms: {tail: {radius: 20, angle: ${drawn}}}, drums: {wheel: {radius: 24, wraps: counterclockwise}}, stops: {closed: 0 deg, open: 60 deg}}
pedal: {cable: main, pull: 25.13 mm}
cables: {main: {enters: [40, 24], to: shaft.wheel}}
${plates}springs:
${springs.map((spring) => `  ${spring}\n`).join('')}`;
};

export interface Hung {
  readonly anchor: Point;
  /** Of the arm as drawn. */
  readonly angle: number;
  /** N/mm. */
  readonly rate: number;
  readonly free: number;
  /** N. */
  readonly tension?: number;
}

/** Closing torque of an extension spring on the arm at an opening: its force times how far its line passes from the pivot. */
export function torqueAt({ anchor, angle, rate, free, tension = 0 }: Hung, opening: number): number {
  const pin = polar([100, 0], 20, angle + opening);
  const length = distance(anchor, pin);
  if (length < free) return 0;
  const arm = ((pin[0] - 100) * (pin[1] - anchor[1]) - pin[1] * (pin[0] - anchor[0])) / length;
  return (tension + rate * (length - free)) * arm;
}

export const written = (name: string, { anchor, rate, free, tension }: Hung): string =>
  `${name}: {from: [${anchor.join(', ')}], to: shaft.tail, rate: ${rate} N/mm, free_length: ${free} mm${tension === undefined ? '' : `, initial_tension: ${tension} N`}}`;

/** Opening at full pedal: the drum takes the pull. */
export const FULL = (25.13 / 24) * (180 / Math.PI);

/** Least of a figure over the opening, at 20 001 places. */
export function leastOver(figure: (opening: number) => number): number {
  return Math.min(...Array.from({ length: 20_001 }, (_, i) => figure((FULL * i) / 20_000)));
}
