/**
 * Open area of one butterfly plate, by the elliptical-plate formula with the shadow of its shaft.
 *
 * With D the bore, d the shaft, a = d/D, ψ the angle of the plate from square to the bore and ψ₀ the angle at which it seats:
 *
 *     4A/(πD²) = 1 − x + (2/π) [ a √(1 − s²) + x asin s − a √(1 − a²) − asin a ],   x = cos ψ / cos ψ₀,   s = a/x
 *
 * It holds while cos ψ ≥ a cos ψ₀. Beyond that the shaft hides the plate and the area stays at 1 − (2/π)(a √(1 − a²) + asin a); past
 * 90° it falls again as it rose. At the seat and below it is nothing. With x it changes by
 *
 *     d(4A/(πD²))/dx = −1 + (2/π)(asin s − s √(1 − s²))
 *
 * Exact for a plate that is the ellipse filling the bore at ψ₀, without thickness, on a shaft of constant width right across, seen
 * along the bore. J. B. Heywood, Internal Combustion Engine Fundamentals, 1st edition, equations 7.18 and 7.19, from memory: numbers
 * not read again; the derivative is worked out from it here. m, m² and rad.
 */

/** What is fixed of a plate and its bore. */
export interface PlateShape {
  /** Diameter, m. */
  readonly bore: number;
  /** Diameter, m; 0 where it takes no area away. */
  readonly shaft: number;
  /** Angle from square to the bore at which the plate seats, rad, from 0 to below π/2. */
  readonly seat: number;
}

/** @param angle of the plate from square to the bore, rad @returns m², 0 at or below the seat; NaN for a shape that is none */
export function openArea(shape: PlateShape, angle: number): number {
  const a = shape.shaft / shape.bore;
  const folded = angle > Math.PI / 2 ? Math.PI - angle : angle;
  if (!isShape(shape) || Number.isNaN(angle)) return NaN;
  if (a >= 1 || folded <= shape.seat) return 0;
  const x = Math.cos(folded) / Math.cos(shape.seat);
  if (!(x > a)) return greatestOpenArea(shape);
  // 1 − x without taking two nearly equal numbers from each other: the area at idle is what idles the engine.
  const uncovered = (2 * Math.sin((folded - shape.seat) / 2) * Math.sin((folded + shape.seat) / 2)) / Math.cos(shape.seat);
  const s = a / x;
  const shadow = a * (root(s) - root(a)) + (x * Math.asin(s) - Math.asin(a));
  return Math.max(0, boreArea(shape) * (uncovered + (2 / Math.PI) * shadow));
}

/**
 * dA/dψ, m²/rad: the area's change with the angle, which is also its change with the opening. 0 below the seat and where the shaft
 * hides the plate, negative past 90°. At the seat, and at 90° without a shaft, it is that of opening further.
 */
export function openAreaSlope(shape: PlateShape, angle: number): number {
  const a = shape.shaft / shape.bore;
  const past = angle >= Math.PI / 2;
  const folded = past ? Math.PI - angle : angle;
  if (!isShape(shape) || Number.isNaN(angle)) return NaN;
  if (a >= 1 || folded < shape.seat || (past && folded === shape.seat)) return 0;
  const x = Math.cos(folded) / Math.cos(shape.seat);
  if (!(x > a)) return 0;
  const s = a / x;
  const perX = -1 + (2 / Math.PI) * (Math.asin(s) - s * root(s));
  const xPerAngle = -Math.sin(folded) / Math.cos(shape.seat);
  return (past ? -1 : 1) * boreArea(shape) * perX * xPerAngle;
}

/** The greatest area that the plate can open, m²: from `shadowAngle` on, where the shaft hides it. */
export function greatestOpenArea(shape: PlateShape): number {
  const a = shape.shaft / shape.bore;
  if (!isShape(shape)) return NaN;
  return a >= 1 ? 0 : boreArea(shape) * (1 - (2 / Math.PI) * (a * root(a) + Math.asin(a)));
}

/** The angle from which the shaft hides the plate, rad: arccos(a cos ψ₀), 90° without a shaft. */
export function shadowAngle(shape: PlateShape): number {
  return Math.acos((shape.shaft / shape.bore) * Math.cos(shape.seat));
}

/** √(1 − s²) */
function root(s: number): number {
  return Math.sqrt((1 - s) * (1 + s));
}

function boreArea({ bore }: PlateShape): number {
  return (Math.PI / 4) * bore * bore;
}

/** A trial value can be anything. */
function isShape({ bore, shaft, seat }: PlateShape): boolean {
  return bore > 0 && shaft >= 0 && seat > -Math.PI / 2 && seat < Math.PI / 2;
}
