/**
 * Plane geometry by hand, as second opinion on what the engine says: two circles, law of cosines, rotation matrices. Lengths mm,
 * angles degrees.
 */
export type Point = readonly [number, number];

const RADIAN = 180 / Math.PI;

export const sin = (angle: number): number => Math.sin(angle / RADIAN);
export const cos = (angle: number): number => Math.cos(angle / RADIAN);
export const asin = (ratio: number): number => Math.asin(ratio) * RADIAN;
export const acos = (ratio: number): number => Math.acos(ratio) * RADIAN;
export const radians = (angle: number): number => angle / RADIAN;
export const degrees = (angle: number): number => angle * RADIAN;

export function polar([x, y]: Point, radius: number, angle: number): Point {
  return [x + radius * cos(angle), y + radius * sin(angle)];
}

export function distance(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

/** Acute angle between the lines a–b and c–d. */
export function acuteAngle(a: Point, b: Point, c: Point, d: Point): number {
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
  const [vx, vy] = [d[0] - c[0], d[1] - c[1]];
  return Math.atan2(Math.abs(ux * vy - uy * vx), Math.abs(ux * vx + uy * vy)) * RADIAN;
}

export interface FourBarByHand {
  readonly from: Point;
  readonly driving: number;
  /** Polar angle of the driving arm as drawn. */
  readonly start: number;
  readonly to: Point;
  readonly driven: number;
  readonly end: number;
  /** As drawn where left out. */
  readonly length?: number;
}

export interface FourBarPosition {
  readonly pin: Point;
  readonly other: Point;
  /** Rotation of the driven arm since drawn, −180 … 180. */
  readonly turned: number;
  readonly transmission: number;
  readonly drive: number;
}

/** The position with the driving arm turned by `rotation`; undefined where the two circles do not meet. */
export function fourBarAt(bar: FourBarByHand, rotation: number): FourBarPosition | undefined {
  const { from, to } = bar;
  const drawnPin = polar(from, bar.driving, bar.start);
  const drawnOther = polar(to, bar.driven, bar.end);
  const length = bar.length ?? distance(drawnPin, drawnOther);
  // Which side of the line from the driving pin to the driven pivot the driven pin was drawn on.
  const sideOf = (a: Point, b: Point): number => Math.sign((to[0] - a[0]) * (b[1] - a[1]) - (to[1] - a[1]) * (b[0] - a[0]));
  const pin = polar(from, bar.driving, bar.start + rotation);
  const span = distance(pin, to);
  const along = (span * span + length * length - bar.driven * bar.driven) / (2 * span);
  const square = length * length - along * along;
  if (square < 0) return undefined;
  const height = sideOf(drawnPin, drawnOther) * Math.sqrt(square);
  const [ux, uy] = [(to[0] - pin[0]) / span, (to[1] - pin[1]) / span];
  const other: Point = [pin[0] + along * ux - height * uy, pin[1] + along * uy + height * ux];
  const angle = Math.atan2(other[1] - to[1], other[0] - to[0]) * RADIAN - bar.end;
  return {
    pin,
    other,
    turned: angle - 360 * Math.round(angle / 360),
    transmission: acuteAngle(pin, other, to, other),
    drive: acuteAngle(pin, other, from, pin),
  };
}

/** The outermost of a figure at 20 001 stations; `way` 1 the least, −1 the greatest. */
export function scan(figure: (travel: number) => number, way: 1 | -1): { readonly value: number; readonly travel: number } {
  let best = { value: NaN, travel: NaN };
  for (let i = 0; i <= 20_000; i++) {
    const travel = i / 20_000;
    const value = figure(travel);
    if (!Number.isNaN(value) && !(way * value >= way * best.value)) best = { value, travel };
  }
  return best;
}

/** Root of a figure between two travels by bisection. */
export function bisect(figure: (travel: number) => number, low: number, high: number): number {
  const sign = Math.sign(figure(low));
  let [a, b] = [low, high];
  for (let i = 0; i < 200; i++) {
    const middle = (a + b) / 2;
    if (Math.sign(figure(middle)) === sign) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}
