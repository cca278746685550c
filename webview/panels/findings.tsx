/** The findings, worst first: what, the cure, the way to the text and to the place along the pedal. */
import type { Source } from '../../src/protocol/messages.ts';
import type { ReportedMark } from '../../src/protocol/report.ts';
import { percentText } from '../charts/figures.ts';
import { isReportComing, toldReport } from '../page/told.ts';
import { goToWorst } from '../page/worst.ts';
import { mend, reveal } from '../send.ts';
import { hovered } from '../state.ts';
import { WORDS } from '../words.ts';
import { Sign } from './icons.tsx';
import { SomeOf } from './someOf.tsx';
import { withCode } from './withCode.tsx';

export function Findings() {
  const marks = toldReport.value?.report.marks ?? [];
  return (
    <section aria-labelledby="findings-title" class={isReportComing.value ? 'late' : undefined} aria-busy={isReportComing.value}>
      <h2 id="findings-title">{WORDS.findings}</h2>
      {marks.length === 0 ? (
        <p class="none">{WORDS.noFindings}</p>
      ) : (
        <SomeOf items={marks} name={WORDS.findingsName} class="findings">
          {(mark, index) => <Finding key={`${mark.code} ${index}`} mark={mark} />}
        </SomeOf>
      )}
    </section>
  );
}

/** What was found at a part, and what only follows there from what was found elsewhere. */
export const marksAt = (name: string): readonly ReportedMark[] =>
  (toldReport.value?.report.marks ?? []).filter(({ part, following }) => part === name || following.some((each) => each.part === name));

/** @param of the text whose places the finding has; that of the picture where absent */
export function Finding({ mark, of }: { readonly mark: ReportedMark; readonly of?: Source }) {
  const part = toldReport.value?.report.parts.find(({ name }) => name === mark.part);
  return (
    <li class={`finding ${mark.severity}`} onPointerEnter={() => (hovered.value = part)} onPointerLeave={() => (hovered.value = undefined)}>
      <Sign name={mark.severity} />
      <div>
        <p>
          <span class="word">{WORDS.severity[mark.severity]}</span>
          {mark.part !== undefined && !mark.message.includes(mark.part) && <span class="part">{` ${mark.part}`}</span>}
          {': '}
          {withCode(mark.message)}
        </p>
        {mark.following.length > 0 && (
          <ul class="plain">
            {mark.following.map(({ message }) => (
              <li key={message}>{withCode(message)}</li>
            ))}
          </ul>
        )}
        {mark.cure !== undefined && <p class="cure">{withCode(WORDS.cure(mark.cure))}</p>}
        <p class="actions">
          <button type="button" class="link" onClick={() => reveal(mark.place, of)}>
            {WORDS.toText}
            <span class="unseen">{`, ${mark.message}`}</span>
          </button>
          {mark.isMendable && (
            <button type="button" class="link" onClick={() => mend(mark.place, of)}>
              {WORDS.toFixes}
              <span class="unseen">{`, ${mark.message}`}</span>
            </button>
          )}
          {mark.worst !== undefined && (
            <button type="button" class="link" onClick={() => goToWorst(mark)}>
              {WORDS.toWorst(percentText(mark.worst))}
              <span class="unseen">{`, ${mark.message}`}</span>
            </button>
          )}
          <span class="code">{mark.code}</span>
        </p>
      </div>
    </li>
  );
}
