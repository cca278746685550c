/** Which part of the paper is on the screen: zoom, pan and fit as plain arithmetic. */
import type { Box } from './extent.ts';

/** A place of the paper, mm, is on the screen at (scale · x + x, scale · y + y), CSS pixels. */
export interface Viewport {
  /** Pixels a millimetre. */
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

/** CSS pixels. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * All of the drawing, in the middle, with room around it for symbols and names, and below for the scale and the buttons.
 *
 * @param lift how much higher the scale stands than it would without the buttons under it, px
 */
export function fitted(box: Box, { width, height }: Size, lift = 0): Viewport {
  const side = Math.min(SIDE_PX, width / 8);
  const above = Math.min(ABOVE_PX, height / 10);
  const below = Math.min(BELOW_PX + lift, height / 4);
  const across = Math.max(box.right - box.left, SMALLEST_MM);
  const down = Math.max(box.bottom - box.top, SMALLEST_MM);
  const scale = Math.max(Math.min((width - 2 * side) / across, (height - above - below) / down), 1e-6);
  const middle = (height + above - below) / 2;
  return { scale, x: width / 2 - (scale * (box.left + box.right)) / 2, y: middle - (scale * (box.top + box.bottom)) / 2 };
}

const SIDE_PX = 40;
const ABOVE_PX = 28;
const BELOW_PX = 56;
/** Less than this is not blown up to the whole window. */
const SMALLEST_MM = 20;

/** How heavy lines and symbols are, as a share of what they are in a large window: in a small one they would run into each other. */
export const weightIn = ({ width, height }: Size): number => Math.min(1, Math.max(LIGHTEST, Math.min(width, 1.5 * height) / LARGE_PX));

const LARGE_PX = 560;
const LIGHTEST = 0.6;

/** What is under the pointer stays under it. */
export function zoomed(viewport: Viewport, factor: number, at: Pixel): Viewport {
  return {
    scale: viewport.scale * factor,
    x: at.x - factor * (at.x - viewport.x),
    y: at.y - factor * (at.y - viewport.y),
  };
}

export const panned = (viewport: Viewport, dx: number, dy: number): Viewport => ({ ...viewport, x: viewport.x + dx, y: viewport.y + dy });

/** Two fingers, one of which goes from `was` to `is` while the other stays at `other`, px: both keep what is under them, as far as can be. */
export function pinched(viewport: Viewport, was: Pixel, is: Pixel, other: Pixel): Viewport {
  const before = Math.hypot(was.x - other.x, was.y - other.y);
  const now = Math.hypot(is.x - other.x, is.y - other.y);
  const shifted = panned(viewport, (is.x - was.x) / 2, (is.y - was.y) / 2);
  return before > 0 && now > 0 ? zoomed(shifted, now / before, { x: (is.x + other.x) / 2, y: (is.y + other.y) / 2 }) : shifted;
}

/** A place on the screen. */
export interface Pixel {
  readonly x: number;
  readonly y: number;
}

/** The middle stays in the middle. */
export const resized = (viewport: Viewport, was: Size, is: Size): Viewport =>
  panned(viewport, (is.width - was.width) / 2, (is.height - was.height) / 2);

/** Neither so far in or out that nothing can be recognised, nor so far away that nothing of the drawing is left on the screen. */
export function kept(viewport: Viewport, box: Box, size: Size): Viewport {
  const fit = fitted(box, size).scale;
  const scale = Math.min(Math.max(viewport.scale, fit * LEAST), Math.max(fit * GREATEST, MOST_PX_PER_MM));
  const centre = { x: size.width / 2, y: size.height / 2 };
  const { x, y } = scale === viewport.scale ? viewport : zoomed(viewport, scale / viewport.scale, centre);
  const within = (at: number, low: number, high: number, room: number) =>
    Math.min(Math.max(at, KEPT_PX - scale * high), room - KEPT_PX - scale * low);
  return { scale, x: within(x, box.left, box.right, size.width), y: within(y, box.top, box.bottom, size.height) };
}

/** Of the scale at which all is seen. */
const LEAST = 0.2;
const GREATEST = 100;
/** A hundredth of a millimetre, the finest that is written, is then two pixels. */
const MOST_PX_PER_MM = 200;
/** So much of the drawing stays on the screen, px. */
const KEPT_PX = 30;

/** Factor of one step of the keys and buttons. */
export const ZOOM_STEP = 1.25;

/** Factor of a turn of the wheel; a pinch on a pad comes as a wheel with the control key, in finer steps. */
export function wheelFactor(event: { readonly deltaY: number; readonly deltaMode: number; readonly ctrlKey: boolean }): number {
  const pixels = event.deltaY * (event.deltaMode === 1 ? 16 : event.deltaMode === 2 ? 400 : 1);
  return Math.exp(-Math.min(Math.max(pixels, -240), 240) * (event.ctrlKey ? 0.01 : 0.0015));
}
