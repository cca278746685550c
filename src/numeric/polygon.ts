/**
 * Polygons in the plane: whether their corners bound an area, and how they split into convex pieces. Corners in order, either way round,
 * each an x and a y in any one unit; the last side leads back to the first corner.
 */

export type Corner = readonly [number, number];

/** A polygon with more is not looked at: it is none that a person typed, and looking for crossed sides takes the square of their number. */
export const MOST_CORNERS = 400;

/** Twice the area; positive where the corners go counter-clockwise. */
export function doubleArea(corners: readonly Corner[]): number {
  const [ox, oy] = corners[0] ?? [0, 0];
  let sum = 0;
  for (let i = 0; i < corners.length; i++) {
    const [ax, ay] = corners[i]!;
    const [bx, by] = corners[(i + 1) % corners.length]!;
    // About a corner of its own: far from the origin little is lost to rounding.
    sum += (ax - ox) * (by - oy) - (bx - ox) * (ay - oy);
  }
  return sum;
}

/** Without corners that repeat the one before or lie on the straight line between their neighbours. */
export function withoutNeedless(corners: readonly Corner[]): readonly Corner[] {
  let left = corners.filter((corner, i) => !isSame(corner, corners[(i + corners.length - 1) % corners.length]!));
  for (;;) {
    const kept = left.filter((corner, i) => !isBetween(left[(i + left.length - 1) % left.length]!, corner, left[(i + 1) % left.length]!));
    if (kept.length === left.length || kept.length < 3) return kept.length < 3 ? left : kept;
    left = kept;
  }
}

/** Why corners bound no area that a thing can have. */
export type PolygonFault =
  | { readonly kind: 'flat' }
  /** Numbers of the corners, from 0, at which two sides begin that cross or touch each other. */
  | { readonly kind: 'crossing'; readonly first: number; readonly second: number };

/** Undefined where the corners go once around an area. Corners that stand twice in a row are let pass. */
export function faultOf(corners: readonly Corner[]): PolygonFault | undefined {
  const numbered = corners.map((corner, i) => ({ corner, i }));
  const all = numbered.filter(({ corner }, i) => !isSame(corner, corners[(i + corners.length - 1) % corners.length]!));
  const extent = extentOf(corners);
  if (all.length < 3 || Math.abs(doubleArea(corners)) <= FLAT * extent * extent) {
    // A bow tie of two equal halves is crossed, whatever its area comes to.
    const crossing = all.length < 4 ? undefined : crossingOf(all);
    return crossing ?? { kind: 'flat' };
  }
  return crossingOf(all);
}

function crossingOf(all: readonly { readonly corner: Corner; readonly i: number }[]): PolygonFault | undefined {
  const count = all.length;
  for (let i = 0; i < count; i++) {
    const a = all[i]!.corner;
    const b = all[(i + 1) % count]!.corner;
    // A side that turns straight back lies on the one before.
    if (turnsBack(a, b, all[(i + 2) % count]!.corner)) return { kind: 'crossing', first: all[i]!.i, second: all[(i + 1) % count]!.i };
    for (let j = i + 2; j < count; j++) {
      if (i === 0 && j === count - 1) continue;
      if (meet(a, b, all[j]!.corner, all[(j + 1) % count]!.corner)) return { kind: 'crossing', first: all[i]!.i, second: all[j]!.i };
    }
  }
  return undefined;
}

function extentOf(corners: readonly Corner[]): number {
  const across = (axis: 0 | 1): number => {
    let least = Infinity;
    let most = -Infinity;
    for (const corner of corners) {
      least = Math.min(least, corner[axis]);
      most = Math.max(most, corner[axis]);
    }
    return most - least;
  };
  return Math.max(across(0), across(1));
}

/** Of the square of the extent: a thousandth of a millimetre thick at a length of a kilometre is rounding. */
const FLAT = 1e-9;

const isSame = (a: Corner, b: Corner): boolean => a[0] === b[0] && a[1] === b[1];

/** Twice the area of a triangle, positive where it goes counter-clockwise. */
export function turn(a: Corner, b: Corner, c: Corner): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
}

/** Whether b lies on the line from a on to c, beyond neither. */
function isBetween(a: Corner, b: Corner, c: Corner): boolean {
  const along = (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]);
  return along >= 0 && isStraight(a, b, c);
}

function isStraight(a: Corner, b: Corner, c: Corner): boolean {
  const one = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const other = Math.hypot(c[0] - b[0], c[1] - b[1]);
  return Math.abs(turn(a, b, c)) <= STRAIGHT * one * other;
}

/** Sine of the angle within which two sides are one. */
const STRAIGHT = 1e-12;

function turnsBack(a: Corner, b: Corner, c: Corner): boolean {
  return (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]) < 0 && isStraight(a, b, c);
}

/** Whether two stretches have a point in common. */
function meet(a: Corner, b: Corner, c: Corner, d: Corner): boolean {
  const [ac, bc] = [turn(c, d, a), turn(c, d, b)];
  const [ca, da] = [turn(a, b, c), turn(a, b, d)];
  if (ac * bc < 0 && ca * da < 0) return true;
  return (ac === 0 && isOn(c, d, a)) || (bc === 0 && isOn(c, d, b)) || (ca === 0 && isOn(a, b, c)) || (da === 0 && isOn(a, b, d));
}

/** Whether a point of the line through a and b lies between them. */
function isOn(a: Corner, b: Corner, at: Corner): boolean {
  return at[0] >= Math.min(a[0], b[0]) && at[0] <= Math.max(a[0], b[0]) && at[1] >= Math.min(a[1], b[1]) && at[1] <= Math.max(a[1], b[1]);
}
