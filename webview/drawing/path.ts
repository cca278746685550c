/** Texts of SVG paths, in millimetres of the paper. */
import type { Spot } from './projection.ts';

/** To a thousandth of a millimetre: below what is cut, and short. */
export const figure = (value: number): number => Math.round(value * 1000) / 1000;

export const move = (x: number, y: number): string => `M${figure(x)} ${figure(y)}`;
export const line = (x: number, y: number): string => `L${figure(x)} ${figure(y)}`;

export const segment = (x1: number, y1: number, x2: number, y2: number): string => move(x1, y1) + line(x2, y2);

/** Empty where there is no spot. */
export function polyline(spots: readonly Spot[], isClosed = false): string {
  const text = spots.map(({ x, y }, i) => (i === 0 ? move(x, y) : line(x, y))).join('');
  return isClosed && text !== '' ? `${text}Z` : text;
}

/** A whole circle. */
export function ring(x: number, y: number, radius: number): string {
  const r = figure(radius);
  return `${move(x - radius, y)}A${r} ${r} 0 1 1 ${figure(x + radius)} ${figure(y)}A${r} ${r} 0 1 1 ${figure(x - radius)} ${figure(y)}Z`;
}

/** A bar with round ends about a line, `half` as wide to either side; a circle where the line has no length. */
export function bar(x1: number, y1: number, x2: number, y2: number, half: number): string {
  const length = Math.hypot(x2 - x1, y2 - y1);
  if (length < 1e-6) return ring(x1, y1, half);
  const nx = (-(y2 - y1) / length) * half;
  const ny = ((x2 - x1) / length) * half;
  const arc = `A${figure(half)} ${figure(half)} 0 0 0 `;
  return (
    `${segment(x1 + nx, y1 + ny, x2 + nx, y2 + ny)}${arc}${figure(x2 - nx)} ${figure(y2 - ny)}` +
    `${line(x1 - nx, y1 - ny)}${arc}${figure(x1 + nx)} ${figure(y1 + ny)}Z`
  );
}

/** Short strokes that say solid ground, on the side to which `down` points from the line; all in mm. */
export function hatch(x: number, y: number, along: Spot, down: Spot, length: number, pitch: number, stroke: number): string {
  const count = Math.max(2, Math.floor(length / pitch));
  let text = '';
  for (let i = 0; i < count; i++) {
    const from = -length / 2 + (length / count) * (i + 0.75);
    const x0 = x + along.x * from;
    const y0 = y + along.y * from;
    text += segment(x0, y0, x0 + (down.x - along.x * 0.8) * stroke, y0 + (down.y - along.y * 0.8) * stroke);
  }
  return text;
}
