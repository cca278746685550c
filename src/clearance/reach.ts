/** Whether two bodies can come near each other at all, by circles about what each can reach: most pairs are told apart by that. */
import type { Pair } from './pairs.ts';
import { UNITS, type Corner, type Piece } from './piece.ts';

/** Whether the gap is surely no less than `below`, m, whatever the levers do. */
export function isFar({ pieces }: Pair, below: number): boolean {
  return below < Infinity && pieces.every(([a, b]) => leastApart(a, b) >= UNITS * below);
}

/** No gap of two pieces is less, whatever the levers do; mm. */
export function leastApart(a: Piece, b: Piece): number {
  const [one, other] = [circleOf(a), circleOf(b)];
  return Math.hypot(one.x - other.x, one.y - other.y) - one.radius - other.radius;
}

interface Circle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

const circles = new WeakMap<Piece, Circle>();

/** About the middle between the places that its corners turn about, holding all that the piece can reach. */
function circleOf(piece: Piece): Circle {
  const before = circles.get(piece);
  if (before !== undefined) return before;
  const { corners } = piece;
  const middle = (axis: 0 | 1): number => {
    const places = corners.map(({ base }) => base[axis]);
    return (Math.min(...places) + Math.max(...places)) / 2;
  };
  const [x, y] = [middle(0), middle(1)];
  const reach = (corner: Corner): number =>
    Math.hypot(corner.base[0] - x, corner.base[1] - y) + Math.hypot(corner.perp[0], corner.perp[1], corner.perp[2] ?? 0);
  const circle = { x, y, radius: Math.max(...corners.map(reach)) + piece.radius };
  circles.set(piece, circle);
  return circle;
}
