/** What the file requires, and whether it has it. */
import { percentText } from '../charts/figures.ts';
import { setTravel } from '../page/play.ts';
import { isReportComing, toldReport } from '../page/told.ts';
import { reveal } from '../send.ts';
import { WORDS } from '../words.ts';
import { Sign } from './icons.tsx';
import { SomeOf } from './someOf.tsx';
import { withCode } from './withCode.tsx';

export function Requirements() {
  const requirements = toldReport.value?.report.requirements ?? [];
  if (requirements.length === 0) return null;
  return (
    <section aria-labelledby="requirements-title" class={isReportComing.value ? 'late' : undefined} aria-busy={isReportComing.value}>
      <h2 id="requirements-title">{WORDS.requirements}</h2>
      <SomeOf items={requirements} name={WORDS.requirementsName} class="findings">
        {({ name, outcome, text, place, travel }, index) => (
          <li key={`${name} ${index}`} class={`finding ${outcome}`}>
            <Sign name={outcome} />
            <div>
              <p>
                <span class="word">{WORDS.outcome[outcome]}</span>: {name}
              </p>
              <p class="cure">{withCode(text)}</p>
              <p class="actions">
                <button type="button" class="link" onClick={() => reveal(place)}>
                  {WORDS.toText}
                  <span class="unseen">{`, ${name}`}</span>
                </button>
                {travel !== undefined && (
                  <button type="button" class="link" title={WORDS.setPedal} onClick={() => setTravel(travel)}>
                    {WORDS.toTravel(percentText(travel))}
                    <span class="unseen">{`, ${name}: ${WORDS.setPedal}`}</span>
                  </button>
                )}
              </p>
            </div>
          </li>
        )}
      </SomeOf>
    </section>
  );
}
