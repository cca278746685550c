/** Nearest points of a capsule's core and what stands from one height to another. */
import { goldenSection } from '../numeric/goldenSection.ts';
import { nearestOfStretches, within, type Point3 } from './inSpacePoints.ts';
import { tryAlong, type Post, type Search } from './inSpaceSearch.ts';

/** @returns whether the core cuts it, or comes so near that the direction between their points is not to be relied on alone */
export function nearestOfPrism(search: Search): boolean {
  const { core, post } = search;
  if (cuts(search)) return true;
  let least = Infinity;
  const look = (onCore: Point3, onPost: Point3): void => {
    const [x, y, z] = [onPost.x - onCore.x, onPost.y - onCore.y, onPost.z - onCore.z];
    const away = Math.hypot(x, y, z);
    // Of stretches that are nearly parallel the direction is poor where the distance is still good.
    if (away <= least + ALIKE) tryAlong(search, x, y, z);
    if (!(away < least)) return;
    least = away;
    Object.assign(search.onCore, onCore);
    Object.assign(search.onPost, onPost);
  };
  for (const end of [core.from, core.to]) {
    nearestInPrism(post, end, onPost);
    look(end, onPost);
  }
  const { corners, low, high } = post;
  for (let i = 0; i < corners.length; i++) {
    const [ax, ay] = corners[i]!;
    const [bx, by] = corners[(i + 1) % corners.length]!;
    for (const z of [low, high]) {
      nearestOfStretches(core.from, core.to, { x: ax, y: ay, z }, { x: bx, y: by, z }, onCore, onPost);
      look(onCore, onPost);
    }
    nearestOfStretches(core.from, core.to, { x: ax, y: ay, z: low }, { x: ax, y: ay, z: high }, onCore, onPost);
    look(onCore, onPost);
  }
  return byPoints(search, least);
}

/** @returns the same; of a circle from one height to another */
export function nearestOfCylinder(search: Search): boolean {
  const { core, post } = search;
  const { from, to } = core;
  const [dx, dy, dz] = [to.x - from.x, to.y - from.y, to.z - from.z];
  const [cx, cy] = post.corners[0]!;
  const square = dx * dx + dy * dy;
  // Level with the axis, where the core is nearest to it.
  const level = square > 0 ? within(((cx - from.x) * dx + (cy - from.y) * dy) / square) : 0;
  tryAlong(search, cx - (from.x + level * dx), cy - (from.y + level * dy), 0);
  tryAlong(search, 0, 0, 1);
  tryAlong(search, 0, 0, -1);
  const at = (t: number, into: Point3): Point3 => {
    into.x = from.x + t * dx;
    into.y = from.y + t * dy;
    into.z = from.z + t * dz;
    return into;
  };
  const away = (t: number): number => {
    const { x, y, z } = at(t, onCore);
    return Math.hypot(Math.max(0, Math.hypot(x - cx, y - cy) - post.radius), Math.max(0, post.low - z, z - post.high));
  };
  const inner = goldenSection(away, 0, 1, { at: 0.5, value: away(0.5) }, CLOSE).at;
  const t = [0, 1, level].reduce((best, each) => (away(each) <= away(best) ? each : best), inner);
  const least = away(t);
  nearestInCylinder(post, at(t, search.onCore), search.onPost);
  const isCut = byPoints(search, least);
  if (!search.hasPoints || t === 0 || t === 1) return isCut;
  // Within the core the direction is square to it.
  const { onCore: p, onPost: q } = search;
  const part = ((q.x - p.x) * dx + (q.y - p.y) * dy + (q.z - p.z) * dz) / (square + dz * dz);
  tryAlong(search, q.x - p.x - part * dx, q.y - p.y - part * dy, q.z - p.z - part * dz);
  return isCut;
}

/** Of the core. */
const CLOSE = 1e-10;
/** mm; distances that differ by less are taken for one. */
const ALIKE = 1e-9;
/** mm; the direction between points that are nearer is off by the rounding of their places over this. */
const NEAR = 1e-3;

function byPoints(search: Search, least: number): boolean {
  const { onCore: p, onPost: q } = search;
  search.hasPoints = least > 0;
  tryAlong(search, q.x - p.x, q.y - p.y, q.z - p.z);
  return !(least > NEAR);
}

/** Whether the core has a point within the prism: what is left of it behind each of the prism's faces. */
function cuts({ core: { from, to }, post: { corners, low, high } }: Search): boolean {
  let begin = 0;
  let end = 1;
  // Inside where at0 + t (at1 − at0) ≥ 0.
  const cut = (at0: number, at1: number): void => {
    if (at0 < 0 && at1 < 0) end = -1;
    else if (at0 < 0) begin = Math.max(begin, at0 / (at0 - at1));
    else if (at1 < 0) end = Math.min(end, at0 / (at0 - at1));
  };
  cut(from.z - low, to.z - low);
  cut(high - from.z, high - to.z);
  for (let i = 0; i < corners.length; i++) {
    const [ax, ay] = corners[i]!;
    const [bx, by] = corners[(i + 1) % corners.length]!;
    const inside = ({ x, y }: Point3): number => (bx - ax) * (y - ay) - (by - ay) * (x - ax);
    cut(inside(from), inside(to));
  }
  return begin <= end;
}

function nearestInPrism({ corners, low, high }: Post, { x, y, z }: Point3, into: Point3): void {
  let isInside = true;
  let least = Infinity;
  for (let i = 0; i < corners.length; i++) {
    const [ax, ay] = corners[i]!;
    const [bx, by] = corners[(i + 1) % corners.length]!;
    const [ex, ey] = [bx - ax, by - ay];
    if (ex * (y - ay) - ey * (x - ax) < 0) isInside = false;
    const t = within(((x - ax) * ex + (y - ay) * ey) / (ex * ex + ey * ey));
    const away = Math.hypot(x - ax - t * ex, y - ay - t * ey);
    if (!(away < least)) continue;
    least = away;
    into.x = ax + t * ex;
    into.y = ay + t * ey;
  }
  if (isInside) {
    into.x = x;
    into.y = y;
  }
  into.z = Math.min(high, Math.max(low, z));
}

function nearestInCylinder({ corners, radius, low, high }: Post, { x, y, z }: Point3, into: Point3): void {
  const [cx, cy] = corners[0]!;
  const away = Math.hypot(x - cx, y - cy);
  const part = away > radius ? radius / away : 1;
  into.x = cx + part * (x - cx);
  into.y = cy + part * (y - cy);
  into.z = Math.min(high, Math.max(low, z));
}

const onCore: Point3 = { x: 0, y: 0, z: 0 };
const onPost: Point3 = { x: 0, y: 0, z: 0 };
