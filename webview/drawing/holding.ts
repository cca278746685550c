/** Handles under the pointer and under the arrow keys: what a hand does, told to the mover. */
import type { Handle } from '../../src/protocol/picture.ts';
import { arrowStep, spotOfHandle } from './drag.ts';
import type { Mover } from './moving.ts';
import type { Spot } from './projection.ts';
import type { Stage } from './stage.ts';
import { isPinPlace } from './turning.ts';

export interface Holding {
  /** @returns whether the key moved, wrote or dropped a handle */
  key(event: KeyboardEvent): boolean;
  end(): void;
}

/** After the last arrow key the move is written when so much time has passed, ms. */
const PAUSE_MS = 600;

/** @param pause called when something is taken in hand: playing must stop */
export function holdHandles(svg: SVGSVGElement, stage: Stage, mover: Mover, pause: () => void): Holding {
  /** From the pointer to the middle of what it took, mm, and which pointer. */
  let drag: { readonly pointer: number; readonly dx: number; readonly dy: number } | undefined;
  /** Where the arrow keys have got to, mm. */
  let keyed: { path: string; spot: Spot; timer: ReturnType<typeof setTimeout> | undefined } | undefined;

  const rotationOf = (handle: Handle) => (isPinPlace(handle.at) ? (stage.pose()?.rotation[handle.at.lever] ?? 0) : 0);

  const take = (handle: Handle): Spot | undefined => {
    const sheet = stage.scene()?.sheet;
    if (sheet === undefined) return undefined;
    pause();
    const rotation = rotationOf(handle);
    mover.begin(handle, sheet.picture, sheet.view, rotation);
    return spotOfHandle(sheet.view, handle, rotation);
  };

  const onPaperAt = (event: PointerEvent): Spot => {
    const { left, top } = svg.getBoundingClientRect();
    const { scale, x, y } = stage.viewport();
    return { x: (event.clientX - left - x) / scale, y: (event.clientY - top - y) / scale };
  };

  const down = (event: PointerEvent) => {
    if (event.button !== 0 || drag !== undefined) return;
    const handle = stage.handleAt(event.target);
    if (handle === undefined) return;
    settle();
    const spot = take(handle);
    if (spot === undefined) return;
    event.preventDefault();
    (event.target as SVGElement).focus();
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

  /** What the keys have moved is written. */
  const settle = () => {
    if (keyed === undefined) return;
    clearTimeout(keyed.timer);
    keyed = undefined;
    mover.finish();
  };

  const key = (event: KeyboardEvent): boolean => {
    if (event.key === 'Escape' && mover.held() !== undefined) {
      clearTimeout(keyed?.timer);
      keyed = undefined;
      drag = undefined;
      mover.drop();
      return true;
    }
    const handle = stage.handleAt(event.target);
    const step = arrowStep(event.key, event);
    if (handle === undefined || step === undefined || drag !== undefined) return false;
    if (keyed?.path !== handle.path) {
      settle();
      const spot = take(handle);
      if (spot === undefined) return false;
      keyed = { path: handle.path, spot, timer: undefined };
    }
    clearTimeout(keyed.timer);
    keyed.timer = undefined;
    keyed.spot = { x: keyed.spot.x + step.x, y: keyed.spot.y + step.y };
    mover.moveTo(keyed.spot, event.altKey);
    return true;
  };

  const released = (event: KeyboardEvent) => {
    if (keyed === undefined || !event.key.startsWith('Arrow')) return;
    clearTimeout(keyed.timer);
    keyed.timer = setTimeout(settle, PAUSE_MS);
  };

  svg.addEventListener('pointerdown', down);
  svg.addEventListener('pointermove', move);
  svg.addEventListener('pointerup', up);
  svg.addEventListener('pointercancel', up);
  svg.addEventListener('keyup', released);
  svg.addEventListener('focusout', settle);
  return {
    key,
    end: () => {
      settle();
      svg.removeEventListener('pointerdown', down);
      svg.removeEventListener('pointermove', move);
      svg.removeEventListener('pointerup', up);
      svg.removeEventListener('pointercancel', up);
      svg.removeEventListener('keyup', released);
      svg.removeEventListener('focusout', settle);
    },
  };
}
