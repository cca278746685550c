/**
 * A polygon as convex pieces: triangles by ear clipping (earcut), then neighbours put together across a diagonal wherever what comes of it
 * is convex and not too large (after S. Hertel and K. Mehlhorn, "Fast triangulation of simple polygons", FCT 1983: at most four times as
 * many pieces as are needed, where their size is not limited).
 */
import earcut from 'earcut';
import { doubleArea, turn, withoutNeedless, type Corner } from './polygon.ts';

/**
 * Convex pieces that cover the polygon and do not overlap, each counter-clockwise; undefined where rounding keeps them from covering it.
 * @param corners that `faultOf` finds nothing wrong with
 * @param most corners that a piece may have, 3 at least
 */
export function convexPieces(corners: readonly Corner[], most: number): readonly (readonly Corner[])[] | undefined {
  const needed = withoutNeedless(corners);
  const around = doubleArea(needed) < 0 ? needed.toReversed() : needed;
  if (around.length <= most && isConvex(around)) return [around];
  const cornersOf = (piece: readonly number[]): readonly Corner[] => piece.map((i) => around[i]!);
  const pieces = joinAcross(triangles(around), (piece) => piece.length <= most && isConvex(cornersOf(piece))).map(cornersOf);
  const covered = pieces.reduce((sum, piece) => sum + doubleArea(piece), 0);
  const whole = doubleArea(around);
  return Math.abs(covered - whole) <= COVERED * whole ? pieces : undefined;
}

/** Of the area. */
const COVERED = 1e-9;

/** Corner numbers, counter-clockwise; slivers without an area left out. */
function triangles(corners: readonly Corner[]): readonly (readonly number[])[] {
  const indices = earcut(corners.flat());
  return Array.from({ length: indices.length / 3 }, (_, i) => {
    const [a = 0, b = 0, c = 0] = indices.slice(3 * i, 3 * i + 3);
    return turn(corners[a]!, corners[b]!, corners[c]!) < 0 ? [a, c, b] : [a, b, c];
  }).filter(([a, b, c]) => turn(corners[a!]!, corners[b!]!, corners[c!]!) > 0);
}

/** Each diagonal is tried once: what is not convex without it does not become so later. */
function joinAcross(parts: readonly (readonly number[])[], holds: (joined: readonly number[]) => boolean): readonly (readonly number[])[] {
  const pieces: { corners: readonly number[] }[] = parts.map((corners) => ({ corners }));
  const owner = pieces.slice();
  const sides = new Map<string, number>();
  for (const [i, { corners }] of pieces.entries())
    corners.forEach((from, k) => sides.set(`${from} ${corners[(k + 1) % corners.length]!}`, i));
  for (const [i, part] of parts.entries()) {
    for (const [k, from] of part.entries()) {
      const to = part[(k + 1) % part.length]!;
      const j = sides.get(`${to} ${from}`);
      if (j === undefined || j < i) continue;
      const [one, other] = [owner[i]!, owner[j]!];
      if (one === other) continue;
      const joined = join(one.corners, other.corners, from, to);
      if (joined === undefined || !holds(joined)) continue;
      one.corners = joined;
      for (let at = 0; at < owner.length; at++) if (owner[at] === other) owner[at] = one;
    }
  }
  return [...new Set(owner)].map(({ corners }) => corners);
}

/** Around both, which have the side between two corners in common. */
function join(one: readonly number[], other: readonly number[], from: number, to: number): readonly number[] | undefined {
  const i = one.findIndex((at, k) => at === from && one[(k + 1) % one.length] === to);
  const j = other.findIndex((at, k) => at === to && other[(k + 1) % other.length] === from);
  if (i < 0 || j < 0) return undefined;
  const rest = (list: readonly number[], start: number) =>
    Array.from({ length: list.length - 2 }, (_, k) => list[(start + k) % list.length]!);
  return [to, ...rest(one, i + 2), from, ...rest(other, j + 2)];
}

/** Counter-clockwise, and nowhere turning clockwise. */
export function isConvex(corners: readonly Corner[]): boolean {
  if (corners.length < 3) return false;
  let winding = 0;
  for (let i = 0; i < corners.length; i++) {
    const a = corners[i]!;
    const b = corners[(i + 1) % corners.length]!;
    const c = corners[(i + 2) % corners.length]!;
    const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], c[0] - b[0], c[1] - b[1]];
    const sine = ux * vy - uy * vx;
    if (sine < 0) return false;
    winding += Math.atan2(sine, ux * vx + uy * vy);
  }
  // Once around: a star turns the same way at each corner, too.
  return winding < 3 * Math.PI;
}
