/**
 * How far the links of a planar four-bar can go: limit positions of the input, dead centres of the output, swings,
 * and the extremes of the transmission angle.
 *
 * The input stops where coupler and output lie in line, |O2A − O4| = b + c (extended) or |b − c| (overlapped):
 *   cos θ2 = (a² + d² − b² − c²)/(2ad) ± bc/(ad)      (Norton, Design of Machinery, eq. 4.37, from memory)
 * solved for tan(θ2/2), which keeps its digits where the limit comes near 0 or π. The output's dead centres are the same with
 * the roles of the links exchanged: input and coupler in line. The transmission angle μ between coupler and output obeys
 *   cos μ = (b² + c² − |V|²)/(2bc),  |V|² = a² + d² − 2ad·cos θ2.
 *
 * All of it holds for negative `a` and `c` (see `fourBar.ts`); nothing here depends on the circuit unless it says so.
 */
import { CHANGE_POINT_TOLERANCE } from './classify.ts';
import { exchanged, isUsable, TURN, wrapped } from './fourBar.ts';
import type { AngleRange, Circuit, FourBar } from './fourBar.ts';
import { circuitOf } from './position.ts';

/** Whether the two links in line point the same way or back over each other. */
export type InLine = 'extended' | 'overlapped';

export interface Toggle {
  /** Angle of the link that stops there, radians in (−π, π]. Every toggle strictly between 0 and π has its mirror image at −angle. */
  readonly angle: number;
  readonly inLine: InLine;
  /** True where this is a change point, which the link may run through. */
  readonly changePoint: boolean;
}

export interface Limits {
  /** Where the link stops or, at a change point, may go on; empty when nothing hinders a full turn. Sorted by angle. */
  readonly toggles: readonly Toggle[];
  /**
   * The angles at which the loop can close, as separate intervals starting in (−π, π]; one interval of a full turn where nothing
   * stops the link. A change point alone ends no interval. Empty when the loop closes nowhere.
   */
  readonly reachable: readonly AngleRange[];
}

export interface DeadCentre {
  readonly inLine: InLine;
  readonly theta2: number;
  readonly theta3: number;
  readonly theta4: number;
  readonly circuit: Circuit;
  readonly changePoint: boolean;
}

/** Transmission angle in [0, π], radians: between the lines of coupler and output; best at π/2. */
export interface TransmissionExtremes {
  readonly least: AngleAt;
  readonly greatest: AngleAt;
  /** The one further from π/2, as the acute angle min(μ, π − μ). */
  readonly poorest: AngleAt;
}

export interface AngleAt {
  readonly angle: number;
  readonly theta2: number;
}

/** Limit positions of the input, over both circuits. `undefined` for unusable lengths. */
export function inputLimits(fourBar: FourBar): Limits | undefined {
  if (!isUsable(fourBar)) return undefined;
  const ground = fourBar.d;
  const link = Math.abs(fourBar.a);
  const coupler = fourBar.b;
  const other = Math.abs(fourBar.c);
  const near = CHANGE_POINT_TOLERANCE * (ground + link + coupler + other);
  const far = farLimit(ground, link, coupler + other, near);
  const close = closeLimit(ground, link, Math.abs(coupler - other), near);
  if (far === 'never' || close === 'never') return { toggles: [], reachable: [] };

  const toggles: Toggle[] = [];
  const add = (angle: number, inLine: InLine): void => {
    const changePoint = angle === 0 || angle === Math.PI;
    toggles.push({ angle, inLine, changePoint });
    if (!changePoint) toggles.push({ angle: -angle, inLine, changePoint });
  };
  if (close !== undefined) add(close, 'overlapped');
  if (far !== undefined) add(far, 'extended');

  const inner = close === undefined || close === 0 ? undefined : close;
  const outer = far === undefined || far === Math.PI ? undefined : far;
  const offset = fourBar.a < 0 ? Math.PI : 0;
  return {
    toggles: toggles.map((toggle) => ({ ...toggle, angle: wrapped(toggle.angle + offset) })).sort((one, next) => one.angle - next.angle),
    reachable: between(inner, outer).map(({ from, to }) => shifted(from + offset, to - from)),
  };
}

/** Limit positions of the output, over both circuits, as angles θ4: where it stops, not where it stands. */
export function outputLimits(fourBar: FourBar): Limits | undefined {
  const limits = inputLimits(exchanged(fourBar));
  if (limits === undefined) return undefined;
  return {
    toggles: limits.toggles
      .map((toggle) => ({ ...toggle, angle: wrapped(Math.PI - toggle.angle) }))
      .sort((one, next) => one.angle - next.angle),
    reachable: limits.reachable.map(({ from, to }) => shifted(Math.PI - to, to - from)).sort((one, next) => one.from - next.from),
  };
}

/** How far the output can swing without the linkage being taken apart, radians; 2π when it turns fully, 0 when the loop never closes. */
export function outputSwing(fourBar: FourBar): number | undefined {
  const limits = outputLimits(fourBar);
  if (limits === undefined) return undefined;
  const first = limits.reachable[0];
  // Where there are two ranges, one on either side of the ground line, they mirror each other.
  return first === undefined ? 0 : first.to - first.from;
}

/** Positions in which input and coupler lie in line, so that the output stands still: all of them, mirror images too. */
export function deadCentres(fourBar: FourBar): readonly DeadCentre[] {
  const limits = outputLimits(fourBar);
  if (limits === undefined) return [];
  const { a, b, c, d } = fourBar;
  return limits.toggles.map(({ angle: theta4, inLine, changePoint }) => {
    const towardsB = Math.atan2(c * Math.sin(theta4), d + c * Math.cos(theta4));
    const foldedBeyond = inLine === 'overlapped' && b > Math.abs(a) ? Math.PI : 0;
    const theta2 = wrapped(towardsB + foldedBeyond + (a < 0 ? Math.PI : 0));
    const theta3 = wrapped(towardsB + (inLine === 'overlapped' && b <= Math.abs(a) ? Math.PI : 0));
    const position = { theta2, theta3, theta4 };
    return { ...position, inLine, changePoint, circuit: circuitOf(fourBar, position) };
  });
}

/** Angle between the lines of coupler and output at θ2, [0, π]; `undefined` where the loop cannot close. */
export function transmissionAngle(fourBar: FourBar, theta2: number): number | undefined {
  if (!isUsable(fourBar) || !Number.isFinite(theta2)) return undefined;
  const a = Math.abs(fourBar.a);
  const half = (fourBar.a < 0 ? theta2 + Math.PI : theta2) / 2;
  const reach = Math.hypot((a - fourBar.d) * Math.cos(half), (a + fourBar.d) * Math.sin(half));
  const output = Math.abs(fourBar.c);
  const near = CHANGE_POINT_TOLERANCE * (a + fourBar.b + output + fourBar.d);
  const opened = (reach - fourBar.b + output) * (reach + fourBar.b - output);
  const left = fourBar.b + output - reach;
  if (left < -near || Math.min(reach - fourBar.b + output, reach + fourBar.b - output) < -near) return undefined;
  return 2 * Math.atan2(Math.sqrt(Math.max(0, opened)), Math.sqrt(Math.max(0, left) * (fourBar.b + output + reach)));
}

/**
 * Least, greatest and poorest transmission angle over the part of `range` (default: a full turn) in which the loop closes.
 * `undefined` when it closes nowhere in it. At limits of the input inside the range the angle is 0 or π.
 */
export function transmissionExtremes(
  fourBar: FourBar,
  range: AngleRange = { from: -Math.PI, to: Math.PI },
): TransmissionExtremes | undefined {
  const candidates: AngleAt[] = [];
  for (const part of assembledWithin(fourBar, range)) {
    // |V|, and μ with it, grows with the angle from 0 to π on either side: it can turn at multiples of π only.
    const places = [part.from, part.to];
    for (let k = Math.ceil(part.from / Math.PI); k * Math.PI < part.to; k++) places.push(k * Math.PI);
    for (const theta2 of places) {
      const angle = transmissionAngle(fourBar, theta2);
      if (angle !== undefined) candidates.push({ angle, theta2 });
    }
  }
  const [first] = candidates;
  if (first === undefined) return undefined;
  const acute = ({ angle }: AngleAt): number => Math.min(angle, Math.PI - angle);
  let least = first;
  let greatest = first;
  let poorest = first;
  for (const candidate of candidates) {
    if (candidate.angle < least.angle) least = candidate;
    if (candidate.angle > greatest.angle) greatest = candidate;
    if (acute(candidate) < acute(poorest)) poorest = candidate;
  }
  return { least, greatest, poorest: { angle: acute(poorest), theta2: poorest.theta2 } };
}

/** The parts of a range of θ2, which may be wider than a turn, in which the loop closes; in order. */
export function assembledWithin(fourBar: FourBar, range: AngleRange): readonly AngleRange[] {
  const limits = inputLimits(fourBar);
  if (limits === undefined || !(range.to >= range.from) || !Number.isFinite(range.to - range.from)) return [];
  const parts: AngleRange[] = [];
  for (const { from, to } of limits.reachable) {
    if (to - from >= TURN) return [range];
    for (let turn = Math.floor((range.from - to) / TURN); from + turn * TURN <= range.to; turn++) {
      const part = { from: Math.max(range.from, from + turn * TURN), to: Math.min(range.to, to + turn * TURN) };
      if (part.to >= part.from) parts.push(part);
    }
  }
  return parts.sort((one, next) => one.from - next.from);
}

/** Angle in (0, π] at which the pin gets as far from the other pivot as `reach`. */
function farLimit(ground: number, link: number, reach: number, near: number): number | undefined | 'never' {
  const left = ground + link - reach;
  if (left < -near) return undefined;
  if (left <= near) return Math.PI;
  const passed = reach - Math.abs(ground - link);
  if (passed < -near) return 'never';
  return angleAt(ground, link, reach);
}

/** Angle in [0, π) at which the pin gets as close to the other pivot as `reach`. */
function closeLimit(ground: number, link: number, reach: number, near: number): number | undefined | 'never' {
  const passed = reach - Math.abs(ground - link);
  if (passed < -near) return undefined;
  if (passed <= near) return 0;
  if (ground + link - reach < -near) return 'never';
  return angleAt(ground, link, reach);
}

/** Law of cosines for the half angle. */
function angleAt(ground: number, link: number, reach: number): number {
  const difference = Math.abs(ground - link);
  const opened = (reach - difference) * (reach + difference);
  const left = (ground + link - reach) * (ground + link + reach);
  return 2 * Math.atan2(Math.sqrt(Math.max(0, opened)), Math.sqrt(Math.max(0, left)));
}

/** Intervals of the angle that keep |angle| at `inner` or more and `outer` or less. */
function between(inner: number | undefined, outer: number | undefined): readonly AngleRange[] {
  if (inner === undefined && outer === undefined) return [{ from: -Math.PI, to: Math.PI }];
  if (inner === undefined) return [{ from: -(outer ?? Math.PI), to: outer ?? Math.PI }];
  if (outer === undefined) return [{ from: inner, to: TURN - inner }];
  return [
    { from: -outer, to: -inner },
    { from: inner, to: outer },
  ];
}

function shifted(from: number, width: number): AngleRange {
  const start = width >= TURN ? -Math.PI : wrapped(from);
  return { from: start, to: start + width };
}
