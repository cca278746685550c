/** Follows signals without rendering: for what changes with each frame. */
import { effect } from '@preact/signals';
import { useLayoutEffect, useRef } from 'preact/hooks';

/**
 * Runs `follow` once the elements stand, after each rendering, and whenever a signal that it reads has changed: at once, so that all that
 * follows the pedal is drawn in one frame.
 */
export function useFollow(follow: () => void): void {
  const latest = useRef(follow);
  latest.current = follow;
  useLayoutEffect(() => effect(() => latest.current()), []);
  useLayoutEffect(follow);
}
