/** Figures that can be tried before they are written: each with a slider and a number, and what the trial does to the verdict. */
import type { ComponentChild } from 'preact';
import { useRef } from 'preact/hooks';
import type { Change, Trial } from '../../src/protocol/messages.ts';
import type { Dial } from '../../src/protocol/report.ts';
import { figureText, withUnit } from '../charts/figures.ts';
import { isReportComing } from '../page/told.ts';
import { reveal, takeBack, tryFigures, writeFigures } from '../send.ts';
import { dialAtCursor, gone, missing, shown, shownTrial, trial, written, writtenTrial } from '../state.ts';
import { WORDS } from '../words.ts';
import { NumberField } from './numberField.tsx';
import { movedMarks } from './movedMarks.ts';
import { SomeOf } from './someOf.tsx';

export function Dials() {
  // Those of a picture with a trial in it stand around the figures tried.
  const dials = (shownTrial.value.length > 0 ? written.value : shown.value)?.dials ?? [];
  const atCursor = dialAtCursor.value;
  const all = atCursor === undefined || dials.some(({ path }) => path === atCursor.path) ? dials : [atCursor, ...dials];
  const row = useRows();
  if (all.length === 0 && trial.value.length === 0 && writtenTrial.value === undefined) return null;
  return (
    <section aria-labelledby="dials-title">
      <h2 id="dials-title">{WORDS.dials}</h2>
      <p class="hint">{WORDS.dialsHint}</p>
      <SomeOf items={all} name={WORDS.dialsName} class="dials" includes={({ path }) => triedAt(path) !== undefined}>
        {(dial) => row({ dial, tried: triedAt(dial.path), isAtCursor: dial === atCursor })}
      </SomeOf>
      <TrialLine />
    </section>
  );
}

/** A row that is as it was before is the same one, which is not gone through again: with each move of a hand none or one differs. */
function useRows(): (props: RowProps) => ComponentChild {
  const rows = useRef(new Map<string, RowProps & { readonly row: ComponentChild }>());
  return ({ dial, tried, isAtCursor }) => {
    const before = rows.current.get(dial.path);
    if (before?.dial === dial && before.tried === tried && before.isAtCursor === isAtCursor) return before.row;
    const row = <DialRow key={dial.path} dial={dial} tried={tried} isAtCursor={isAtCursor} />;
    rows.current.set(dial.path, { dial, tried, isAtCursor, row });
    return row;
  };
}

/** The figure that is tried at a path; undefined where none is. */
function triedAt(path: string): number | undefined {
  const change = trial.value.find((each) => each.path === path);
  return change?.kind === 'value' ? change.value : undefined;
}

/** A trial with one figure put in, or taken out where it is the one that stands in the text. */
function withFigure(before: Trial, { path, value: asWritten }: Dial, value: number): Trial {
  const others = before.filter((change) => change.path !== path);
  const change: Change = { kind: 'value', path, value };
  return value === asWritten ? others : [...others, change];
}

interface RowProps {
  readonly dial: Dial;
  /** Undefined where the figure is not tried. */
  readonly tried: number | undefined;
  readonly isAtCursor: boolean;
}

function DialRow({ dial, tried, isAtCursor }: RowProps) {
  const { label, unit, step, least, greatest, place } = dial;
  const value = tried ?? dial.value;
  const digits = Math.min(12, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)));
  const text = figureText(value, digits);
  const turn = (figure: number) => tryFigures(withFigure(trial.peek(), dial, figure));
  const held = (figure: number) => Math.min(greatest, Math.max(least, Number(figure.toPrecision(12))));
  return (
    <li class={`dial ${tried === undefined ? '' : 'tried'}`}>
      <span class="dial-name">
        <button type="button" class="link" onClick={() => reveal(place, shown.peek()?.source)}>
          {label}
          <span class="unseen">{`, ${WORDS.toText}`}</span>
        </button>
        {isAtCursor && <span class="hint">{` ${WORDS.atCursor}`}</span>}
      </span>
      <input
        type="range"
        aria-label={WORDS.dialSlider(label)}
        aria-valuetext={withUnit(text, unit)}
        min={least}
        max={greatest}
        // From the figure itself, whatever its digits, in steps both ways.
        step="any"
        value={value}
        onInput={(event) => {
          const steps = Math.round((event.currentTarget.valueAsNumber - dial.value) / step);
          turn(held(dial.value + steps * step));
        }}
        onKeyDown={(event) => {
          const way = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 10, PageDown: -10 }[event.key];
          if (way === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
          event.preventDefault();
          turn(held(value + way * step));
        }}
      />
      <NumberField name={WORDS.dialNumber(label, unit)} unit={unit} value={Number(value.toPrecision(12))} step={step} onNumber={turn} />
      <span class="dial-was">{tried === undefined ? '' : WORDS.was(withUnit(figureText(dial.value, digits), unit))}</span>
    </li>
  );
}

/** What is tried, what it does to the verdict, and the two ways on. */
function TrialLine() {
  const { value: tried } = trial;
  if (tried.length === 0) return <WrittenLine />;
  // A verdict of what was tried before is none of what is drawn now.
  const isWaiting = JSON.stringify(tried) !== JSON.stringify(shownTrial.value) || isReportComing.value;
  const isUnsolved = missing.value !== undefined || gone.value !== undefined;
  return (
    <div class="trial">
      <p>{isWaiting ? WORDS.trialWaiting : isUnsolved ? WORDS.trialUnsolved : verdictOfTrial()}</p>
      {!isWaiting && !isUnsolved && <MovedMarks />}
      <p class="tools">
        <button type="button" class="main" onClick={() => void writeFigures()}>
          {WORDS.writeTrial(tried.length)}
        </button>
        <button type="button" onClick={() => tryFigures([])}>
          {WORDS.dropTrial}
        </button>
      </p>
    </div>
  );
}

const verdictOfTrial = () => WORDS.trialDoes(written.value?.report.verdict ?? '', shown.value?.report.verdict ?? '');

/** What the trial does to the findings, by the finding. */
function MovedMarks() {
  const moved = movedMarks(written.value?.report.marks ?? [], shown.value?.report.marks ?? []);
  if (moved.length === 0) return null;
  return (
    <ul class="plain">
      {moved.map(({ how, message }) => (
        <li key={`${how} ${message}`}>{`${WORDS.trialMoves[how]}: ${message}`}</li>
      ))}
    </ul>
  );
}

/** What was just written, for as long as nothing else is. */
function WrittenLine() {
  const { value: last } = writtenTrial;
  if (last === undefined || last.version !== shown.value?.source.version) return null;
  return (
    <div class="trial">
      <p>{WORDS.written(last.figures.length)}</p>
      <p class="tools">
        <button type="button" onClick={() => takeBack('undo')}>
          {WORDS.undo}
        </button>
      </p>
    </div>
  );
}
