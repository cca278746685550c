/** Figures worth knowing, and what was not checked. */
import { heldFacts } from '../page/follows.ts';
import { isReportComing, toldReport } from '../page/told.ts';
import { shownTrial, written } from '../state.ts';
import { WORDS } from '../words.ts';
import { FigureList } from './figureList.tsx';
import { withCode } from './withCode.tsx';
import { useFirst } from './someOf.tsx';

export function Facts() {
  const now = toldReport.value;
  const held = now === undefined ? { facts: [], isLate: false } : heldFacts(now);
  const { facts } = held;
  const isLate = held.isLate || isReportComing.value;
  const { first, more } = useFirst(facts, WORDS.figuresName);
  if (facts.length === 0) return null;
  return (
    <section aria-labelledby="facts-title" class={isLate ? 'late' : undefined} aria-busy={isLate}>
      <h2 id="facts-title">{WORDS.facts}</h2>
      <FigureList figures={first} before={shownTrial.value.length > 0 ? written.value?.report.facts : undefined} />
      {more}
    </section>
  );
}

export function NotChecked() {
  const notChecked = toldReport.value?.report.notChecked ?? [];
  if (notChecked.length === 0) return null;
  return (
    <section aria-labelledby="not-checked-title">
      <h2 id="not-checked-title">{WORDS.notChecked}</h2>
      <ul class="plain">
        {notChecked.map((text) => (
          <li key={text}>{withCode(text)}</li>
        ))}
      </ul>
    </section>
  );
}
