/** The load path from the foot on: a click selects a part and shows it in the text, hovering lights it up. */
import type { ReportedPart } from '../../src/protocol/report.ts';
import { isReportComing, toldReport } from '../page/told.ts';
import { revealPart } from '../send.ts';
import { hovered, isStepping, selected, shown } from '../state.ts';
import { WORDS } from '../words.ts';
import { marksAt } from './findings.tsx';
import { SomeOf } from './someOf.tsx';

/** Deeper parts stand no further in than this, so that there is room for them. */
const DEEPEST = 6;

export function LoadPath() {
  const parts = toldReport.value?.report.parts ?? [];
  if (parts.length === 0) return null;
  const { value } = selected;
  const isSelected = ({ kind, name }: ReportedPart) => kind === value?.kind && name === value.name;
  return (
    <section aria-labelledby="load-path-title" class={isReportComing.value ? 'late' : undefined} aria-busy={isReportComing.value}>
      <div class="title-row">
        <h2 id="load-path-title">{WORDS.loadPath}</h2>
        <button type="button" class="quiet" aria-expanded={isStepping.value} onClick={toggleStepping}>
          {isStepping.value ? WORDS.stopStepping : WORDS.stepThrough}
        </button>
      </div>
      <SomeOf items={parts} name={WORDS.partsName} class="load-path" includes={isSelected}>
        {(part) => <Part key={`${part.kind} ${part.name}`} part={part} isSelected={isSelected(part)} />}
      </SomeOf>
    </section>
  );
}

function toggleStepping(): void {
  isStepping.value = !isStepping.value;
  if (!isStepping.value || selected.value !== undefined) return;
  const first = shown.value?.report.parts[0];
  if (first !== undefined) select(first);
}

/** Lights a part up and shows it in the text. */
export function select(part: ReportedPart): void {
  selected.value = { kind: part.kind, name: part.name };
  revealPart(part);
}

function Part({ part, isSelected }: { readonly part: ReportedPart; readonly isSelected: boolean }) {
  const enter = () => (hovered.value = part);
  const leave = () => (hovered.value = undefined);
  const marks = marksAt(part.name);
  const [figure] = part.figures;
  return (
    <li class={`depth-${Math.min(DEEPEST, part.depth)}`}>
      <button
        type="button"
        class="part-row"
        aria-current={isSelected ? 'true' : undefined}
        onClick={() => select(part)}
        onPointerEnter={enter}
        onPointerLeave={leave}
        onFocus={enter}
        onBlur={leave}
      >
        <span class="part-name">{part.name}</span>
        <span class="part-kind">{WORDS.kind[part.kind]}</span>
        <span class="part-figure">{figure === undefined ? part.gives : WORDS.figureAt(figure)}</span>
        {marks.length > 0 && <span class="part-marks">{WORDS.findingCount(marks.length)}</span>}
      </button>
    </li>
  );
}
