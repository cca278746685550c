/** `table FILE`: the solved table to standard output, problems of the text to standard error. */
import { nearestWord } from '../../src/definition/names.ts';
import { problemsText } from '../../src/outputs/checkText.ts';
import { printable } from '../../src/outputs/paint.ts';
import { tableCsv } from '../../src/outputs/tableCsv.ts';
import { tableJson } from '../../src/outputs/tableJson.ts';
import { tableText } from '../../src/outputs/tableText.ts';
import { solve } from '../../src/solve.ts';
import type { Column, Table } from '../../src/table/column.ts';
import type { TableRequest } from '../arguments.ts';
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

/** Full names of the wanted columns in the order asked, or a sentence on the one that there is not. */
function chooseColumns(wanted: readonly string[], columns: readonly Column[]): string[] | string {
  const chosen: string[] = [];
  for (const word of wanted) {
    const exact = columns.filter(({ name }) => name === word);
    const found = exact.length > 0 ? exact : columns.filter(({ owner }) => owner === word);
    if (found.length === 0) return unknownColumn(word, columns);
    chosen.push(...found.map(({ name }) => name));
  }
  return chosen;
}

function unknownColumn(word: string, columns: readonly Column[]): string {
  const near = nearestWord(word, [...columns.map(({ name }) => name), ...columns.map(({ owner }) => owner)]);
  if (near !== undefined) return `There is no column \`${word}\`; did you mean \`${near}\`?`;
  const [owner = '', key = ''] = word.split('.');
  const related = columns.filter((column) => column.owner === owner || column.key === key).map(({ name }) => name);
  const names = related.length > 0 ? related : columns.map(({ name }) => name);
  const more = names.length > SHOWN_NAMES ? `, and ${names.length - SHOWN_NAMES} more` : '';
  return `There is no column \`${word}\`; there are ${names.slice(0, SHOWN_NAMES).join(', ')}${more}`;
}

const SHOWN_NAMES = 12;
