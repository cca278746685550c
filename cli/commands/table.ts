/** `table FILE`: the solved table to standard output, problems of the text to standard error. */
import { problemsText } from '../../src/outputs/checkText.ts';
import { printable } from '../../src/outputs/paint.ts';
import { tableCsv } from '../../src/outputs/tableCsv.ts';
import { tableJson } from '../../src/outputs/tableJson.ts';
import { tableText } from '../../src/outputs/tableText.ts';
import { solve } from '../../src/solve.ts';
import type { Table } from '../../src/table/column.ts';
import type { TableRequest } from '../arguments.ts';
import { chooseColumns } from '../columns.ts';
import { SOUND, UNUSABLE, WRONG, type Io } from '../io.ts';
import { readSource } from '../source.ts';
import type { Format } from '../tableOptions.ts';
import { painterFor } from '../terminal.ts';

export async function table({ file, stations, columns, format, color }: TableRequest, io: Io): Promise<number> {
  const paintError = painterFor(color, io.errorIsTerminal, io.environment);
  const refuse = (message: string): number => {
    io.writeError(`${paintError('error', 'error:')} ${printable(message)}\n`);
    return UNUSABLE;
  };
  const source = await readSource(file, io);
  if (source.kind === 'unusable') return refuse(source.message);
  const answers = solve(source.text);
  io.writeError(problemsText(answers, { file: source.label, paint: paintError }));
  if (answers.definition === undefined) return refuse(`${source.label}: cannot be used`);
  if (answers.columns.length === 0) return refuse(`${source.label}: nothing in it can be solved, so there is no table`);
  const names = columns === undefined ? undefined : chooseColumns(columns, answers.columns);
  if (typeof names === 'string') return refuse(names);
  io.writeOut(write(inOrder(answers.table(stations, names), names), format, color, io));
  return answers.problems.some(({ severity }) => severity === 'error') ? WRONG : SOUND;
}

function write(solved: Table, format: Format, color: boolean | undefined, io: Io): string {
  switch (format) {
    case 'text':
      return tableText(solved, {
        paint: painterFor(color, io.outIsTerminal, io.environment),
        ...(io.columns !== undefined && { width: io.columns }),
      });
    case 'csv':
      return tableCsv(solved);
    case 'json':
      return tableJson(solved);
  }
}

/** The columns in the order asked for. */
function inOrder(solved: Table, names: readonly string[] | undefined): Table {
  if (names === undefined) return solved;
  return { ...solved, columns: names.flatMap((name) => solved.columns.filter((column) => column.name === name)) };
}
