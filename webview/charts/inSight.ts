/** Which charts can be seen: the editor works these out first. */
import type { RefObject } from 'preact';
import { useLayoutEffect } from 'preact/hooks';
import { isChartId } from '../../src/protocol/reportGuards.ts';
import { tellInSight } from '../send.ts';

/**
 * Tells the editor of it from now on, whenever it changes.
 * @param place whose children are charts, each with its name as `data-chart`
 * @param ids of all that are there, in one text: others are looked at when it changes
 */
export function useInSight(place: RefObject<HTMLElement | null>, ids: string): void {
  useLayoutEffect(() => {
    const figures = [...(place.current?.querySelectorAll<HTMLElement>('[data-chart]') ?? [])];
    const seen = new Set<string>();
    const observer = new IntersectionObserver((changes) => {
      for (const { target, isIntersecting } of changes) {
        const id = (target as HTMLElement).dataset.chart ?? '';
        if (isIntersecting) seen.add(id);
        else seen.delete(id);
      }
      tellAnew(seen);
    });
    for (const figure of figures) observer.observe(figure);
    if (figures.length === 0) tellAnew(seen);
    return () => observer.disconnect();
  }, [place, ids]);
}

let told = '';

function tellAnew(seen: ReadonlySet<string>): void {
  const charts = [...seen].filter(isChartId).sort();
  if (charts.join() === told) return;
  told = charts.join();
  tellInSight(charts);
}
