/** How far down the page somebody has read: found again when the page comes back. */
import { effect } from '@preact/signals';
import { scrolled, shown } from '../state.ts';

/** A scroll is kept once it rests so long. */
const REST_MS = 150;

/** Goes to where the page was, as soon as it is long enough, unless somebody moves it first; and keeps it from there on. */
export function keepScrolled(): void {
  let wanted = scrolled.peek() > 0 ? scrolled.peek() : undefined;
  const stop = () => (wanted = undefined);
  for (const act of ['wheel', 'pointerdown', 'keydown']) addEventListener(act, stop, { once: true, passive: true, capture: true });
  effect(() => {
    if (shown.value === undefined || wanted === undefined) return;
    const isWhole = shown.value.coming.length === 0;
    requestAnimationFrame(() => {
      if (wanted === undefined) return;
      scrollTo(0, wanted);
      if (isWhole) stop();
    });
  });
  let timer: ReturnType<typeof setTimeout> | undefined;
  addEventListener(
    'scroll',
    () => {
      clearTimeout(timer);
      timer = setTimeout(() => {
        if (wanted === undefined) scrolled.value = Math.round(scrollY);
      }, REST_MS);
    },
    { passive: true },
  );
}
