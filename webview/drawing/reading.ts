/** Reading the drawing: what the pointer or the focus is on lights up and tells its dimensions; the arrow keys go from part to part. */
import type { Handle } from '../../src/protocol/picture.ts';
import { hovered, shown } from '../state.ts';
import { handleAsDrawn, placeText } from './drag.ts';
import { describePart } from './describe.ts';
import type { Symbol } from './mark.ts';
import { keyOfPart } from './sheet.ts';
import type { Stage } from './stage.ts';
import type { Tip } from './tip.tsx';
import { DRAWING_WORDS as WORDS } from '../words/drawing.ts';

export interface TipEnds {
  readonly tip: { value: Tip | undefined };
  /** From mm of the paper to px of the drawing. */
  onScreen(x: number, y: number): { readonly x: number; readonly y: number };
  /** While something is in the hand its own note stands. */
  isHolding(): boolean;
}

/** @returns ends it */
export function tipAt(svg: SVGSVGElement, stage: Stage, { tip, onScreen, isHolding }: TipEnds): () => void {
  const tell = (target: EventTarget | null, at: { readonly x: number; readonly y: number } | undefined) => {
    if (isHolding()) return;
    const handle = stage.handles.at(target);
    const symbol = stage.symbolAt(target);
    if (handle !== undefined) {
      const box = (target as Element).getBoundingClientRect();
      const { left, top } = svg.getBoundingClientRect();
      const middle = { x: box.left + box.width / 2 - left, y: box.top + box.height / 2 - top };
      tip.value = { ...middle, title: handle.label, lines: linesOf(handle), note: WORDS.takeHint };
    } else if (symbol?.part !== undefined) {
      tip.value = { ...(at ?? anchorOf(symbol)), ...wordsFor(symbol) };
    } else tip.value = undefined;
    hovered.value = symbol?.part;
  };

  const anchorOf = (symbol: Symbol) => {
    const spot = { x: 0, y: 0 };
    const pose = stage.pose();
    if (pose !== undefined) symbol.anchor(pose, spot);
    return onScreen(spot.x, spot.y);
  };

  const over = (event: PointerEvent) => {
    const { left, top } = svg.getBoundingClientRect();
    tell(event.target, { x: event.clientX - left, y: event.clientY - top });
  };
  const out = () => tell(null, undefined);
  const focus = (event: FocusEvent) => tell(event.target, undefined);
  svg.addEventListener('pointerover', over);
  svg.addEventListener('pointerleave', out);
  svg.addEventListener('focusin', focus);
  svg.addEventListener('focusout', out);
  return () => {
    svg.removeEventListener('pointerover', over);
    svg.removeEventListener('pointerleave', out);
    svg.removeEventListener('focusin', focus);
    svg.removeEventListener('focusout', out);
  };
}

/** Where a handle stands as drawn, and what that follows from. */
export function linesOf(handle: Handle, to = handleAsDrawn(handle)): readonly string[] {
  return handle.lets.length === 0 ? [placeText(to)] : [placeText(to), WORDS.follows(handle.lets)];
}

function wordsFor({ part, note }: Symbol): Omit<Tip, 'x' | 'y'> {
  const now = shown.peek();
  const key = now && keyOfPart(now.picture, part!);
  const reported = now?.report.parts.find((candidate) => keyOfPart(now.picture, candidate) === key);
  return { title: describePart(part!, undefined), lines: reported?.dimensions ?? [], note };
}

const WAYS: Readonly<Record<string, 1 | -1>> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

/** To the next part in load-path order, or the one before. @returns whether the key was one of these */
export function walkParts(key: string, from: EventTarget | null, stage: Stage): boolean {
  const way = WAYS[key];
  if (way === undefined) return false;
  const grips = stage.grips();
  const at = grips.findIndex((grip) => grip === from);
  const next = grips[(at + way + grips.length) % grips.length];
  for (const grip of grips) grip.setAttribute('tabindex', grip === next ? '0' : '-1');
  next?.focus();
  return true;
}
