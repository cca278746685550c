/** What the page stands in: whether motion is welcome there, and whether anyone can see it. */
import { isMotionReduced, isPlaying, isSnapPlaying } from '../state.ts';

/** Class that the editor puts on the body where a person has asked it for less motion. */
const LESS_MOTION = 'vscode-reduce-motion';

/** Follows the editor's setting and the system's, and stops playing where nobody sees it. */
export function watchSurroundings(): void {
  const system = matchMedia('(prefers-reduced-motion: reduce)');
  const look = () => void (isMotionReduced.value = system.matches || document.body.classList.contains(LESS_MOTION));
  look();
  system.addEventListener('change', look);
  new MutationObserver(look).observe(document.body, { attributeFilter: ['class'] });
  document.addEventListener('visibilitychange', () => {
    if (!document.hidden) return;
    isPlaying.value = false;
    isSnapPlaying.value = false;
  });
}
