/** A short index of the page: unseen until the focus comes to it, and read out by screen readers. */
import { effect } from '@preact/signals';
import { useLayoutEffect, useState } from 'preact/hooks';
import { compared, isStepping, studies, trial } from '../state.ts';
import { WORDS } from '../words.ts';
import { toldCharts, toldReport } from './told.ts';

interface Section {
  readonly id: string;
  readonly title: string;
}

export function Sections() {
  const [sections, setSections] = useState<readonly Section[]>([]);
  useLayoutEffect(
    () =>
      effect(() => {
        readAll();
        requestAnimationFrame(() => setSections((before) => unlessSame(before, sectionsNow())));
      }),
    [],
  );
  if (sections.length === 0) return null;
  return (
    <nav class="index unseen" aria-label={WORDS.sections}>
      <ul>
        {sections.map(({ id, title }) => (
          <li key={id}>
            <a href={`#${id}`} onClick={(event) => goTo(event, id)}>
              {title}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}

/** All that a section can come or go with. */
const readAll = () => [toldReport.value, toldCharts.value, compared.value, studies.value, isStepping.value, trial.value.length > 0];

const sectionsNow = (): readonly Section[] =>
  [...document.querySelectorAll<HTMLElement>('.side h2[id]')].map(({ id, textContent }) => ({ id, title: textContent }));

const unlessSame = (before: readonly Section[], now: readonly Section[]): readonly Section[] =>
  JSON.stringify(before) === JSON.stringify(now) ? before : now;

/** The focus goes along, so that the next key goes on from there. */
function goTo(event: Event, id: string): void {
  event.preventDefault();
  const title = document.getElementById(id);
  if (title === null) return;
  title.tabIndex = -1;
  title.scrollIntoView({ block: 'start' });
  title.focus({ preventScroll: true });
}
