/** The blocks of a study's page: lines, tables, answers to choose from, charts. */
import type { StudyAnswer, StudyBlock, StudyKind, StudyLine, StudyLines, StudyRow, StudyTable } from '../../../src/protocol/studies.ts';
import type { TextPlace } from '../../../src/protocol/report.ts';
import { chooseAnswer } from '../../page/studies.ts';
import { reveal } from '../../send.ts';
import { gone, missing, studies, writtenAnswer } from '../../state.ts';
import { WORDS } from '../../words.ts';
import { Sign } from '../icons.tsx';
import { useFirst } from '../someOf.tsx';
import { withCode } from '../withCode.tsx';
import { StudyCharts } from './studyCharts.tsx';

interface Props<Of> {
  readonly kind: StudyKind;
  readonly block: Of;
  /** Its place among the blocks of the study. */
  readonly index: number;
}

export function Block({ kind, block, index }: Props<StudyBlock>) {
  switch (block.kind) {
    case 'lines':
      return <Lines kind={kind} block={block} index={index} />;
    case 'table':
      return <Table kind={kind} block={block} index={index} />;
    case 'answer':
      return <Answer kind={kind} block={block} index={index} />;
    case 'charts':
      return <StudyCharts block={block} />;
  }
}

function Lines({ kind, block: { title, lines } }: Props<StudyLines>) {
  return (
    <div class="study-block">
      {title !== '' && <h4>{title}</h4>}
      <ul>
        {lines.map((each) => (
          <Line key={each.text} kind={kind} line={each} />
        ))}
      </ul>
    </div>
  );
}

function Line({ kind, line: { sign, text, place } }: { readonly kind: StudyKind; readonly line: StudyLine }) {
  return (
    <li class="study-line">
      {sign !== undefined && <Sign name={sign} />}
      <span>
        {withCode(text)}
        {place !== undefined && (
          <>
            {' '}
            <ToText kind={kind} place={place} name={text} />
          </>
        )}
      </span>
    </li>
  );
}

/** A place of the text that was studied: the editor leaves it aside where the text is another. */
function ToText({ kind, place, name }: { readonly kind: StudyKind; readonly place: TextPlace; readonly name: string }) {
  return (
    <button type="button" class="link" onClick={() => reveal(place, studies.peek()[kind]?.source)}>
      {WORDS.toText}
      <span class="unseen">{`: ${name}`}</span>
    </button>
  );
}

/** Roles are written out: where there is little room the rows are laid out as blocks, which would take them away. */
function Table({ kind, block: { title, hint, columns, rows }, index }: Props<StudyTable>) {
  const id = `study-${kind}-${index}`;
  const { first, more } = useFirst(rows, title.toLowerCase());
  return (
    <div class="study-block">
      <h4 id={id}>{title}</h4>
      {hint !== '' && <p class="hint">{hint}</p>}
      <table role="table" class="study-table" aria-labelledby={id}>
        <thead role="rowgroup">
          <tr role="row">
            {columns.map((name) => (
              <th key={name} role="columnheader" scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody role="rowgroup">
          {first.map((row) => (
            <Row key={row.name} kind={kind} row={row} columns={columns} />
          ))}
        </tbody>
      </table>
      {more}
    </div>
  );
}

function Row({
  kind,
  row: { name, place, cells, share },
  columns,
}: {
  readonly kind: StudyKind;
  readonly row: StudyRow;
  readonly columns: readonly string[];
}) {
  return (
    <tr role="row">
      <th role="rowheader" scope="row">
        {place === undefined ? (
          name
        ) : (
          <button type="button" class="link" onClick={() => reveal(place, studies.peek()[kind]?.source)}>
            {name}
            <span class="unseen">{`, ${WORDS.toText}`}</span>
          </button>
        )}
        {share !== undefined && (
          <svg class="share" viewBox="0 0 100 3" preserveAspectRatio="none" aria-hidden="true">
            <rect width={100 * share} height="3" />
          </svg>
        )}
      </th>
      {cells.map((text, index) => (
        <td key={columns[index + 1]} role="cell">
          <span class="cell-label">{`${columns[index + 1]!}: `}</span>
          {text}
        </td>
      ))}
    </tr>
  );
}

function Answer({ kind, block: { title, standing, lines, diff, writes }, index }: Props<StudyAnswer>) {
  const words = WORDS.studies;
  const isWritten = writtenAnswer.value?.kind === kind && writtenAnswer.value.block === index;
  const cannot = missing.value !== undefined || gone.value !== undefined;
  return (
    <div class="study-block study-answer">
      <h4>
        <Sign name={standing} />
        {title}
        <span class="unseen">{`, ${WORDS.outcome[standing]}`}</span>
      </h4>
      <ul>
        {lines.map((each) => (
          <Line key={each.text} kind={kind} line={each} />
        ))}
      </ul>
      {diff.length > 0 && (
        <dl class="diff" aria-label={words.diff(title)}>
          {diff.map(({ line, was, is }) => (
            <div key={line}>
              <dt class="unseen">{words.lineNumber(line)}</dt>
              <dd class="was">
                <span aria-hidden="true">−</span>
                <span class="unseen">{words.removed}</span> <del>{was}</del>
              </dd>
              <dd class="is">
                <span aria-hidden="true">+</span>
                <span class="unseen">{words.added}</span> <ins>{is}</ins>
              </dd>
            </div>
          ))}
        </dl>
      )}
      {isWritten ? (
        <p class="hint">{words.isWritten}</p>
      ) : diff.length > 0 ? (
        <p class="tools">
          <button
            type="button"
            class={index === 1 ? 'main' : undefined}
            disabled={cannot}
            aria-label={`${words.write}: ${title}`}
            onClick={() => void chooseAnswer(kind, index)}
          >
            {words.write}
          </button>
        </p>
      ) : (
        writes.length > 0 && <p class="hint">{words.nothingToWrite}</p>
      )}
    </div>
  );
}
