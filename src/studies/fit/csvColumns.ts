/** The first line of a CSV file of readings: which columns count, where they stand, and in what units. */
import type { Definition } from '../../definition/definition.ts';
import type { Run } from '../../definition/measured.ts';
import { greatestSignal, type GreatestSignal } from '../../definition/greatestSignal.ts';
import { nearestWord } from '../../definition/names.ts';
import { readQuantity } from '../../definition/quantity/quantity.ts';
import { columnName, isPercent, isPosition } from '../../definition/schema/columnName.ts';
import type { CsvCell, Separator } from './csv.ts';
import { placeOf, type CsvProblem } from './csvProblem.ts';
import { columnIn, columnsOf } from './namedColumn.ts';
import type { ReadColumn } from './readings.ts';

/** Where a column of readings stands in the file, and in what unit. */
export interface Planned {
  readonly column: ReadColumn;
  readonly index: number;
  /** SI of 1 in the unit of the header; undefined where each cell must bring its own. */
  readonly scale: number;
  /** Of a sensor's signal, what it can give; undefined of anything else. */
  readonly greatest: GreatestSignal | undefined;
}

/** The first says where the pedal is. Undefined where any cannot be used: `problems` then says which and why. */
export function planOf(
  header: readonly CsvCell[],
  { columns }: Pick<Run, 'columns'>,
  definition: Definition,
  separator: Separator,
  problems: CsvProblem[],
): readonly Planned[] | undefined {
  const before = problems.length;
  const titles = header.map(titleOf);
  const wanted = columns?.map(columnName) ?? titles.map(({ name }) => name);
  const planned: Planned[] = [];
  const [first] = header;
  if (first !== undefined && header.length < 2) {
    const named = separator === ',' ? 'commas, semicolons or tabs' : separator === ';' ? 'semicolons' : 'tabs';
    problems.push({
      ...placeOf(first),
      message: 'The first line names one column only',
      cure: `Put ${named} between the names of the columns`,
    });
    return undefined;
  }
  for (const name of wanted) {
    const index = titles.findIndex((title) => title.name === name);
    const cell = header[index] ?? first;
    const title = titles[index];
    if (cell === undefined) continue;
    if (title === undefined) {
      const nearest = nearestWord(
        name,
        titles.map((each) => each.name),
      );
      const cure = nearest === undefined ? 'Write its name into the first line' : `Is it \`${nearest}\`? Write \`${name}\``;
      problems.push({ ...placeOf(cell), message: `The file has no column \`${name}\``, cure });
      continue;
    }
    const second = titles.findIndex((each, at) => at > index && each.name === name);
    const twice = header[second];
    if (twice !== undefined && wanted.indexOf(name) === planned.length) {
      problems.push({
        ...placeOf(twice),
        message: `The column \`${name}\` stands twice in the first line`,
        cure: 'Leave one of the two out',
      });
    }
    const column = columnIn(definition, name);
    if (column === undefined) {
      problems.push({ ...placeOf(cell), ...noColumn(name, definition) });
      continue;
    }
    const scale = scaleOf(title, column, cell, problems);
    if (scale !== undefined) planned.push({ column, index, scale, greatest: greatestSignal(definition, column) });
  }
  const [position] = planned;
  if (problems.length > before || position === undefined) return undefined;
  if (isPosition(position.column, (name) => definition.cables.some((cable) => cable.name === name))) return planned;
  problems.push({
    ...placeOf(header[position.index] ?? { line: 1, column: 1 }),
    message: `\`${columnName(position.column)}\` does not say where the pedal is`,
    cure: 'Put `pedal.travel`, or the `pull` of a cable, first; or name the columns in the run with `columns`',
  });
  return undefined;
}

interface Title {
  readonly name: string;
  /** As in the brackets; undefined without any. */
  readonly unit: string | undefined;
}

function titleOf({ text }: CsvCell): Title {
  const [, name, unit] = /^([^[\]]*?)\s*(?:\[([^\]]*)\])?$/.exec(text) ?? [];
  return { name: name ?? text, unit: unit?.trim() };
}

function scaleOf({ unit }: Title, column: ReadColumn, cell: CsvCell, problems: CsvProblem[]): number | undefined {
  const name = columnName(column);
  if (isPercent(column) && unit === undefined) {
    problems.push({
      ...placeOf(cell),
      message: `\`${name}\` may be in percent or a share of 1`,
      cure: `Write \`${name} [%]\`, or \`${name} [1]\``,
    });
    return undefined;
  }
  const written = column.dimension === 'number' && (unit === '1' || unit === '') ? '1' : `1 ${unit ?? ''}`;
  const read = readQuantity(written.trim(), 0, column.dimension);
  if (read.form === 'quantity' && read.quantity !== undefined && read.problems.length === 0) return read.quantity.nominal;
  const [fault] = read.form === 'quantity' ? read.problems : [];
  const why = fault?.message ?? `\`${unit ?? ''}\` is no unit`;
  problems.push({
    ...placeOf(cell),
    message: `The unit of \`${name}\` cannot be used: ${why}`,
    ...(fault?.cure !== undefined && { cure: fault.cure }),
  });
  return undefined;
}

function noColumn(name: string, definition: Definition): Pick<CsvProblem, 'message' | 'cure'> {
  const [owner = ''] = name.split('.');
  const own = columnsOf(definition, owner).map((key) => `${owner}.${key}`);
  const [, bare = '', unit = ''] = /^(.*?)\s*\((.*)\)$/.exec(name) ?? [];
  if (columnIn(definition, bare.toLowerCase()) !== undefined) {
    const cure = `Write the unit in square brackets: \`${bare.toLowerCase()} [${unit}]\``;
    return { message: `\`${name}\` is no column of this linkage`, cure };
  }
  const meant = columnIn(definition, name.toLowerCase()) === undefined ? MEANT.get(name.toLowerCase()) : name.toLowerCase();
  if (meant !== undefined) return { message: `\`${name}\` is no column of this linkage`, cure: `Write \`${meant}\`` };
  if (own.length === 0) {
    return { message: `\`${name}\` is no column of this linkage`, cure: 'Name in the run, with `columns`, those that count' };
  }
  if (name === owner) {
    const units = own.slice(0, NAMES_SHOWN).map((each) => `\`${each}\``);
    return { message: `\`${name}\` has several columns, and this does not say which`, cure: `Write one of them: ${units.join(', ')}` };
  }
  const nearest = nearestWord(name, own);
  return {
    message: `\`${owner}\` has no column \`${name.slice(owner.length + 1)}\``,
    cure: nearest === undefined ? 'Name in the run, with `columns`, those that count' : `Did you mean \`${nearest}\`?`,
  };
}

/** What is meant by a word alone. */
const MEANT: ReadonlyMap<string, string> = new Map([
  ['travel', 'pedal.travel [%]'],
  ['pedal', 'pedal.travel [%]'],
]);
const NAMES_SHOWN = 6;
