/** Scrolls to what a person has asked for and what appears elsewhere on the page: the card of a part, a study, the comparison as it begins. */
import { effect } from '@preact/signals';
import { compared, isStepping, selected, studyToShow } from '../state.ts';

export function bringIntoView(): void {
  effect(() => {
    if (!isStepping.value || selected.value === undefined) return;
    // In one column the card stands right under the drawing, which then is as high as leaves both in sight.
    if (matchMedia('(width < 800px)').matches)
      requestAnimationFrame(() => document.querySelector('.page')?.scrollIntoView({ block: 'start' }));
    else scrollTo('step-title');
  });
  effect(() => {
    if (studyToShow.value !== undefined) scrollTo(`study-${studyToShow.value.kind}`);
  });
  let wasComparing = compared.peek() !== undefined;
  effect(() => {
    const isComparing = compared.value !== undefined;
    if (isComparing && !wasComparing) scrollTo('compare-title');
    wasComparing = isComparing;
  });
}

/** Once it is there; no further than it must, so that the drawing stays where it can. */
function scrollTo(id: string): void {
  requestAnimationFrame(() => document.getElementById(id)?.scrollIntoView({ block: 'nearest' }));
}
