/** Zoom and pan by wheel, pointers and keys: what a person does becomes another viewport. */
import { ARROWS } from './drag.ts';
import type { Fit } from './looks.ts';
import { panned, pinched, wheelFactor, zoomed, ZOOM_STEP, type Size, type Viewport } from './viewport.ts';

export interface Surface {
  viewport(): Viewport;
  size(): Size;
  /** Keeps it in bounds and looks at it. */
  look(viewport: Viewport): void;
  fit(to: Fit): void;
}

/** Pixels of an arrow key. */
const ARROW_PX = 40;

/** A press that moves less than this, px, is a click. */
const CLICK_PX = 4;

/**
 * Listens on the drawing, for as long as it lives.
 *
 * @param click the ground or a part was clicked, without being moved
 * @param clickTwice what is not the ground was clicked twice
 * @returns ends it
 */
export function pointAt(
  svg: SVGSVGElement,
  surface: Surface,
  click: (target: EventTarget | null) => void,
  clickTwice: (target: EventTarget | null) => void,
): () => void {
  const pointers = new Map<number, { x: number; y: number }>();
  let pressed: { readonly x: number; readonly y: number; readonly target: EventTarget | null } | undefined;
  let isMoved = false;
  const at = (event: MouseEvent) => {
    const { left, top } = svg.getBoundingClientRect();
    return { x: event.clientX - left, y: event.clientY - top };
  };

  const wheel = (event: WheelEvent) => {
    event.preventDefault();
    surface.look(zoomed(surface.viewport(), wheelFactor(event), at(event)));
  };

  const down = (event: PointerEvent) => {
    if (event.button !== 0 || event.defaultPrevented) return;
    if (pointers.size === 0) {
      pressed = { ...at(event), target: event.target };
      isMoved = false;
    }
    pointers.set(event.pointerId, at(event));
  };

  const move = (event: PointerEvent) => {
    const before = pointers.get(event.pointerId);
    if (before === undefined) return;
    const now = at(event);
    if (!isMoved && pressed !== undefined && Math.hypot(now.x - pressed.x, now.y - pressed.y) < CLICK_PX) return;
    if (!isMoved) svg.setPointerCapture(event.pointerId);
    isMoved = true;
    const other = [...pointers].find(([id]) => id !== event.pointerId)?.[1];
    pointers.set(event.pointerId, now);
    const viewport = surface.viewport();
    surface.look(other === undefined ? panned(viewport, now.x - before.x, now.y - before.y) : pinched(viewport, before, now, other));
  };

  const up = (event: PointerEvent) => {
    const wasPressed = pointers.delete(event.pointerId);
    if (!wasPressed || pointers.size > 0) return;
    if (!isMoved && event.type === 'pointerup') click(pressed?.target ?? null);
    pressed = undefined;
  };

  const twice = ({ target }: MouseEvent) => (target === svg ? surface.fit('all') : clickTwice(target));

  svg.addEventListener('wheel', wheel, { passive: false });
  svg.addEventListener('pointerdown', down);
  svg.addEventListener('pointermove', move);
  svg.addEventListener('pointerup', up);
  svg.addEventListener('pointercancel', up);
  svg.addEventListener('dblclick', twice);
  return () => {
    svg.removeEventListener('wheel', wheel);
    svg.removeEventListener('pointerdown', down);
    svg.removeEventListener('pointermove', move);
    svg.removeEventListener('pointerup', up);
    svg.removeEventListener('pointercancel', up);
    svg.removeEventListener('dblclick', twice);
  };
}

/** @returns whether the key was one of zoom, fit or pan */
export function lookByKey(key: string, surface: Surface): boolean {
  const { width, height } = surface.size();
  const middle = { x: width / 2, y: height / 2 };
  const arrow = ARROWS[key];
  if (key === '+' || key === '=') surface.look(zoomed(surface.viewport(), ZOOM_STEP, middle));
  else if (key === '-') surface.look(zoomed(surface.viewport(), 1 / ZOOM_STEP, middle));
  else if (key === '0') surface.fit('all');
  else if (key === 'e') surface.fit('engine');
  else if (arrow !== undefined) surface.look(panned(surface.viewport(), -ARROW_PX * arrow.x, -ARROW_PX * arrow.y));
  else return false;
  return true;
}
