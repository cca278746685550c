/**
 * What follows for the pins and the coupler from the angles of input and output and their derivatives, by vectors: A = O2 + a·e^{iθ2},
 * B = O4 + c·e^{iθ4}, and the coupler is the line between them. Angles in degrees, the rest per second.
 */
import type { FourBar } from '../../../src/kinematics/fourBar/index.ts';

type Pair = readonly [number, number];
const DEG = Math.PI / 180;

export interface CrankMotion {
  readonly theta: number;
  readonly omega: number;
  readonly alpha: number;
}

export interface CouplerMotion {
  /** Distance between the pins, which the coupler must keep. */
  readonly length: number;
  readonly theta3: number;
  readonly omega3: number;
  readonly alpha3: number;
  readonly A: Pair;
  readonly B: Pair;
  readonly VA: Pair;
  readonly VB: Pair;
  readonly VBA: Pair;
  readonly AA: Pair;
  readonly AB: Pair;
  readonly ABA: Pair;
}

export function couplerMotion({ a, c, d }: FourBar, input: CrankMotion, output: CrankMotion): CouplerMotion {
  const first = pinMotion(a, 0, input);
  const second = pinMotion(c, d, output);
  const between = minus(second.place, first.place);
  const VBA = minus(second.velocity, first.velocity);
  const ABA = minus(second.acceleration, first.acceleration);
  const length = Math.hypot(...between);
  return {
    length,
    theta3: Math.atan2(between[1], between[0]) / DEG,
    omega3: cross(between, VBA) / length ** 2,
    alpha3: cross(between, ABA) / length ** 2,
    A: first.place,
    B: second.place,
    VA: first.velocity,
    VB: second.velocity,
    VBA,
    AA: first.acceleration,
    AB: second.acceleration,
    ABA,
  };
}

/** Angle between the lines of coupler and output, 0 to 180°: the transmission angle as the textbooks have it. */
export function angleBetweenLinks(links: FourBar, theta2: number, theta4: number): number {
  const still = { omega: 0, alpha: 0 };
  const { A, B } = couplerMotion(links, { theta: theta2, ...still }, { theta: theta4, ...still });
  const coupler = minus(A, B);
  const output: Pair = [links.d - B[0], -B[1]];
  return Math.atan2(Math.abs(cross(coupler, output)), coupler[0] * output[0] + coupler[1] * output[1]) / DEG;
}

function pinMotion(
  radius: number,
  pivot: number,
  { theta, omega, alpha }: CrankMotion,
): Readonly<Record<'place' | 'velocity' | 'acceleration', Pair>> {
  const x = radius * Math.cos(theta * DEG);
  const y = radius * Math.sin(theta * DEG);
  return {
    place: [pivot + x, y],
    velocity: [-omega * y, omega * x],
    acceleration: [-alpha * y - omega * omega * x, alpha * x - omega * omega * y],
  };
}

function minus(one: Pair, other: Pair): Pair {
  return [one[0] - other[0], one[1] - other[1]];
}

function cross(one: Pair, other: Pair): number {
  return one[0] * other[1] - one[1] * other[0];
}
