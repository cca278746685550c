/** Handles under the pointer and under the keys (Enter takes one, arrows move it): what a hand does, told to the mover. */
import type { Handle } from '../../src/protocol/picture.ts';
import { arrowStep, spotOfHandle } from './drag.ts';
import type { Mover } from './moving.ts';
import type { Spot } from './projection.ts';
import type { Stage } from './stage.ts';
import { isPinPlace } from './turning.ts';

export interface Holding {
  /** @returns whether the key took, moved, wrote or dropped a handle, or went to another */
  key(event: KeyboardEvent): boolean;
  end(): void;
}

/** To the next handle, or to the one before. */
const WALK: Readonly<Record<string, 1 | -1>> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

/** @param pause called when something is taken in hand: playing must stop */
export function holdHandles(svg: SVGSVGElement, stage: Stage, mover: Mover, pause: () => void): Holding {
  /** From the pointer to the middle of what it took, mm, and which pointer. */
  let drag: { readonly pointer: number; readonly dx: number; readonly dy: number } | undefined;
  /** What the keys have taken, and where the arrows have got to with it, mm. */
  let keyed: { readonly path: string; readonly spot: Spot } | undefined;

  const rotationOf = (handle: Handle) => (isPinPlace(handle.at) ? (stage.pose()?.rotation[handle.at.lever] ?? 0) : 0);

  const take = (handle: Handle): Spot | undefined => {
    const sheet = stage.scene()?.sheet;
    if (sheet === undefined) return undefined;
    pause();
    const rotation = rotationOf(handle);
    mover.begin(handle, sheet.picture, sheet.view, rotation);
    return spotOfHandle(sheet.view, handle, rotation);
  };

  /** Of the drawing in the window, px. Asked for once: with each move it would make the browser lay the page out before it paints. */
  let corner: { readonly left: number; readonly top: number } | undefined;
  const forgetCorner = () => (corner = undefined);
  const onPaperAt = (event: PointerEvent): Spot => {
    corner ??= svg.getBoundingClientRect();
    const { scale, x, y } = stage.viewport();
    return { x: (event.clientX - corner.left - x) / scale, y: (event.clientY - corner.top - y) / scale };
  };

  const down = (event: PointerEvent) => {
    if (event.button !== 0 || drag !== undefined) return;
    const handle = stage.handles.at(event.target);
    if (handle === undefined) return;
    settle();
    const spot = take(handle);
    if (spot === undefined) return;
    event.preventDefault();
    stage.handles.focus(handle.path);
    forgetCorner();
    const at = onPaperAt(event);
    drag = { pointer: event.pointerId, dx: spot.x - at.x, dy: spot.y - at.y };
    svg.setPointerCapture(event.pointerId);
  };

  const move = (event: PointerEvent) => {
    if (event.pointerId !== drag?.pointer) return;
    const at = onPaperAt(event);
    mover.moveTo({ x: at.x + drag.dx, y: at.y + drag.dy }, event.altKey);
  };

  const up = (event: PointerEvent) => {
    if (event.pointerId !== drag?.pointer) return;
    drag = undefined;
    if (event.type === 'pointerup') mover.finish();
    else mover.drop();
  };

  /** What the keys have moved is written, and let go. */
  const settle = () => {
    if (keyed === undefined) return;
    keyed = undefined;
    mover.finish();
  };

  const key = (event: KeyboardEvent): boolean => {
    if (event.key === 'Escape' && mover.held() !== undefined) {
      keyed = undefined;
      drag = undefined;
      mover.drop();
      return true;
    }
    const handle = stage.handles.at(event.target);
    if (handle === undefined || drag !== undefined) return false;
    if (event.key === 'Enter' || event.key === ' ') {
      // A key that is held down says the same again.
      if (event.repeat) return true;
      if (keyed !== undefined) settle();
      else {
        const spot = take(handle);
        if (spot !== undefined) keyed = { path: handle.path, spot };
      }
      return true;
    }
    const step = arrowStep(event.key, event);
    if (step === undefined) return false;
    if (keyed?.path !== handle.path) {
      if (event.altKey) return false;
      stage.handles.walk(handle, WALK[event.key]!);
      return true;
    }
    keyed = { ...keyed, spot: { x: keyed.spot.x + step.x, y: keyed.spot.y + step.y } };
    mover.moveTo(keyed.spot, event.altKey);
    return true;
  };

  svg.addEventListener('pointerdown', down);
  svg.addEventListener('pointermove', move);
  svg.addEventListener('pointerup', up);
  svg.addEventListener('pointercancel', up);
  svg.addEventListener('focusout', settle);
  window.addEventListener('resize', forgetCorner);
  window.addEventListener('scroll', forgetCorner, { capture: true, passive: true });
  return {
    key,
    end: () => {
      settle();
      window.removeEventListener('resize', forgetCorner);
      window.removeEventListener('scroll', forgetCorner, { capture: true });
      svg.removeEventListener('pointerdown', down);
      svg.removeEventListener('pointermove', move);
      svg.removeEventListener('pointerup', up);
      svg.removeEventListener('pointercancel', up);
      svg.removeEventListener('focusout', settle);
    },
  };
}
