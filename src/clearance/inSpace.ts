/**
 * How far a capsule stands from a keep-out that reaches from one height along z to another, or how deep it lies in it. As in the plane
 *
 *     gap = max over u (min over b of u·b − max over a of u·a) − radius of a,   |u| = 1
 *
 * and any u gives a lower bound of it: what is told is that of the best of some u, so that rounding and an iteration that ended early make a gap
 * less than it is, and never greater. Among them is the u of the true gap:
 *
 * - of a polygon that is apart from the capsule's core, that of the nearest of all pairs of an end of the core and the prism, and of the core and
 *   an edge, both in closed form;
 * - of a polygon that the core cuts, of the sides and of the sides' edges across the core (separating axes, exact for convex polyhedra);
 * - of a circle, the one level with its axis, the two along it, and that of the nearest points at the rim, the distance to which is convex along
 *   the core and is searched; of a circle that the core cuts, the best of these is improved by small turns, and the depth may be told a little
 *   greater than it is.
 */
import { cornerAt } from './inSpacePoints.ts';
import { bestOfCut } from './inSpaceCut.ts';
import { nearestOfCylinder, nearestOfPrism } from './inSpaceNearest.ts';
import type { Piece, Turns } from './piece.ts';
import { startSearch, type Core, type Post } from './inSpaceSearch.ts';
import type { Separation } from './separation.ts';

/** @param a one corner or two @param b corners counter-clockwise, or one and a radius @param between two heights, mm */
export function separateInSpace(a: Piece, b: Piece, between: readonly [number, number], turns: Turns, found: Separation): void {
  cornerAt(a.corners[0]!, turns, core.from);
  cornerAt(a.corners[a.corners.length - 1]!, turns, core.to);
  const post: Post = { corners: b.corners.map(({ base }) => base), radius: b.radius, low: between[0], high: between[1] };
  const best = startSearch(core, post);
  if (post.corners.length > 1 ? nearestOfPrism(best) : nearestOfCylinder(best)) bestOfCut(best);
  const { ux, uy, uz } = best;
  found.ux = ux;
  found.uy = uy;
  found.uz = uz;
  found.gap = best.apart - a.radius;
  if (best.hasPoints) {
    const { onCore, onPost } = best;
    place(found.onA, onCore.x + ux * a.radius, onCore.y + uy * a.radius, onCore.z + uz * a.radius);
    place(found.onB, onPost.x, onPost.y, onPost.z);
    return;
  }
  // The end of the core that has gone farthest, and where the least shift would bring it.
  const { from, to } = core;
  const end = ux * (to.x - from.x) + uy * (to.y - from.y) + uz * (to.z - from.z) > 0 ? to : from;
  place(found.onA, end.x + ux * a.radius, end.y + uy * a.radius, end.z + uz * a.radius);
  place(found.onB, found.onA.x + ux * found.gap, found.onA.y + uy * found.gap, found.onA.z + uz * found.gap);
}

const core: Core = { from: { x: 0, y: 0, z: 0 }, to: { x: 0, y: 0, z: 0 } };

function place(into: { x: number; y: number; z: number }, x: number, y: number, z: number): void {
  into.x = x;
  into.y = y;
  into.z = z;
}
