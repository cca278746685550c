/** The card of the part that the reviewer has stepped to: what goes in, what comes out, limits, findings, and what has changed at it. */
import type { ChangedValue } from '../../src/protocol/messages.ts';
import type { ReportedFigure } from '../../src/protocol/report.ts';
import { percentText } from '../charts/figures.ts';
import { isReportComing } from '../page/told.ts';
import { step } from '../send.ts';
import { compared, isStepping, selected, shown } from '../state.ts';
import { WORDS } from '../words.ts';
import { Changes } from './changes.tsx';
import { FigureList } from './figureList.tsx';
import { Finding, marksAt } from './findings.tsx';
import { Sign } from './icons.tsx';
import { select } from './loadPath.tsx';
import { withCode } from './withCode.tsx';

export function StepCard() {
  const report = shown.value?.report;
  const at = selected.value;
  if (!isStepping.value || report === undefined || report.parts.length === 0) return null;
  const index = report.parts.findIndex(({ kind, name }) => kind === at?.kind && name === at.name);
  const part = report.parts[index];
  const go = (way: 1 | -1) => {
    const next = report.parts[index < 0 ? 0 : index + way];
    if (next !== undefined) select(next);
    else step(way);
  };
  return (
    <section aria-labelledby="step-title" class={isReportComing.value ? 'step-card late' : 'step-card'} aria-busy={isReportComing.value}>
      <div class="title-row">
        <h2 id="step-title">{part === undefined ? WORDS.noPart : WORDS.partTitle(part, index + 1, report.parts.length)}</h2>
        <div class="tools">
          <button type="button" class="quiet" disabled={index === 0} onClick={() => go(-1)}>
            <Sign name="previous" />
            {WORDS.previousPart}
          </button>
          <button type="button" class="quiet" disabled={index === report.parts.length - 1} onClick={() => go(1)}>
            {WORDS.nextPart}
            <Sign name="next" />
          </button>
        </div>
      </div>
      {part !== undefined && (
        <>
          <dl class="figures">
            {[
              [WORDS.takes, part.takes],
              [WORDS.gives, isToldBy(part.gives, part.figures) ? '' : part.gives],
            ].map(
              ([label, text]) =>
                text !== '' && (
                  <div key={label}>
                    <dt>{label}</dt>
                    <dd>{text}</dd>
                  </div>
                ),
            )}
          </dl>
          <FigureList figures={part.figures} />
          <Lines title={WORDS.limits} texts={part.limits} />
          <Lines title={WORDS.asWrittenTitle} texts={part.dimensions} />
          <FindingsOf name={part.name} />
          <Lines title={WORDS.notChecked} texts={part.notChecked} />
          <ChangesAt name={part.name} />
        </>
      )}
    </section>
  );
}

/** Every figure of the words stands in the list below them: the same twice would only be more to read. */
const isToldBy = (words: string, figures: readonly ReportedFigure[]): boolean => {
  const told = new Set(
    figures.flatMap(({ text, travel }) => [...numbersIn(text), ...(travel === undefined ? [] : numbersIn(percentText(travel)))]),
  );
  const said = numbersIn(words);
  return said.length > 0 && said.every((number) => told.has(number));
};

/** As they are read: `82.0` is 82. */
const numbersIn = (words: string): readonly string[] => (words.match(/\d+(?:\.\d+)?/g) ?? []).map((number) => String(Number(number)));

function Lines({ title, texts }: { readonly title: string; readonly texts: readonly string[] }) {
  if (texts.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      <ul class="plain">
        {texts.map((text) => (
          <li key={text}>{withCode(text)}</li>
        ))}
      </ul>
    </>
  );
}

function FindingsOf({ name }: { readonly name: string }) {
  const marks = marksAt(name);
  return (
    <>
      <h3>{WORDS.findings}</h3>
      {marks.length === 0 ? (
        <p class="none">{WORDS.noFindingsHere}</p>
      ) : (
        <ol class="findings">
          {marks.map((mark, index) => (
            <Finding key={`${mark.code} ${index}`} mark={mark} />
          ))}
        </ol>
      )}
    </>
  );
}

function ChangesAt({ name }: { readonly name: string }) {
  const other = compared.value;
  if (other === undefined) return null;
  const changes = other.changes.filter((change) => isAt(change, name));
  return (
    <>
      <h3>{WORDS.changedAgainst(other.label)}</h3>
      {changes.length === 0 ? <p class="none">{WORDS.nothingChangedHere}</p> : <Changes changes={changes} />}
    </>
  );
}

/** A path leads through the name of its part: `rods.link.length`, `pedal.travel`. */
const isAt = ({ path }: ChangedValue, name: string) => path.split('.').slice(0, 2).includes(name);
