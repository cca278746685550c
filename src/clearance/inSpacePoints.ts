/** Points in space, mm. */
import type { Corner, Turns } from './piece.ts';

export interface Point3 {
  x: number;
  y: number;
  z: number;
}

/** Where a corner stands. */
export function cornerAt({ lever, base, perp, cross }: Corner, turns: Turns, into: Point3): void {
  const c = lever < 0 ? 0 : turns.cosine[lever]!;
  const s = lever < 0 ? 0 : turns.sine[lever]!;
  into.x = base[0] + c * perp[0] + s * cross[0];
  into.y = base[1] + c * perp[1] + s * cross[1];
  into.z = (base[2] ?? 0) + c * (perp[2] ?? 0) + s * (cross[2] ?? 0);
}

/**
 * The two points of two stretches that are nearest to each other (after C. Ericson, "Real-Time Collision Detection", 2005, section 5.1.9, from
 * memory): of the lines, held within both stretches.
 */
export function nearestOfStretches(p: Point3, q: Point3, r: Point3, s: Point3, onOne: Point3, onOther: Point3): void {
  const [dx, dy, dz] = [q.x - p.x, q.y - p.y, q.z - p.z];
  const [ex, ey, ez] = [s.x - r.x, s.y - r.y, s.z - r.z];
  const [wx, wy, wz] = [p.x - r.x, p.y - r.y, p.z - r.z];
  const a = dx * dx + dy * dy + dz * dz;
  const e = ex * ex + ey * ey + ez * ez;
  const f = ex * wx + ey * wy + ez * wz;
  let t = 0;
  let v = 0;
  if (a <= 0) v = e <= 0 ? 0 : within(f / e);
  else {
    const c = dx * wx + dy * wy + dz * wz;
    if (e <= 0) t = within(-c / a);
    else {
      const b = dx * ex + dy * ey + dz * ez;
      const across = a * e - b * b;
      t = across > 0 ? within((b * f - c * e) / across) : 0;
      v = (b * t + f) / e;
      if (v < 0 || v > 1) {
        v = within(v);
        t = within((b * v - c) / a);
      }
    }
  }
  onOne.x = p.x + t * dx;
  onOne.y = p.y + t * dy;
  onOne.z = p.z + t * dz;
  onOther.x = r.x + v * ex;
  onOther.y = r.y + v * ey;
  onOther.z = r.z + v * ez;
}

/** 0 to 1. */
export function within(figure: number): number {
  return figure < 0 ? 0 : figure > 1 ? 1 : figure;
}
