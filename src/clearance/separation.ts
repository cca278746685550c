/**
 * How far apart two convex pieces stand, or how deep one lies in the other.
 *
 * Apart: planck's distance query between the cores, less both radii. It is given bare corners and told to leave radii out, so that none of
 * its polygons' skins (twice its slop of 0.005) and none of its welding of close corners comes in.
 *
 * Cores that overlap, for which planck knows no more than 0: by separating axes, exact for convex pieces. Along a unit vector u square to a
 * side of either, u·b − u·a of the nearest corners is the overlap; the least overlap of all sides is the least shift that would part the
 * cores. With the radii,
 *
 *     gap = max over u (min over b of u·b − max over a of u·a) − radius of a − radius of b
 *
 * in both cases, so a gap goes through zero without a jump, and any u gives a lower bound of it. In space (`inSpace.ts`) the same holds.
 */
import { loadPlanck } from '../numeric/planck.ts';
import { placeCorners, type Piece, type Spot, type Turns } from './piece.ts';
import { separateInSpace } from './inSpace.ts';

/** Of two pieces a and b at one station, mm; filled again by the next. */
export interface Separation {
  /** Below zero the depth. */
  gap: number;
  /** Of length 1, from a to b; seen along z the last is 0. */
  ux: number;
  uy: number;
  uz: number;
  /**
   * The two points that are nearest to each other on the edges of a and b; where they overlap, those that the least shift would bring together.
   * Their heights mean something in space alone.
   */
  readonly onA: Spot & { z: number };
  readonly onB: Spot & { z: number };
}

export type Separator = (a: Piece, b: Piece, turns: Turns) => Separation;

/** A separator with its own room to work in. */
export function createSeparator(): Separator {
  const { Distance, DistanceInput, DistanceOutput, SimplexCache } = loadPlanck();
  const input = new DistanceInput();
  const output = new DistanceOutput();
  const cache = new SimplexCache();
  /** Where the corners of each piece stand, changed in place: no list is made or resized while measuring. */
  const spots = new WeakMap<Piece, Spot[]>();
  const placed = (piece: Piece, turns: Turns): readonly Spot[] => {
    const known = spots.get(piece);
    const own = known ?? piece.corners.map(() => ({ x: 0, y: 0 }));
    if (known === undefined) spots.set(piece, own);
    placeCorners(piece, turns, own);
    return own;
  };
  const found: Separation = { gap: 0, ux: 1, uy: 0, uz: 0, onA: { x: 0, y: 0, z: 0 }, onB: { x: 0, y: 0, z: 0 } };
  input.useRadii = false;
  return (a, b, turns) => {
    if (b.between !== undefined) {
      separateInSpace(a, b, b.between, turns, found);
      return found;
    }
    found.uz = 0;
    const cornersA = placed(a, turns);
    const cornersB = placed(b, turns);
    input.proxyA.setVertices(cornersA as Spot[], cornersA.length, 0);
    input.proxyB.setVertices(cornersB as Spot[], cornersB.length, 0);
    // Without what it remembers of the pair before, so that the same figures come in any order.
    cache.count = 0;
    Distance(output, cache, input);
    const { distance, pointA, pointB } = output;
    const radii = a.radius + b.radius;
    if (distance > TOUCHING) {
      const ux = (pointB.x - pointA.x) / distance;
      const uy = (pointB.y - pointA.y) / distance;
      found.gap = distance - radii;
      found.ux = ux;
      found.uy = uy;
      put(found.onA, pointA.x + ux * a.radius, pointA.y + uy * a.radius);
      put(found.onB, pointB.x - ux * b.radius, pointB.y - uy * b.radius);
    } else overlap(cornersA, cornersB, a.radius, b.radius, found);
    return found;
  };
}

/** mm; a direction is not to be had of points that are nearer. */
const TOUCHING = 1e-9;

function put(spot: Spot, x: number, y: number): void {
  spot.x = x;
  spot.y = y;
}

/** By separating axes: the sides of both, and for two points any direction. */
function overlap(a: readonly Spot[], b: readonly Spot[], radiusA: number, radiusB: number, found: Separation): void {
  const best = { apart: -Infinity, isOfA: false };
  const tryAlong = (ux: number, uy: number, ofA: boolean): void => {
    const apart = -reach(b, -ux, -uy) - reach(a, ux, uy);
    if (!(apart > best.apart)) return;
    best.apart = apart;
    best.isOfA = ofA;
    found.ux = ux;
    found.uy = uy;
  };
  const trySides = (corners: readonly Spot[], ofA: boolean): void => {
    if (corners.length < 2) return;
    for (let i = 0; i < corners.length; i++) {
      const from = corners[i]!;
      const to = corners[(i + 1) % corners.length]!;
      const length = Math.hypot(to.x - from.x, to.y - from.y);
      if (!(length > TOUCHING)) continue;
      // Outwards of counter-clockwise corners; a core of two has a side each way.
      const [x, y] = [(to.y - from.y) / length, (from.x - to.x) / length];
      if (ofA) tryAlong(x, y, true);
      else tryAlong(-x, -y, false);
    }
  };
  trySides(a, true);
  trySides(b, false);
  if (best.apart === -Infinity) tryAlong(1, 0, false);
  const { ux, uy } = found;
  const gap = best.apart - radiusA - radiusB;
  found.gap = gap;
  // The corner that has come through the other's side, and where it would have to go back to.
  if (best.isOfA) {
    const corner = supported(b, -ux, -uy);
    put(found.onB, corner.x - ux * radiusB, corner.y - uy * radiusB);
    put(found.onA, found.onB.x - ux * gap, found.onB.y - uy * gap);
  } else {
    const corner = supported(a, ux, uy);
    put(found.onA, corner.x + ux * radiusA, corner.y + uy * radiusA);
    put(found.onB, found.onA.x + ux * gap, found.onA.y + uy * gap);
  }
}

function reach(corners: readonly Spot[], ux: number, uy: number): number {
  let most = -Infinity;
  for (const { x, y } of corners) most = Math.max(most, x * ux + y * uy);
  return most;
}

function supported(corners: readonly Spot[], ux: number, uy: number): Spot {
  return corners.reduce((best, spot) => (spot.x * ux + spot.y * uy > best.x * ux + best.y * uy ? spot : best));
}
