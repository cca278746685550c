/**
 * Convex pieces that turn with levers: a core of corners, each fixed to a lever or standing still, and a radius around it. A capsule is two
 * corners and half its breadth, a circle one corner and its radius, a piece of an outline its corners and nothing around them.
 *
 *     P(φ) = base + cos φ · perp + sin φ · cross
 *
 * Two pieces are seen along z, but where one of them says from where to where along z it stands (`between`): they are then taken as they lie
 * in space. In millimetres, which is what planck is given as its unit: its figures then stand far from the thresholds at which it takes
 * two things for one (1e-9).
 */

/** mm a m. */
export const UNITS = 1e3;

/** A corner of a core. */
export interface Corner {
  /** Index of the lever that it turns with; −1 for one that stands still. */
  readonly lever: number;
  readonly base: Figures;
  readonly perp: Figures;
  readonly cross: Figures;
}

/** The third counts in space alone. */
export type Figures = readonly [x: number, y: number, z?: number];

export interface Piece {
  readonly corners: readonly Corner[];
  /** mm; of a piece that stands `between` two heights, of its outline seen along z. */
  readonly radius: number;
  /** Of a keep-out in space: where it begins and ends along z, mm, the lower first. Its corners then stand for edges along z. */
  readonly between?: readonly [number, number];
  /** Of the file, e.g. `crank.out`. */
  readonly name: string;
  /** What of its part it is. */
  readonly kind: 'arm' | 'drum' | 'outline' | 'rod' | 'inner' | 'spring' | 'keep-out';
}

/**
 * Rotation, cosine and sine of the levers of a mechanism at a pedal travel, by their index there; NaN where one cannot be assembled. Plain
 * arrays: of small ones typed arrays take far longer to make.
 */
export interface Turns {
  readonly rotation: readonly number[];
  readonly cosine: readonly number[];
  readonly sine: readonly number[];
}

/** A place that is changed where it stands. */
export interface Spot {
  x: number;
  y: number;
}

/** Puts the corners of a piece where they stand. @param into a spot for each */
export function placeCorners({ corners }: Piece, turns: Turns, into: readonly Spot[]): void {
  for (let i = 0; i < corners.length; i++) {
    const { lever, base, perp, cross } = corners[i]!;
    const spot = into[i]!;
    if (lever < 0) {
      spot.x = base[0];
      spot.y = base[1];
    } else {
      const c = turns.cosine[lever]!;
      const s = turns.sine[lever]!;
      spot.x = base[0] + c * perp[0] + s * cross[0];
      spot.y = base[1] + c * perp[1] + s * cross[1];
    }
  }
}

/**
 * How far a core reaches in a direction at most while its levers turn from one station to another, never back on the way: of each corner
 * u·P(φ) is a constant and a wave, whose greatest between two angles is known.
 */
export function farthest(piece: Piece, ux: number, uy: number, uz: number, from: Turns, to: Turns): number {
  let most = -Infinity;
  const { between } = piece;
  const height = between === undefined ? 0 : uz * between[uz > 0 ? 1 : 0];
  for (const { lever, base, perp, cross } of piece.corners) {
    const still = ux * base[0] + uy * base[1] + (between === undefined ? along(uz, base) : height);
    if (lever < 0) {
      if (still > most) most = still;
      continue;
    }
    const a = ux * perp[0] + uy * perp[1] + along(uz, perp);
    const b = ux * cross[0] + uy * cross[1] + along(uz, cross);
    const reach = still + greatestWave(a, b, lever, from, to);
    if (reach > most) most = reach;
  }
  return most;
}

/** What its radius adds to how far a piece reaches in a direction. */
export function spread({ radius, between }: Piece, ux: number, uy: number): number {
  return between === undefined ? radius : radius * Math.hypot(ux, uy);
}

function along(uz: number, figures: Figures): number {
  return uz === 0 ? 0 : uz * (figures[2] ?? 0);
}

/** Greatest a cos φ + b sin φ between the two rotations of a lever. */
function greatestWave(a: number, b: number, lever: number, from: Turns, to: Turns): number {
  const back = from.rotation[lever]! > to.rotation[lever]!;
  const low = back ? to : from;
  const high = back ? from : to;
  const atLow = a * low.cosine[lever]! + b * low.sine[lever]!;
  const atHigh = a * high.cosine[lever]! + b * high.sine[lever]!;
  const turned = high.rotation[lever]! - low.rotation[lever]!;
  // Within half a turn the crest lies between where it rises at the one end and falls at the other.
  const rises = b * low.cosine[lever]! - a * low.sine[lever]! > 0;
  const falls = b * high.cosine[lever]! - a * high.sine[lever]! < 0;
  return turned >= Math.PI || (rises && falls) ? Math.hypot(a, b) : Math.max(atLow, atHigh);
}
