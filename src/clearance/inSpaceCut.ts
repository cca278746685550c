/** The least shift that parts a capsule's core from what it cuts. */
import { tryAlong, type Search } from './inSpaceSearch.ts';

/** Leaves the best direction in the search. */
export function bestOfCut(search: Search): void {
  const { core, post } = search;
  const { from, to } = core;
  const [dx, dy, dz] = [to.x - from.x, to.y - from.y, to.z - from.z];
  const bothWays = (x: number, y: number, z: number): void => {
    tryAlong(search, x, y, z);
    tryAlong(search, -x, -y, -z);
  };
  bothWays(0, 0, 1);
  // Across the core and an edge along z; for a core along z any level direction.
  bothWays(dy, -dx, 0);
  if (post.corners.length === 1) {
    bothWays(1, 0, 0);
    improve(search);
    return;
  }
  for (let i = 0; i < post.corners.length; i++) {
    const [ax, ay] = post.corners[i]!;
    const [bx, by] = post.corners[(i + 1) % post.corners.length]!;
    const [ex, ey] = [bx - ax, by - ay];
    tryAlong(search, -ey, ex, 0);
    // Across the core and a level edge.
    bothWays(-dz * ey, dz * ex, dx * ey - dy * ex);
  }
}

/** Turns the direction by less and less as long as that is better. */
function improve(search: Search): void {
  for (let step = FIRST; step > LAST;) {
    const { ux, uy, uz, apart } = search;
    // Two directions square to it and to each other.
    const [px, py, pz] = Math.abs(uz) < 0.9 ? [uy, -ux, 0] : [0, uz, -uy];
    const size = Math.hypot(px, py, pz);
    const [ax, ay, az] = [px / size, py / size, pz / size];
    const [bx, by, bz] = [uy * az - uz * ay, uz * ax - ux * az, ux * ay - uy * ax];
    for (const [a, b] of AROUND) {
      tryAlong(search, ux + step * (a * ax + b * bx), uy + step * (a * ay + b * by), uz + step * (a * az + b * bz));
    }
    if (!(search.apart > apart)) step /= 2;
  }
}

/** rad, about. */
const FIRST = 0.3;
const LAST = 1e-7;
const AROUND: readonly (readonly [number, number])[] = Array.from({ length: 8 }, (_, i) => [
  Math.cos((i * Math.PI) / 4),
  Math.sin((i * Math.PI) / 4),
]);
