/**
 * Readings of a run as figures, from its rows in the throttle file or from a CSV file beside it.
 *
 * The first line of a CSV file names the columns, each as in the table, with its unit in brackets: `tps.signal [V]`. Without brackets a
 * figure takes the unit of its place, as in the throttle file; of a column in percent that would be a guess, so `[%]` must be written, or
 * `[1]` for shares of 1. A cell may also bring its own unit. An empty cell, or `~`, is a reading that was not taken. With commas between
 * the cells a decimal comma is refused; with semicolons or tabs it is a decimal point, as long as no other cell has a point.
 */
import { COLUMNS } from '../../definition/columns.ts';
import type { ColumnReference, Definition } from '../../definition/definition.ts';
import type { Dimension } from '../../definition/dimensions.ts';
import type { Run } from '../../definition/measured.ts';
import { nearestWord } from '../../definition/names.ts';
import { readQuantity } from '../../definition/quantity/quantity.ts';
import { columnName, isPercent, isPosition } from '../../definition/schema/columnName.ts';
import { MOST_ROWS } from '../../definition/schema/measured.ts';
import { parseCsv, type CsvCell, type CsvText, type Separator } from './csv.ts';

/** A column of readings: one of the table. */
export type ReadColumn = Omit<ColumnReference, 'span'>;

/** What was read in one run. */
export interface Readings {
  /** The first says where the pedal is. */
  readonly columns: readonly ReadColumn[];
  /** In the order of the text. */
  readonly rows: readonly ReadingsRow[];
}

/** Readings at one position of the pedal. */
export interface ReadingsRow {
  /** Of the CSV file, from 1; undefined for a row of the throttle file, whose place is in the run. */
  readonly line?: number;
  /** SI, one a column; undefined where it was not taken, which the first never is. */
  readonly values: readonly (number | undefined)[];
}

/** What is wrong with a CSV file, at its place there. */
export interface CsvProblem {
  /** From 1. */
  readonly line: number;
  /** From 1, in UTF-16 code units. */
  readonly column: number;
  /** A sentence without a full stop. */
  readonly message: string;
  readonly cure?: string;
}

export interface CsvReadings {
  /** The lines that were understood; undefined where none can be. With any problem they are not all. */
  readonly readings: Readings | undefined;
  /** In the order of the file; of very many the first. */
  readonly problems: readonly CsvProblem[];
}

/** Largest CSV file that is read, in characters: four times what 10 000 lines of ten figures take. */
export const LARGEST_CSV = 4_000_000;

/** Readings that stand in the throttle file; undefined for a run that names a file. */
export function inlineReadings({ columns, readings }: Run): Readings | undefined {
  if (readings.kind !== 'rows' || columns === undefined) return undefined;
  return { columns, rows: readings.rows.map(({ values }) => ({ values: values.map((value) => value?.nominal) })) };
}

/** Readings that were taken, the pedal's positions left out. */
export function countReadings({ rows }: Readings): number {
  return rows.reduce((count, { values }) => count + values.filter((value, index) => index > 0 && value !== undefined).length, 0);
}

/**
 * @param text of the CSV file that the run names
 * @param run whose `columns`, where it has them, are the ones that count, whatever else the file has
 * @param definition whose parts have the columns
 */
export function readCsv(text: string, run: Pick<Run, 'columns'>, definition: Definition): CsvReadings {
  if (text.length > LARGEST_CSV) {
    return failed({
      line: 1,
      column: 1,
      message: `The file has more than ${LARGEST_CSV / 1e6} million characters`,
      cure: 'Leave lines out',
    });
  }
  const csv = parseCsv(text, MOST_ROWS + 1);
  const [header, ...lines] = csv.rows;
  if (csv.broken !== undefined) {
    return failed({
      ...csv.broken,
      message: 'A quote is not closed at the end of its cell',
      cure: 'Write `"` around the whole cell, or none',
    });
  }
  if (header === undefined) {
    return failed({ line: 1, column: 1, message: 'The file is empty', cure: 'Write the names of the columns into its first line' });
  }
  if (csv.cut) {
    const last = lines.at(-1)?.[0] ?? header[0];
    return failed({
      line: (last?.line ?? 0) + 1,
      column: 1,
      message: `The file has more than ${MOST_ROWS} lines of readings`,
      cure: 'Leave lines out, or share them among several runs',
    });
  }
  const problems: CsvProblem[] = [];
  const plan = planOf(header, run, definition, csv.separator, problems);
  if (plan === undefined) return { readings: undefined, problems };
  const rows = rowsOf(lines, header.length, plan, csv, problems);
  if (lines.length === 0) {
    problems.push({
      line: (header[0]?.line ?? 1) + 1,
      column: 1,
      message: 'The file has no readings',
      cure: 'Write one line for each position of the pedal',
    });
  }
  return { readings: { columns: plan.map(({ column }) => column), rows }, problems: problems.slice(0, MOST_PROBLEMS) };
}

const MOST_PROBLEMS = 50;

function failed(problem: CsvProblem): CsvReadings {
  return { readings: undefined, problems: [problem] };
}

/** Where a column of readings stands in the file, and in what unit. */
interface Planned {
  readonly column: ReadColumn;
  readonly index: number;
  /** SI of 1 in the unit of the header; undefined where each cell must bring its own. */
  readonly scale: number;
}

function planOf(
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
    if (scale !== undefined) planned.push({ column, index, scale });
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
  const own = columnsOf(definition, owner);
  const nearest =
    own.length > 0
      ? nearestWord(
          name,
          own.map((key) => `${owner}.${key}`),
        )
      : undefined;
  return {
    message: own.length > 0 ? `\`${owner}\` has no such column as \`${name}\`` : `\`${name}\` is no column of this linkage`,
    cure: nearest === undefined ? 'Name in the run, with `columns`, those that count' : `Did you mean \`${nearest}\`?`,
  };
}

function rowsOf(
  lines: readonly (readonly CsvCell[])[],
  count: number,
  plan: readonly Planned[],
  { separator }: CsvText,
  problems: CsvProblem[],
): readonly ReadingsRow[] {
  const pointed = separator === ',' ? undefined : lines.flat().find(({ text }) => /^[-+]?\d*\.\d/.test(text));
  const rows: ReadingsRow[] = [];
  for (const cells of lines) {
    const [first] = cells;
    if (first === undefined) continue;
    // Spreadsheets leave empty cells at the ends of lines.
    const used = cells.findLastIndex(({ text }) => text !== '') + 1;
    if (used > count) {
      const last = cells[count] ?? first;
      const commas = separator === ',' ? '; a decimal comma parts a figure in two' : '';
      problems.push({
        ...placeOf(last),
        message: `The line has ${used} cells, the first line ${count}${commas}`,
        cure: separator === ',' ? 'Write decimal points, or put semicolons between the cells' : 'Write one cell for each column',
      });
      continue;
    }
    const values = plan.map(({ index, scale, column }, at) => {
      const cell = cells[index];
      if (cell === undefined || cell.text === '' || cell.text === '~') {
        if (at > 0) return undefined;
        problems.push({
          ...placeOf(cell ?? first),
          message: `\`${columnName(column)}\` is missing: it says where the pedal is`,
          cure: 'Write it, or leave the line out',
        });
        return BROKEN;
      }
      return figureOf(cell, column, scale, separator, pointed, problems);
    });
    if (!values.includes(BROKEN)) rows.push({ line: first.line, values: values.filter((value) => value !== BROKEN) });
    if (problems.length > MOST_PROBLEMS) break;
  }
  return rows;
}

const BROKEN = Symbol('a cell that cannot be read');

const FIGURE = /^[-+\u2212]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?$/;
const COMMA_FIGURE = /^[-+\u2212]?\d*,\d+(?:[eE][-+]?\d+)?(?=$|\s|[^\d,.])/;

function figureOf(
  cell: CsvCell,
  column: ReadColumn,
  scale: number,
  separator: Separator,
  pointed: CsvCell | undefined,
  problems: CsvProblem[],
): number | typeof BROKEN {
  const place = placeOf(cell);
  let { text } = cell;
  if (COMMA_FIGURE.test(text)) {
    const point = text.replace(',', '.');
    if (separator === ',' || pointed !== undefined) {
      const message =
        separator === ','
          ? `\`${short(text)}\` has a decimal comma`
          : `\`${short(text)}\` has a decimal comma, and line ${pointed?.line} a point`;
      problems.push({ ...place, message, cure: `Write \`${short(point)}\`` });
      return BROKEN;
    }
    text = point;
  }
  const value = FIGURE.test(text) ? Number(text.replace('\u2212', '-')) * scale : withUnit(text, column.dimension, place, problems);
  if (value === BROKEN) return BROKEN;
  if (!Number.isFinite(value)) {
    problems.push({ ...place, message: `\`${short(text)}\` is too large for a figure`, cure: 'Check what was read' });
    return BROKEN;
  }
  if (column.owner === 'pedal' && column.column === 'travel' && !(value >= -ROUNDING && value <= 1 + ROUNDING)) {
    problems.push({
      ...place,
      message: `\`pedal.travel\` must lie between 0 % and 100 %, not at ${Number((value * 100).toPrecision(6))} %`,
      cure: 'Check the figure, and the unit in the first line',
    });
    return BROKEN;
  }
  return value;
}

/** Of a share of 1: what the conversion of units may take. */
const ROUNDING = 1e-9;

function withUnit(
  text: string,
  dimension: Dimension,
  place: Pick<CsvProblem, 'line' | 'column'>,
  problems: CsvProblem[],
): number | typeof BROKEN {
  const isNumber = !/^[-+\u2212]?(?:nan|n\/?a|inf(?:inity)?|null|none|-+|#.*)$/i.test(text);
  const read = isNumber ? readQuantity(text, 0, dimension) : undefined;
  if (read?.form === 'quantity' && read.quantity !== undefined && read.problems.length === 0 && read.quantity.tolerance === undefined) {
    return read.quantity.nominal;
  }
  const fault = read?.form === 'quantity' ? read.problems[0] : undefined;
  problems.push({
    ...place,
    message: fault === undefined ? `\`${short(text)}\` is no reading` : `\`${short(text)}\` is no reading: ${fault.message}`,
    cure: fault?.cure ?? 'Write a figure; leave the cell empty where none was taken',
  });
  return BROKEN;
}

function placeOf({ line, column }: { readonly line: number; readonly column: number }): Pick<CsvProblem, 'line' | 'column'> {
  return { line, column };
}

function short(text: string): string {
  const line = text.replace(/\s+/g, ' ');
  return line.length > 40 ? `${line.slice(0, 39)}…` : line;
}

/** A column of the table by its name; undefined where the linkage has none of that name. */
export function columnIn(definition: Definition, name: string): ReadColumn | undefined {
  const dot = name.indexOf('.');
  const owner = name.slice(0, Math.max(0, dot));
  const key = name.slice(dot + 1);
  const found = tablesOf(definition, owner).find((columns) => Object.hasOwn(columns, key))?.[key];
  if (found === undefined) return undefined;
  const perLength = key === 'ratio' && definition.pedal?.kind === 'cable';
  return { owner, column: key, dimension: perLength ? 'angle-per-length' : found.dimension };
}

function columnsOf(definition: Definition, owner: string): readonly string[] {
  return tablesOf(definition, owner).flatMap((columns) => Object.keys(columns));
}

function tablesOf(definition: Definition, owner: string): readonly (typeof COLUMNS)[keyof typeof COLUMNS][] {
  const kinds = [
    ['lever', definition.levers],
    ['rod', definition.rods],
    ['slot', definition.slots],
    ['cable', definition.cables],
    ['plates', definition.plates],
    ['sensor', definition.sensors],
    ['spring', definition.springs],
  ] as const;
  const own = kinds.filter(([, parts]) => parts.some(({ name }) => name === owner)).map(([kind]) => COLUMNS[kind]);
  return owner === 'pedal' ? [COLUMNS.pedal, ...own] : own;
}
