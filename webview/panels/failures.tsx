/** Every single failure: whether the plates still close, with what left, how fast, and what catches a lever that is let go. */
import type { ReturnOutcome, ReturnPlates, ReturnRow, Returns, ReturnStatement, ReturnWeakest } from '../../src/protocol/returns.ts';
import { percentText } from '../charts/figures.ts';
import { setTravel } from '../page/play.ts';
import { areReturnsCurrent, playReturn, rowKey, workOutReturns } from '../page/returns.ts';
import { revealPart } from '../send.ts';
import { gone, hovered, isMotionReduced, missing, returns, returnsComing, returnsRefused, selected, shown, snapAsked } from '../state.ts';
import { WORDS } from '../words.ts';
import { Finding } from './findings.tsx';
import { Sign, type SignName } from './icons.tsx';
import { useFirst } from './someOf.tsx';

export function Failures() {
  const now = shown.value;
  // A file that is not solved has no charts, and none to come.
  if (now === undefined || now.charts.length + now.coming.length === 0) return null;
  const known = returns.value;
  const isOld = known !== undefined && !areReturnsCurrent();
  const isComing = returnsComing.value !== undefined;
  const progress = returnsComing.value?.progress;
  const cannot = missing.value !== undefined || gone.value !== undefined;
  return (
    <section aria-labelledby="failures-title" aria-busy={isComing}>
      <h2 id="failures-title">{WORDS.failures}</h2>
      {known === undefined && <p class="hint">{WORDS.failuresHint}</p>}
      {isOld && (
        <p class="notice failures-old">
          <Sign name="note" />
          <span>{WORDS.failuresOld}</span>
        </p>
      )}
      {returnsRefused.value !== undefined && (
        <p class="notice failures-refused">
          <Sign name="warning" />
          <span>{returnsRefused.value}</span>
        </p>
      )}
      {(known === undefined || isOld || isComing || returnsRefused.value !== undefined) && (
        <p class="tools work-out">
          <button type="button" disabled={isComing || cannot} onClick={() => void workOutReturns()}>
            {isComing ? WORDS.beingWorkedOut : known === undefined ? WORDS.workOut : WORDS.workOutAgain}
          </button>
          {progress !== undefined && <span class="work-done">{WORDS.workedOut(progress.done, progress.all)}</span>}
        </p>
      )}
      {known !== undefined && (
        <div class={isOld ? 'returns of-old' : 'returns'}>
          <p class="returns-verdict">{known.table.verdict}</p>
          {known.table.rows.length > 0 && <Table table={known.table} isOld={isOld} />}
          {known.table.marks.length > 0 && (
            <ol class="findings">
              {known.table.marks.map((mark, index) => (
                <Finding key={`${mark.code} ${index}`} mark={mark} of={known.of.source} />
              ))}
            </ol>
          )}
          <Statements statements={known.table.statements} />
          <Assumptions texts={known.table.assumptions} />
        </div>
      )}
    </section>
  );
}

/** Roles are written out: where there is little room the rows are laid out as blocks, which would take them away. */
function Table({ table, isOld }: { readonly table: Returns; readonly isOld: boolean }) {
  const hasNames = table.rows.some(({ plates }) => plates.length > 1);
  const { first, more } = useFirst(table.rows, WORDS.failuresName);
  const columns = [WORDS.fails, ...(hasNames ? [WORDS.platesOf] : []), WORDS.outcomeColumn, WORDS.least, WORDS.timeColumn];
  return (
    <>
      <table role="table" class="failures" aria-labelledby="failures-title">
        <thead role="rowgroup">
          <tr role="row">
            {columns.map((name) => (
              <th key={name} role="columnheader" scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        {first.map((row) => (
          <Row key={rowKey(row)} row={row} hasNames={hasNames} isOld={isOld} />
        ))}
      </table>
      {more}
    </>
  );
}

interface RowProps {
  readonly row: ReturnRow;
  readonly hasNames: boolean;
  readonly isOld: boolean;
}

function Row({ row, hasNames, isOld }: RowProps) {
  const { part, plates, freed } = row;
  const isSelected = part !== undefined && part.kind === selected.value?.kind && part.name === selected.value.name;
  const refusal = snapAsked.value?.row === rowKey(row) ? snapAsked.value.why : undefined;
  const notes = [
    ...plates.flatMap(({ levers, why, timeNote }) => {
      const told = [...why, ...(timeNote === undefined ? [] : [timeNote])];
      return told.map((text) => (plates.length > 1 ? WORDS.ofPlates(levers, text) : text));
    }),
    ...(freed === undefined ? [] : [freed]),
    ...(refusal === undefined ? [] : [refusal]),
  ];
  const [only] = plates;
  const groups: readonly (ReturnPlates | undefined)[] = only === undefined ? [undefined] : plates;
  return (
    <tbody
      role="rowgroup"
      class={isSelected ? 'chosen' : undefined}
      onPointerEnter={() => (hovered.value = part)}
      onPointerLeave={() => (hovered.value = undefined)}
      onClick={() => {
        if (part !== undefined) selected.value = part;
      }}
    >
      {groups.map((left, index) => (
        <tr key={left?.levers ?? ''} role="row">
          {index === 0 && (
            <th role="rowheader" scope="rowgroup" rowSpan={groups.length} class="fails">
              <Name row={row} />
              <PlayRow row={row} isOld={isOld} />
            </th>
          )}
          {hasNames && (
            <td role="cell" class="levers">
              {left?.levers}
            </td>
          )}
          <td role="cell" class="outcome">
            <Outcome outcome={left?.outcome ?? row.outcome} text={left?.outcomeText} />
          </td>
          <td role="cell" class="least">
            {left?.weakest === undefined ? WORDS.noFigure : <Least weakest={left.weakest} of={row.name} />}
          </td>
          <td role="cell" class="time">
            <span class="cell-label">{WORDS.timeColumn} </span>
            {left?.time ?? WORDS.noFigure}
            {left?.stop !== undefined && <span class="beside-time"> {left.stop}</span>}
            {left?.time !== undefined && left.isEstimated && <span class="beside-time"> {WORDS.estimated}</span>}
          </td>
        </tr>
      ))}
      {notes.length > 0 && (
        <tr role="row" class="notes">
          <td role="cell" colSpan={hasNames ? 5 : 4}>
            {notes.map((text) => (
              <p key={text}>{text}</p>
            ))}
          </td>
        </tr>
      )}
    </tbody>
  );
}

/** Its part lights up with it, and is shown in the text by a click. */
function Name({ row: { name, part } }: { readonly row: ReturnRow }) {
  if (part === undefined) return <span class="part-name">{name === '' ? WORDS.nothingFails : name}</span>;
  return (
    <button
      type="button"
      class="link part-name"
      onClick={() => {
        selected.value = part;
        revealPart(part);
      }}
      onFocus={() => (hovered.value = part)}
      onBlur={() => (hovered.value = undefined)}
    >
      {name}
      <span class="unseen">{`, ${WORDS.toText}`}</span>
    </button>
  );
}

function PlayRow({ row, isOld }: { readonly row: ReturnRow; readonly isOld: boolean }) {
  const isAsked = snapAsked.value?.row === rowKey(row) && snapAsked.value.why === undefined;
  return (
    <button
      type="button"
      class="quiet play-return"
      disabled={isOld}
      onClick={(event) => {
        event.stopPropagation();
        void playReturn(row);
      }}
    >
      <Sign name="play" />
      {isAsked ? WORDS.beingWorkedOut : isMotionReduced.value ? WORDS.stepReturn : WORDS.playReturn}
      <span class="unseen">{`, ${row.name === '' ? WORDS.nothingFails : row.name}`}</span>
    </button>
  );
}

const SIGNS: Readonly<Record<ReturnOutcome, SignName>> = { closes: 'passed', 'stays-open': 'failed', 'not-checked': 'undecided' };

function Outcome({ outcome, text }: { readonly outcome: ReturnOutcome; readonly text: string | undefined }) {
  return (
    <span class="outcome-word">
      <Sign name={SIGNS[outcome]} />
      <span class="word">{text ?? WORDS.outcomeUnknown}</span>
    </span>
  );
}

function Least({ weakest: { text, travel }, of }: { readonly weakest: ReturnWeakest; readonly of: string }) {
  return (
    <>
      {text}
      {travel !== undefined && (
        <>
          {' '}
          <button type="button" class="link" title={WORDS.setPedal} onClick={() => setTravel(travel)}>
            {WORDS.toTravel(percentText(travel))}
            <span class="unseen">{`, ${of === '' ? WORDS.nothingFails : of}: ${WORDS.setPedal}`}</span>
          </button>
        </>
      )}
    </>
  );
}

const STANDINGS: Readonly<Record<ReturnStatement['standing'], SignName>> = {
  meets: 'passed',
  'does-not-meet': 'failed',
  'not-checked': 'undecided',
};

function Statements({ statements }: { readonly statements: readonly ReturnStatement[] }) {
  if (statements.length === 0) return null;
  return (
    <>
      <h3>{WORDS.ruleFigures}</h3>
      <ul class="statements">
        {statements.map(({ standing, text, note }) => (
          <li key={text} class="finding">
            <Sign name={STANDINGS[standing]} />
            <div>
              <p>{text}</p>
              {note !== undefined && <p class="cure">{note}</p>}
            </div>
          </li>
        ))}
      </ul>
    </>
  );
}

function Assumptions({ texts }: { readonly texts: readonly string[] }) {
  if (texts.length === 0) return null;
  return (
    <>
      <h3>{WORDS.takenForGranted}</h3>
      <ul class="plain assumptions">
        {texts.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </>
  );
}
