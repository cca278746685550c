/** A random linkage whose pins stand by radius and angle, as far as its axes lean, with a comment wherever one may stand. */
import { sketchText, type Sketch } from '../support/sketch.ts';
import { cross, dot, minus, size, square, times, unit } from '../support/vector.ts';

export function polarText(sketch: Sketch): string {
  let text = sketchText(sketch);
  for (const lever of sketch.levers) {
    const u = unit(lever.axis);
    const e1 = unit(square(lever.reference, u));
    const e2 = cross(u, e1);
    for (const [name, at] of Object.entries(lever.arms)) {
      const from = minus(at, lever.pivot);
      const offset = dot(from, u);
      const flat = minus(from, times(u, offset));
      const angle = (Math.atan2(dot(flat, e2), dot(flat, e1)) * 180) / Math.PI;
      const along = Math.abs(offset) < 1e-9 ? '' : `, offset: ${offset.toFixed(9)} mm`;
      const polar = `{radius: ${size(flat).toFixed(9)} mm, angle: ${angle.toFixed(9)} deg${along}}`;
      text = text.replace(new RegExp(`(\\b${name}: )\\{at: \\[[^\\]]*\\]\\}`), `$1${polar}`);
    }
  }
  return commented(text);
}

/** A comment of its own behind each line. */
export function commented(text: string): string {
  return text.replace(/\n/g, commentOf());
}

function commentOf(): () => string {
  let count = 0;
  return () => `  # why ${count++}\n`;
}
