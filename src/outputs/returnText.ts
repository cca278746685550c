/**
 * What single failures leave, as text: each part lost in turn and each cable seized, findings about them, how the linkage stands to the
 * figures of rules, what all that rests on, the caution, and in the last line how it stands.
 */
import type { FailureRow } from '../failures/failure.ts';
import type { Failures } from '../findings/failures.ts';
import type { Answers } from '../solve.ts';
import { CAUTION } from './caution.ts';
import { marksText, problemsText, type CheckTextOptions } from './checkText.ts';
import type { Statement } from '../failures/statements.ts';
import { failureName, failuresVerdict, freedWords, OUTCOME_WORDS, platesWords, statementWords } from './failureWords.ts';
import { plain, printable, type Paint, type Style } from './paint.ts';
import { returnOutcome } from './returnOutcome.ts';
import { gather, pad, widthOf, wrap } from './width.ts';

/** With a line ending. */
export function returnText(answers: Answers, { file, paint = plain, width = DEFAULT_WIDTH }: CheckTextOptions): string {
  const failures = answers.failures();
  const page: Page = { paint, width };
  const title = answers.definition?.title;
  const sections = [
    [paint('strong', printable(file)), ...(title === undefined ? [] : [printable(title)])],
    lines(problemsText(answers, { file, paint, width })),
    ...(failures === undefined || failures.notChecked !== undefined ? [] : failureSections(failures, answers, file, page)),
    answers.definition === undefined ? [] : wrap(`Caution. ${CAUTION}`, width),
    [`${printable(file)}: ${verdictWords(answers, failures)}`],
  ];
  return `${sections
    .filter((section) => section.length > 0)
    .map((section) => section.join('\n'))
    .join('\n\n')}\n`;
}

interface Page {
  readonly paint: Paint;
  readonly width: number;
}

const DEFAULT_WIDTH = 110;
const INDENT = '  ';

function failureSections(failures: Failures, { text }: Answers, file: string, page: Page): readonly string[][] {
  const { paint, width } = page;
  const { whole, rows, findings, statements, assumptions } = failures;
  const isSeized = ({ failure }: FailureRow): boolean => failure?.kind === 'cable-seized';
  const told = (items: readonly string[]): string[] =>
    items.flatMap((item) => {
      const [first = '', ...more] = wrap(printable(item), width - 2 * INDENT.length);
      return [INDENT + first, ...more.map((line) => INDENT + INDENT + line)];
    });
  return [
    rowSection('With every part', [whole], page),
    rowSection(
      'With one part lost',
      rows.filter((row) => !isSeized(row)),
      page,
    ),
    rowSection('With a cable seized', rows.filter(isSeized), page),
    lines(marksText(text, findings, { file, paint, width })),
    [paint('strong', 'Figures of rules'), ...statements.flatMap((statement) => told([withNote(statement)]))],
    [paint('strong', 'Taken for granted'), ...told(assumptions)],
  ];
}

/** What of the rule is not looked at stands with what is said of it. */
function withNote(statement: Statement): string {
  const { note } = statement.figure;
  return note === undefined ? statementWords(statement) : `${statementWords(statement)} [${note}]`;
}

function rowSection(title: string, rows: readonly FailureRow[], page: Page): string[] {
  if (rows.length === 0) return [];
  return [page.paint('strong', title), ...rows.flatMap((row) => rowLines(row, page))];
}

function rowLines(row: FailureRow, { paint, width }: Page): string[] {
  const head = row.failure === undefined ? [] : [INDENT + printable(failureName(row))];
  const indent = row.failure === undefined ? INDENT : INDENT + INDENT;
  const names = row.plates.map(({ levers }) => levers.join(' + '));
  const nameWidth = Math.max(0, ...names.map(widthOf));
  const outcomeWidth = Math.max(...Object.values(OUTCOME_WORDS).map(widthOf));
  const lead = indent.length + nameWidth + outcomeWidth + 2 * INDENT.length;
  const plates = row.plates.flatMap((left, i) => {
    const outcome = paint(STYLES[left.outcome], pad(OUTCOME_WORDS[left.outcome], outcomeWidth));
    const start = `${indent}${pad(names[i] ?? '', nameWidth)}${INDENT}${outcome}${INDENT}`;
    const [first = '', ...more] = gather(platesWords(left), Math.max(SHORTEST, width - lead)).flatMap((line) =>
      wrap(line, Math.max(SHORTEST, width - lead)),
    );
    return [(start + printable(first)).trimEnd(), ...more.map((line) => ' '.repeat(lead) + printable(line))];
  });
  const freed = row.freed === undefined ? [] : wrap(printable(freedWords(row.freed)), width - indent.length).map((line) => indent + line);
  return [...head, ...plates, ...freed];
}

const STYLES: Readonly<Record<FailureRow['outcome'], Style>> = { closes: 'quiet', 'stays-open': 'error', 'not-checked': 'warning' };
const SHORTEST = 30;

function verdictWords(answers: Answers, failures: Failures | undefined): string {
  if (returnOutcome(answers) === 'unusable') return 'cannot be used';
  return failures === undefined ? 'nothing in it can be solved, so that no failure was looked at' : failuresVerdict(failures);
}

/** Of a text that may end with a line break. */
function lines(text: string): string[] {
  return text === '' ? [] : text.trimEnd().split('\n');
}
