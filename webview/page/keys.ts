/**
 * Keys of the page. They are single keys that mean nothing in the editor, which hears them too, and they stand back wherever a control has
 * its own use for them.
 */
import { areKeysShown, isPlaying, snapBack, travel, trial } from '../state.ts';
import { takeBack, tryFigures } from '../send.ts';
import { setTravel } from './play.ts';
import { endSnapBack, playOn } from './snapBack.ts';
import { stepWorst } from './worst.ts';

const SMALL = 0.01;
const LARGE = 0.1;

/** Moves of the pedal that the slider has whenever the focus is on it, as fractions of full travel. */
const MOVES: ReadonlyMap<string, (at: number) => number> = new Map([
  ['ArrowRight', (at) => at + SMALL],
  ['ArrowUp', (at) => at + SMALL],
  ['ArrowLeft', (at) => at - SMALL],
  ['ArrowDown', (at) => at - SMALL],
  ['PageUp', (at) => at + LARGE],
  ['PageDown', (at) => at - LARGE],
  ['Home', () => 0],
  ['End', () => 1],
]);
/** Those of them that would scroll the page, and so move the pedal only where the focus is beside it. */
const SCROLLING = ['ArrowUp', 'ArrowDown', 'PageUp', 'PageDown', 'Home', 'End'];

/** A tenth of a small step, with Shift. */
const FINE = 10;

/** What a key does to the pedal; undefined where it does nothing. */
export function movedBy({ key, shiftKey }: Pick<KeyboardEvent, 'key' | 'shiftKey'>, at: number): number | undefined {
  const to = MOVES.get(key)?.(at);
  if (to === undefined) return undefined;
  const isSmall = Math.abs(Math.abs(to - at) - SMALL) < 1e-9;
  // Full hundredths, so that a hundred steps end where they should.
  return shiftKey && isSmall ? Math.round((at + (to - at) / FINE) * 1000) / 1000 : Math.round(to * 1000) / 1000;
}

const TYPED_IN = 'input:not([type=range]), select, textarea, [contenteditable]';

/** What the editor’s own keys for it mean, on either keyboard; undefined for any other. */
export function undoneBy({ key, ctrlKey, metaKey, shiftKey }: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey'>) {
  if (ctrlKey === metaKey) return undefined;
  if (key.toLowerCase() === 'z') return shiftKey ? 'redo' : 'undo';
  return key === 'y' && ctrlKey && !shiftKey ? 'redo' : undefined;
}

/** Listens on the whole page. */
export function listenToKeys(): void {
  document.addEventListener('keydown', (event) => {
    if (event.defaultPrevented || event.altKey) return;
    const target = event.target instanceof Element ? event.target : document.body;
    if (target.closest('dialog') !== null) return;
    const way = undoneBy(event);
    // Of what is typed in a box the box has its own.
    if (way !== undefined && target.closest(TYPED_IN) === null) {
      event.preventDefault();
      takeBack(way);
      return;
    }
    if (event.ctrlKey || event.metaKey) return;
    if (actOn(event, target)) event.preventDefault();
  });
}

/** @returns whether the key was used */
function actOn(event: KeyboardEvent, target: Element): boolean {
  if (event.key === 'Escape' && snapBack.value !== undefined) {
    endSnapBack();
    return true;
  }
  if (event.key === 'Escape' && trial.value.length > 0) {
    tryFigures([]);
    return true;
  }
  if (target.closest(TYPED_IN) !== null) return false;
  switch (event.key) {
    case ' ':
      if (target.closest('button, summary, a') !== null) return false;
      if (target.closest('.snap-bar') !== null) {
        playOn();
        return true;
      }
      isPlaying.value = !isPlaying.value;
      return true;
    case '.':
      stepWorst(1);
      return true;
    case ',':
      stepWorst(-1);
      return true;
    case '?':
      areKeysShown.value = true;
      return true;
  }
  if (target.closest('input[type=range]') !== null) return false;
  if (SCROLLING.includes(event.key) && target.closest('.stage') === null) return false;
  const to = movedBy(event, travel.value);
  if (to === undefined) return false;
  setTravel(to);
  return true;
}
