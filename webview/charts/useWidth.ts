/** The room that charts have. */
import { useSignal } from '@preact/signals';
import type { RefObject } from 'preact';
import { useLayoutEffect } from 'preact/hooks';

/** @returns px, as the place is wide, from now on */
export function useWidth(place: RefObject<HTMLElement | null>): number {
  const width = useSignal(WIDTH_PX);
  useLayoutEffect(() => {
    const element = place.current;
    if (element === null) return;
    const measure = () => (width.value = Math.max(160, Math.floor(element.clientWidth)));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [width, place]);
  return width.value;
}

/** Before the first measure. */
const WIDTH_PX = 480;
