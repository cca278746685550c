/** A planar four-bar written as a throttle file, so that a textbook row can be read off the solved table too. */
import type { FourBar } from '../../../src/kinematics/fourBar/index.ts';

export interface DrawnFourBar {
  /** Lengths, written as millimetres. */
  readonly links: FourBar;
  /** Angles of the drawn position, degrees. θ4 says which circuit is drawn; give it in full precision. */
  readonly theta2Deg: number;
  readonly theta4Deg: number;
  /** What the pedal lever turns, degrees; negative turns clockwise. */
  readonly travelDeg: number;
}

/**
 * The input link is the lever `foot`, pivoting at [0, 0] and driven by the pedal; the coupler is the rod `coupler`; the output link is
 * the lever `driven`, pivoting at [d, 0]. While it moves, θ2 = theta2Deg + foot.rotation and θ4 = theta4Deg + driven.rotation.
 */
export function fourBarFile({ links, theta2Deg, theta4Deg, travelDeg }: DrawnFourBar): string {
  const { a, b, c, d } = links;
  return `format: 1
title: Four-bar from a textbook
levers:
  foot:
    pivot: [0, 0]
    arms:
      pin: {radius: ${quantity(a, 'mm')}, angle: ${quantity(theta2Deg, 'deg')}}
  driven:
    pivot: [${plainNumber(d)}, 0]
    arms:
      pin: {radius: ${quantity(c, 'mm')}, angle: ${quantity(theta4Deg, 'deg')}}
pedal: {lever: foot, opens: ${travelDeg < 0 ? 'clockwise' : 'counterclockwise'}, travel: ${quantity(Math.abs(travelDeg), 'deg')}, pad: pin}
rods:
  coupler:
    from: foot.pin
    to: driven.pin
    length: ${quantity(b, 'mm')}
`;
}

export function quantity(value: number, unit: string): string {
  return `${plainNumber(value)} ${unit}`;
}

/** All digits of a double, never with an exponent. */
export function plainNumber(value: number): string {
  const plain = String(value);
  return plain.includes('e') ? value.toFixed(20).replace(/0+$/, '0') : plain;
}
