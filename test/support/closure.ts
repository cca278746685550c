/**
 * The loops of a sketch closed by a second method: pins are turned by Rodrigues' formula and all levers' rotations found at once
 * from the distances that rods, slots, couplings and cables keep, by Newton steps with mathjs's LU, carried on from the drawn
 * position in steps so short that no other branch is met. Nothing here comes from the engine.
 */
import { lusolve } from 'mathjs';
import { drivenLever, drivingLever, leverNamed, type Sketch, type SketchEnd, type SketchJoint } from './sketch.ts';
import { cross, dot, minus, plus, size, square, times, turned, unit, type Vector } from './vector.ts';

/** Rotation of each lever since drawn by its name, rad. */
export type Rotations = Readonly<Record<string, number>>;

export interface Closure {
  readonly sketch: Sketch;
  /** Where a pin stands, mm. */
  pinAt(end: SketchEnd, rotations: Rotations): Vector;
  /** How far a joint is from closed, as a fraction of its own size. */
  residual(joint: SketchJoint, rotations: Rotations, travel: number): number;
  /** Derivative of the residual by the driven lever's rotation; its sign is the branch. */
  leverage(joint: SketchJoint, rotations: Rotations): number;
  /** Pull of a cable at its driving end since drawn, mm. */
  pullOf(joint: SketchJoint & { kind: 'cable' }, rotations: Rotations, travel: number): number;
  /** Drawn distance of a cable's driven pin from its housing end, or a rod's length, mm. */
  lengthOf(joint: SketchJoint): number;
}

const RADIAN = Math.PI / 180;

/** On which a pin turns, mm: at centre + cos φ · out + sin φ · ahead, which is Rodrigues' formula put in order. */
interface Circle {
  readonly centre: Vector;
  readonly out: Vector;
  readonly ahead: Vector;
}

/** @param senses +1 or −1 for each lever that has a profiled drum: the way it opens */
export function closureOf(sketch: Sketch, senses: Readonly<Record<string, number>>): Closure {
  const axes = new Map(sketch.levers.map((lever) => [lever.name, unit(lever.axis)]));
  const axisOf = (name: string): Vector => axes.get(name)!;
  const circles = new Map<SketchEnd, Circle>();
  const circleOf = (end: SketchEnd): Circle => {
    const known = circles.get(end);
    if (known !== undefined) return known;
    const { pivot, arms } = leverNamed(sketch, end.lever);
    const u = axisOf(end.lever);
    const arm = minus(arms[end.part]!, pivot);
    const along = times(u, dot(u, arm));
    const circle = { centre: plus(pivot, along), out: minus(arm, along), ahead: cross(u, arm) };
    circles.set(end, circle);
    return circle;
  };
  const pinAt = (end: SketchEnd, rotations: Rotations): Vector => {
    const { centre, out, ahead } = circleOf(end);
    const [c, s] = [Math.cos(rotations[end.lever]!), Math.sin(rotations[end.lever]!)];
    const along = (i: 0 | 1 | 2): number => centre[i] + c * out[i] + s * ahead[i];
    return [along(0), along(1), along(2)];
  };
  const drawn: Rotations = Object.fromEntries(sketch.levers.map((lever) => [lever.name, 0]));
  const lengths = new Map<string, number>();
  for (const joint of sketch.joints) {
    if (joint.kind === 'rod') lengths.set(joint.name, joint.length ?? size(minus(pinAt(joint.to, drawn), pinAt(joint.from, drawn))));
    if (joint.kind === 'cable') {
      const ends = [joint.to, joint.from].map((end) => (end === undefined || !isPin(sketch, end) ? undefined : pinAt(end, drawn)));
      if (ends[0]) lengths.set(joint.name, size(minus(ends[0], joint.enters)));
      if (ends[1]) lengths.set(`${joint.name}.leaves`, size(minus(ends[1], joint.leaves!)));
    }
  }
  /** Cable that a drum has taken in since drawn, mm. */
  const wound = (end: SketchEnd, rotation: number): number => {
    const drum = leverNamed(sketch, end.lever).drums[end.part]!;
    const way = drum.wraps === 'counterclockwise' ? 1 : -1;
    if (typeof drum.radius === 'number') return way * drum.radius * rotation;
    const sense = senses[end.lever]!;
    return way * sense * profileIntegral(drum.radius, sense * rotation);
  };
  const radiusOf = (end: SketchEnd, rotation: number): number => {
    const drum = leverNamed(sketch, end.lever).drums[end.part]!;
    return typeof drum.radius === 'number' ? drum.radius : profileRadius(drum.radius, senses[end.lever]! * rotation);
  };
  const pullOf: Closure['pullOf'] = (joint, rotations, travel) => {
    if (joint.from === undefined) return sketch.pedal.kind === 'cable' ? sketch.pedal.pull * travel : NaN;
    if (!isPin(sketch, joint.from)) return wound(joint.from, rotations[joint.from.lever]!);
    return size(minus(pinAt(joint.from, rotations), joint.leaves!)) - lengths.get(`${joint.name}.leaves`)!;
  };
  const slotParts = (joint: SketchJoint & { kind: 'slot' }, rotations: Rotations): { f: Vector; n: Vector; d: Vector; reach: number } => {
    const fork = leverNamed(sketch, joint.fork);
    const u = axisOf(joint.fork);
    const e1 = unit(square(fork.reference, u));
    const f = turned(e1, u, joint.angle * RADIAN + rotations[joint.fork]!);
    const d = minus(pinAt(joint.pin, rotations), fork.pivot);
    return { f, n: cross(u, f), d, reach: size(square(minus(pinAt(joint.pin, drawn), fork.pivot), u)) };
  };
  const tangent = (end: SketchEnd, rotations: Rotations): Vector => {
    const { out, ahead } = circleOf(end);
    const [c, s] = [Math.cos(rotations[end.lever]!), Math.sin(rotations[end.lever]!)];
    const along = (i: 0 | 1 | 2): number => c * ahead[i] - s * out[i];
    return [along(0), along(1), along(2)];
  };
  return {
    sketch,
    pinAt,
    pullOf,
    lengthOf: (joint) => lengths.get(joint.name) ?? NaN,
    residual(joint, rotations, travel) {
      switch (joint.kind) {
        case 'rod':
          return size(minus(pinAt(joint.to, rotations), pinAt(joint.from, rotations))) / lengths.get(joint.name)! - 1;
        case 'slot': {
          const { n, d, reach } = slotParts(joint, rotations);
          return (dot(n, d) - joint.offset) / reach;
        }
        case 'coupling':
          return rotations[joint.to]! - joint.ratio * rotations[joint.from]!;
        case 'cable': {
          const passed = Math.max(0, pullOf(joint, rotations, travel) - joint.slack);
          if (!isPin(sketch, joint.to)) return (wound(joint.to, rotations[joint.to.lever]!) - passed) / radiusOf(joint.to, 0);
          const length = lengths.get(joint.name)!;
          return (size(minus(pinAt(joint.to, rotations), joint.enters)) - length + passed) / length;
        }
      }
    },
    leverage(joint, rotations) {
      switch (joint.kind) {
        case 'rod': {
          const e = minus(pinAt(joint.to, rotations), pinAt(joint.from, rotations));
          return dot(e, tangent(joint.to, rotations)) / (size(e) * lengths.get(joint.name)!);
        }
        case 'slot': {
          const { f, n, d, reach } = slotParts(joint, rotations);
          return (joint.drives === 'fork' ? -dot(f, d) : dot(n, tangent(joint.pin, rotations))) / reach;
        }
        case 'coupling':
          return 1;
        case 'cable': {
          if (!isPin(sketch, joint.to)) {
            const way = leverNamed(sketch, joint.to.lever).drums[joint.to.part]!.wraps === 'counterclockwise' ? 1 : -1;
            return (way * radiusOf(joint.to, rotations[joint.to.lever]!)) / radiusOf(joint.to, 0);
          }
          const e = minus(pinAt(joint.to, rotations), joint.enters);
          return dot(e, tangent(joint.to, rotations)) / (size(e) * lengths.get(joint.name)!);
        }
      }
    },
  };
}

/**
 * Whether a joint can be closed by any rotation of its driven lever, given its driver's; from where a circle's points are nearest and
 * farthest from a place or plane.
 * @param slop relative; how far beyond the last position that closes still counts as reachable
 */
export function isReachable(closure: Closure, joint: SketchJoint, rotations: Rotations, travel: number, slop: number): boolean {
  const { sketch } = closure;
  const circle = (end: SketchEnd): { centre: Vector; axis: Vector; radius: number } => {
    const { pivot, axis, arms } = leverNamed(sketch, end.lever);
    const u = unit(axis);
    const from = minus(arms[end.part]!, pivot);
    return { centre: plus(pivot, minus(from, square(from, u))), axis: u, radius: size(square(from, u)) };
  };
  const withinReach = (end: SketchEnd, place: Vector, length: number): boolean => {
    const { centre, axis, radius } = circle(end);
    const d = minus(place, centre);
    const height = dot(d, axis);
    const away = size(square(d, axis));
    const scale = slop * Math.max(length, radius, away);
    return length >= Math.hypot(height, away - radius) - scale && length <= Math.hypot(height, away + radius) + scale;
  };
  if (joint.kind === 'rod') return withinReach(joint.to, closure.pinAt(joint.from, rotations), closure.lengthOf(joint));
  if (joint.kind === 'cable') {
    if (!isPin(sketch, joint.to)) return true;
    const passed = Math.max(0, closure.pullOf(joint, rotations, travel) - joint.slack);
    return withinReach(joint.to, joint.enters, closure.lengthOf(joint) - passed);
  }
  if (joint.kind === 'coupling') return true;
  const fork = leverNamed(sketch, joint.fork);
  const u = unit(fork.axis);
  if (joint.drives === 'fork') {
    const reach = size(square(minus(closure.pinAt(joint.pin, rotations), fork.pivot), u));
    return reach * (1 + slop) >= Math.abs(joint.offset);
  }
  const { centre, axis, radius } = circle(joint.pin);
  const e1 = unit(square(fork.reference, u));
  const n = cross(u, turned(e1, u, joint.angle * RADIAN + rotations[joint.fork]!));
  const away = joint.offset - dot(n, minus(centre, fork.pivot));
  return Math.abs(away) <= radius * size(square(n, axis)) * (1 + slop) + slop * size(minus(centre, fork.pivot));
}

export function isPin(sketch: Sketch, end: SketchEnd): boolean {
  return end.part in leverNamed(sketch, end.lever).arms;
}

/** Carries rotations on along the pedal. */
export interface Continuation {
  /**
   * @returns rotations at a pedal travel not before the last one asked for, and how many times a relative error of a joint's
   *   dimensions is magnified there; undefined where the loops cannot be followed so far.
   */
  to(travel: number): Followed | undefined;
  /** How far along the pedal the loops have been followed. */
  reached(): number;
}

export interface Followed {
  readonly rotations: Rotations;
  readonly magnified: number;
}

export function continuation(closure: Closure): Continuation {
  const { sketch } = closure;
  const { pedal, joints } = sketch;
  const names = joints.map(drivenLever);
  let travel = 0;
  let rotations: Record<string, number> = Object.fromEntries(sketch.levers.map((lever) => [lever.name, 0]));
  const branch = joints.map((joint) => Math.sign(closure.leverage(joint, rotations)));
  let lost = false;

  const withPedal = (at: number, from: Rotations): Record<string, number> =>
    pedal.kind === 'lever' ? { ...from, [pedal.lever]: (pedal.opens === 'clockwise' ? -1 : 1) * pedal.travel * RADIAN * at } : { ...from };

  /** Newton steps from `from` at a pedal travel; undefined where they run off. */
  const settle = (at: number, from: Rotations): Record<string, number> | undefined => {
    const now = withPedal(at, from);
    for (let step = 0; step < MOST_NEWTON_STEPS; step++) {
      const residuals = joints.map((joint) => closure.residual(joint, now, at));
      const matrix = jacobian(closure, now, at);
      const change = (lusolve(matrix, residuals) as number[][]).map(([value]) => value!);
      if (!change.every((each) => Math.abs(each) < LONGEST_STEP)) return undefined;
      change.forEach((each, i) => (now[names[i]!]! -= each));
      if (joints.some((joint, i) => closure.leverage(joint, now) * branch[i]! <= 0)) return undefined;
      if (Math.max(...change.map(Math.abs)) < CONVERGED || step === MOST_NEWTON_STEPS - 1) {
        return Math.max(...change.map(Math.abs)) < ACCEPTED ? now : undefined;
      }
    }
    return undefined;
  };

  return {
    reached: () => travel,
    to(target) {
      let step = Math.min(target - travel, FIRST_STEP);
      while (!lost && travel < target) {
        const at = Math.min(target, travel + step);
        const next = settle(at, rotations);
        if (next === undefined) {
          step = (at - travel) / 2;
          if (step < LEAST_STEP) lost = true;
        } else {
          travel = at;
          rotations = next;
          step *= 2;
        }
      }
      return lost ? undefined : { rotations, magnified: magnification(jacobian(closure, rotations, travel)) };
    },
  };
}

const MOST_NEWTON_STEPS = 12;
/** rad; a correction longer than this may have reached another branch, so the pedal's step is halved instead. */
const LONGEST_STEP = 0.15;
const CONVERGED = 1e-13;
/** rad; near a toggle rounding keeps corrections from getting smaller. */
const ACCEPTED = 1e-9;
/** Of the pedal's travel. */
const FIRST_STEP = 1 / 16;
const LEAST_STEP = 1e-9;

/** Derivatives of all residuals by all driven rotations: one driver each, so two figures a row. */
export function jacobian(closure: Closure, rotations: Rotations, travel: number): number[][] {
  const { joints } = closure.sketch;
  const names = joints.map(drivenLever);
  return joints.map((joint, row) => {
    const entries = names.map(() => 0);
    entries[row] = closure.leverage(joint, rotations);
    const driver = drivingLever(joint);
    const column = driver === undefined ? -1 : names.indexOf(driver);
    if (column >= 0) {
      const moved = { ...rotations };
      const shifted = (by: number): number => {
        moved[driver!] = rotations[driver!]! + by;
        return closure.residual(joint, moved, travel);
      };
      entries[column] = (shifted(DIFFERENCE) - shifted(-DIFFERENCE)) / (2 * DIFFERENCE);
    }
    return entries;
  });
}

/** rad; near the cube root of the rounding unit, where a central difference is best. */
const DIFFERENCE = 1e-5;

/**
 * Row sums of the inverse's magnitude, at the most: the matrix is lower triangular in load-path order. Levers that are not assembled
 * do not count; no other hangs on them.
 */
export function magnification(matrix: readonly (readonly number[])[]): number {
  const bounds: number[] = [];
  matrix.forEach((row, i) => {
    let sum = 1;
    for (let k = 0; k < i; k++) if (row[k] !== 0) sum += Math.abs(row[k]!) * bounds[k]!;
    bounds.push(sum / Math.abs(row[i]!));
  });
  return Math.max(1, ...bounds.filter((bound) => !Number.isNaN(bound)));
}

interface Piece {
  readonly from: number;
  readonly to: number;
  readonly r0: number;
  readonly r1: number;
  readonly m0: number;
  readonly m1: number;
}

/** Shape-preserving cubic pieces (Fritsch–Carlson, with the weights that SciPy documents for its PchipInterpolator); rad and mm. */
function pieces(points: Profile): readonly Piece[] {
  let known = piecesOf.get(points);
  if (known === undefined) {
    known = piecesThrough(points);
    piecesOf.set(points, known);
  }
  return known;
}

const piecesOf = new WeakMap<Profile, readonly Piece[]>();

/** Opening in degrees and radius in mm. */
type Profile = readonly (readonly [number, number])[];

function piecesThrough(points: Profile): readonly Piece[] {
  const x = points.map(([opening]) => opening * RADIAN);
  const y = points.map(([, radius]) => radius);
  const h = x.slice(1).map((next, i) => next - x[i]!);
  const d = h.map((width, i) => (y[i + 1]! - y[i]!) / width);
  const last = x.length - 1;
  const end = (h0: number, h1: number, d0: number, d1: number): number => {
    const m = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
    if (Math.sign(m) !== Math.sign(d0)) return 0;
    return Math.sign(d0) !== Math.sign(d1) && Math.abs(m) > 3 * Math.abs(d0) ? 3 * d0 : m;
  };
  const m = x.map((_, i) => {
    if (last === 1) return d[0]!;
    if (i === 0) return end(h[0]!, h[1]!, d[0]!, d[1]!);
    if (i === last) return end(h[last - 1]!, h[last - 2]!, d[last - 1]!, d[last - 2]!);
    if (d[i - 1]! * d[i]! <= 0) return 0;
    const w1 = 2 * h[i]! + h[i - 1]!;
    const w2 = h[i]! + 2 * h[i - 1]!;
    return (w1 + w2) / (w1 / d[i - 1]! + w2 / d[i]!);
  });
  return h.map((_, i) => ({ from: x[i]!, to: x[i + 1]!, r0: y[i]!, r1: y[i + 1]!, m0: m[i]!, m1: m[i + 1]! }));
}

function radiusIn({ from, to, r0, r1, m0, m1 }: Piece, opening: number): number {
  const h = to - from;
  const s = (opening - from) / h;
  return (1 + 2 * s) * (1 - s) ** 2 * r0 + s * (1 - s) ** 2 * h * m0 + s * s * (3 - 2 * s) * r1 + s * s * (s - 1) * h * m1;
}

export function profileRadius(points: Profile, opening: number): number {
  const all = pieces(points);
  const first = all[0]!;
  const last = all.at(-1)!;
  if (opening <= first.from) return first.r0;
  if (opening >= last.to) return last.r1;
  const within = all.find((piece) => opening <= piece.to);
  return within === undefined ? NaN : radiusIn(within, opening);
}

/** ∫ radius from opening 0, mm·rad, by Gauss's rule of two points on each piece, which is exact for cubics. */
function profileIntegral(points: Profile, opening: number): number {
  const all = pieces(points);
  const edges = all.flatMap((piece) => [piece.from, piece.to]).filter((edge) => edge > Math.min(0, opening) && edge < Math.max(0, opening));
  const places = [...new Set([0, ...edges, opening])].sort((a, b) => a - b);
  let sum = 0;
  for (let i = 1; i < places.length; i++) {
    const half = (places[i]! - places[i - 1]!) / 2;
    const middle = (places[i]! + places[i - 1]!) / 2;
    sum += half * (profileRadius(points, middle - half / Math.sqrt(3)) + profileRadius(points, middle + half / Math.sqrt(3)));
  }
  return Math.sign(opening) * sum;
}
