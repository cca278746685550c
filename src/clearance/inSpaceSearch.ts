/** The best direction so far between a capsule's core and what stands from one height to another. */
import type { Point3 } from './inSpacePoints.ts';
import type { Figures } from './piece.ts';

export interface Core {
  readonly from: Point3;
  readonly to: Point3;
}

/** A convex polygon, counter-clockwise, or one corner with a radius, from one height to another; mm. */
export interface Post {
  readonly corners: readonly Figures[];
  readonly radius: number;
  readonly low: number;
  readonly high: number;
}

export interface Search {
  readonly core: Core;
  readonly post: Post;
  /** Greatest (min over b of u·b − max over a of u·a) of the directions tried, mm. */
  apart: number;
  /** That direction, from core to post. */
  ux: number;
  uy: number;
  uz: number;
  /** Nearest points, where they are known. */
  hasPoints: boolean;
  readonly onCore: Point3;
  readonly onPost: Point3;
}

export function startSearch(core: Core, post: Post): Search {
  const point = (): Point3 => ({ x: 0, y: 0, z: 0 });
  return { core, post, apart: -Infinity, ux: 1, uy: 0, uz: 0, hasPoints: false, onCore: point(), onPost: point() };
}

/** Tries a direction of any length but none. */
export function tryAlong(search: Search, x: number, y: number, z: number): void {
  const size = Math.hypot(x, y, z);
  if (!(size > 0) || size === Infinity) return;
  const [ux, uy, uz] = [x / size, y / size, z / size];
  const apart = apartAlong(search, ux, uy, uz);
  if (!(apart > search.apart)) return;
  search.apart = apart;
  search.ux = ux;
  search.uy = uy;
  search.uz = uz;
}

/** min over b of u·b − max over a of u·a, for a u of length 1. */
export function apartAlong({ core: { from, to }, post }: Pick<Search, 'core' | 'post'>, ux: number, uy: number, uz: number): number {
  let least = Infinity;
  for (const corner of post.corners) least = Math.min(least, ux * corner[0] + uy * corner[1]);
  least += uz * (uz > 0 ? post.low : post.high);
  if (post.corners.length === 1) least -= post.radius * Math.hypot(ux, uy);
  return least - Math.max(ux * from.x + uy * from.y + uz * from.z, ux * to.x + uy * to.y + uz * to.z);
}
