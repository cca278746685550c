/**
 * Distances and depths in the plane by formulas of their own, as a second method beside planck's query and separating axes. Corners in any one
 * unit; a core of one corner is a point, of two a stretch, of more a convex polygon.
 */
export type Point = readonly [number, number];

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]];
const cross = (a: Point, b: Point): number => a[0] * b[1] - a[1] * b[0];
const size = ([x, y]: Point): number => Math.hypot(x, y);

/** From a point to a stretch: to the foot of the perpendicular where that lies on it, else to the nearer end. */
export function pointToStretch(p: Point, a: Point, b: Point): number {
  const along = minus(b, a);
  const length = along[0] ** 2 + along[1] ** 2;
  const share = length === 0 ? 0 : ((p[0] - a[0]) * along[0] + (p[1] - a[1]) * along[1]) / length;
  const held = Math.min(1, Math.max(0, share));
  return size([p[0] - a[0] - held * along[0], p[1] - a[1] - held * along[1]]);
}

/** Zero where they cross; else an end of one is nearest to the other. */
export function stretchToStretch(a: Point, b: Point, c: Point, d: Point): number {
  const sides = [
    cross(minus(b, a), minus(c, a)) * cross(minus(b, a), minus(d, a)),
    cross(minus(d, c), minus(a, c)) * cross(minus(d, c), minus(b, c)),
  ];
  if (sides.every((side) => side < 0)) return 0;
  return Math.min(pointToStretch(a, c, d), pointToStretch(b, c, d), pointToStretch(c, a, b), pointToStretch(d, a, b));
}

/** By even and odd crossings of a ray; of any simple polygon. */
export function isInside([x, y]: Point, corners: readonly Point[]): boolean {
  let inside = false;
  for (const [i, [ax, ay]] of corners.entries()) {
    const [bx, by] = corners[(i + 1) % corners.length]!;
    if (ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay)) inside = !inside;
  }
  return inside;
}

const sidesOf = (corners: readonly Point[]): readonly (readonly [Point, Point])[] =>
  corners.length < 3 ? [[corners[0]!, corners.at(-1)!]] : corners.map((corner, i) => [corner, corners[(i + 1) % corners.length]!] as const);

/** Between two cores, the polygons of any simple form; zero where they overlap. */
export function apart(a: readonly Point[], b: readonly Point[]): number {
  if (a.length > 2 && isInside(b[0]!, a)) return 0;
  if (b.length > 2 && isInside(a[0]!, b)) return 0;
  return Math.min(...sidesOf(a).flatMap(([p, q]) => sidesOf(b).map(([r, s]) => stretchToStretch(p, q, r, s))));
}

/** Counter-clockwise (Andrew's monotone chain). */
export function hullOf(points: readonly Point[]): readonly Point[] {
  const sorted = [...points].sort(([ax, ay], [bx, by]) => ax - bx || ay - by);
  const half = (list: readonly Point[]): Point[] => {
    const chain: Point[] = [];
    for (const point of list) {
      while (chain.length > 1 && cross(minus(chain.at(-1)!, chain.at(-2)!), minus(point, chain.at(-1)!)) <= 0) chain.pop();
      chain.push(point);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half([...sorted].reverse())];
}

/** How far two overlapping convex cores must be shifted to part: from the origin to the edge of the hull of all differences of their corners. */
export function depthOf(a: readonly Point[], b: readonly Point[]): number {
  const hull = hullOf(a.flatMap((p) => b.map((q) => minus(q, p))));
  return hull.length < 3 ? 0 : Math.min(...hull.map((p, i) => pointToStretch([0, 0], p, hull[(i + 1) % hull.length]!)));
}
