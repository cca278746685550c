/** Figures worth knowing, and what was not checked. */
import { shown } from '../state.ts';
import { WORDS } from '../words.ts';
import { FigureList } from './figureList.tsx';

export function Facts() {
  const facts = shown.value?.report.facts ?? [];
  if (facts.length === 0) return null;
  return (
    <section aria-labelledby="facts-title">
      <h2 id="facts-title">{WORDS.facts}</h2>
      <FigureList figures={facts} />
    </section>
  );
}

export function NotChecked() {
  const notChecked = shown.value?.report.notChecked ?? [];
  if (notChecked.length === 0) return null;
  return (
    <section aria-labelledby="not-checked-title">
      <h2 id="not-checked-title">{WORDS.notChecked}</h2>
      <ul class="plain">
        {notChecked.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </section>
  );
}
