/**
 * Where a planar four-bar stands, how fast and how hard its links and pins move.
 *
 * Position. With V = A − O4 and u the unit vector at θ4, |O4 + c·u − A| = b gives V·u = (|V|² + c² − b²) / 2c = R, so
 * θ4 = angle(V) ± atan2(S, R) with S² = |V|² − R², S taken by Heron's product so that it keeps its digits near a toggle.
 * Dividing by a and putting tan(θ4/2) for θ4 makes it the quadratic of Freudenstein's equation; the minus sign is its minus root.
 *
 * Velocity and acceleration, the loop a·e^{iθ2} + b·e^{iθ3} = d + c·e^{iθ4} differentiated once and twice:
 *   ω3 = ω2·(a/b)·sin(θ4 − θ2)/sin(θ3 − θ4),  ω4 = ω2·(a/c)·sin(θ2 − θ3)/sin(θ4 − θ3)
 * (Norton, Design of Machinery, ch. 4, 6 and 7, from memory).
 */
import { isUsable, wrapped } from './fourBar.ts';
import type { Circuit, FourBar, Vector } from './fourBar.ts';

export interface Position {
  /** Radians; θ3 and θ4 in (−π, π], θ2 as it was given. */
  readonly theta2: number;
  readonly theta3: number;
  readonly theta4: number;
}

export interface Velocity {
  /** Unit of time as that of `omega2`, radians. */
  readonly omega2: number;
  readonly omega3: number;
  readonly omega4: number;
}

export interface Acceleration {
  readonly alpha2: number;
  readonly alpha3: number;
  readonly alpha4: number;
}

/** A point fixed to the coupler: `radius` from A, `angle` anticlockwise from the line A→B, radians. */
export interface CouplerPoint {
  readonly radius: number;
  readonly angle: number;
}

/** How one point moves; `relative` to another point where the name of the field says so. */
export interface PointMotion {
  readonly velocity: Vector;
  readonly acceleration: Vector;
}

/**
 * A loop that misses closing by less than this part of the sum of its links is taken to be at its limit, coupler and output in line:
 * limit angles computed in doubles miss by a few units in the last place.
 */
export const CLOSING_TOLERANCE = 1e-14;

/** Below this |sin(θ4 − θ3)| the loop stands at a toggle of its input and no velocity follows from ω2. */
export const TOGGLE_SINE = 1e-12;

/** `undefined` when the lengths are unusable, the loop cannot close at `theta2`, or A falls on O4 so that the output is loose. */
export function solvePosition(fourBar: FourBar, theta2: number, circuit: Circuit): Position | undefined {
  if (!isUsable(fourBar) || !Number.isFinite(theta2)) return undefined;
  const { a, b, c, d } = fourBar;
  const vx = a * Math.cos(theta2) - d;
  const vy = a * Math.sin(theta2);
  const reach = Math.hypot(vx, vy);
  const size = Math.abs(a) + b + Math.abs(c) + d;
  if (reach <= CLOSING_TOLERANCE * size) return undefined;
  const output = Math.abs(c);
  const near = CLOSING_TOLERANCE * size;
  const heron = [output + reach - b, b - output + reach, b + output - reach];
  let product = output + reach + b;
  for (const factor of heron) {
    if (factor < -near) return undefined;
    product *= Math.max(0, factor);
  }
  // R and S, each times 2·|c|.
  const along = ((reach - b) * (reach + b) + c * c) * Math.sign(c);
  const across = Math.sqrt(product);
  const side = (circuit === 'open' ? -1 : 1) * Math.sign(a);
  const theta4 = wrapped(Math.atan2(vy, vx) + side * Math.atan2(across, along));
  const theta3 = Math.atan2(c * Math.sin(theta4) - vy, c * Math.cos(theta4) - vx);
  return { theta2, theta3: theta3 === -Math.PI ? Math.PI : theta3, theta4 };
}

/** The circuit on which a closed loop stands; at a toggle, where the two meet, `open`. */
export function circuitOf(fourBar: FourBar, { theta3, theta4 }: Position): Circuit {
  return Math.sin(theta4 - theta3) * Math.sign(fourBar.a) >= 0 ? 'open' : 'crossed';
}

/** `undefined` at a toggle of the input. */
export function solveVelocity(fourBar: FourBar, { theta2, theta3, theta4 }: Position, omega2: number): Velocity | undefined {
  const sine = Math.sin(theta4 - theta3);
  if (!(Math.abs(sine) > TOGGLE_SINE)) return undefined;
  const { a, b, c } = fourBar;
  return {
    omega2,
    omega3: ((-omega2 * a) / b) * (Math.sin(theta4 - theta2) / sine),
    omega4: ((omega2 * a) / c) * (Math.sin(theta2 - theta3) / sine),
  };
}

/** `undefined` at a toggle of the input. */
export function solveAcceleration(fourBar: FourBar, position: Position, velocity: Velocity, alpha2: number): Acceleration | undefined {
  const { theta2, theta3, theta4 } = position;
  const sine = Math.sin(theta4 - theta3);
  if (!(Math.abs(sine) > TOGGLE_SINE)) return undefined;
  const { a, b, c } = fourBar;
  const { omega2, omega3, omega4 } = velocity;
  // What ω² and α2 leave for b·α3·(i·e^{iθ3}) − c·α4·(i·e^{iθ4}) to make good; along e^{iθ4} only the first counts, along e^{iθ3} the second.
  const input = turning(a, theta2, omega2, alpha2);
  const coupler = turning(b, theta3, omega3, 0);
  const output = turning(c, theta4, omega4, 0);
  const x = output.x - input.x - coupler.x;
  const y = output.y - input.y - coupler.y;
  return {
    alpha2,
    alpha3: (x * Math.cos(theta4) + y * Math.sin(theta4)) / (b * sine),
    alpha4: (x * Math.cos(theta3) + y * Math.sin(theta3)) / (c * sine),
  };
}

/** The pins A and B and, in between, B relative to A. */
export function pinMotions(
  fourBar: FourBar,
  position: Position,
  velocity: Velocity,
  acceleration: Acceleration,
): { readonly a: PointMotion; readonly bRelativeToA: PointMotion; readonly b: PointMotion } {
  const link = (length: number, theta: number, omega: number, alpha: number): PointMotion => ({
    velocity: { x: -length * omega * Math.sin(theta), y: length * omega * Math.cos(theta) },
    acceleration: turning(length, theta, omega, alpha),
  });
  return {
    a: link(fourBar.a, position.theta2, velocity.omega2, acceleration.alpha2),
    bRelativeToA: link(fourBar.b, position.theta3, velocity.omega3, acceleration.alpha3),
    b: link(fourBar.c, position.theta4, velocity.omega4, acceleration.alpha4),
  };
}

/** Place of a coupler point in the frame of `fourBar.ts`. */
export function couplerPointPlace(fourBar: FourBar, { theta2, theta3 }: Position, point: CouplerPoint): Vector {
  const angle = theta3 + point.angle;
  return {
    x: fourBar.a * Math.cos(theta2) + point.radius * Math.cos(angle),
    y: fourBar.a * Math.sin(theta2) + point.radius * Math.sin(angle),
  };
}

export function couplerPointMotion(
  fourBar: FourBar,
  position: Position,
  velocity: Velocity,
  acceleration: Acceleration,
  point: CouplerPoint,
): PointMotion {
  const { a } = pinMotions(fourBar, position, velocity, acceleration);
  const angle = position.theta3 + point.angle;
  const swing = turning(point.radius, angle, velocity.omega3, acceleration.alpha3);
  return {
    velocity: {
      x: a.velocity.x - point.radius * velocity.omega3 * Math.sin(angle),
      y: a.velocity.y + point.radius * velocity.omega3 * Math.cos(angle),
    },
    acceleration: { x: a.acceleration.x + swing.x, y: a.acceleration.y + swing.y },
  };
}

/** Acceleration of the end of a turning link against its other end: α·i·r − ω²·r. */
function turning(length: number, theta: number, omega: number, alpha: number): Vector {
  const cosine = Math.cos(theta);
  const sine = Math.sin(theta);
  return {
    x: length * (-alpha * sine - omega * omega * cosine),
    y: length * (alpha * cosine - omega * omega * sine),
  };
}
