/** The lines of a CSV file of readings after its first, cell by cell. */
import { columnName } from '../../definition/schema/columnName.ts';
import { tooGreatOf } from '../../definition/greatestSignal.ts';
import type { Dimension } from '../../definition/dimensions.ts';
import { readQuantity } from '../../definition/quantity/quantity.ts';
import type { CsvCell, CsvText, Separator } from './csv.ts';
import type { Planned } from './csvColumns.ts';
import { MOST_PROBLEMS, placeOf, type CsvProblem } from './csvProblem.ts';
import type { ReadingsRow } from './readings.ts';

/** Those that are understood; of very many problems the first end it. @param count cells of the first line */
export function rowsOf(
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
    const values = plan.map((planned, at) => {
      const { index, column } = planned;
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
      return figureOf(cell, planned, separator, pointed, problems);
    });
    if (!values.includes(BROKEN)) rows.push({ line: first.line, values: values.filter((value) => value !== BROKEN) });
    if (problems.length > MOST_PROBLEMS) break;
  }
  problems.push(...beyondSensors(rows, lines, plan));
  problems.sort((a, b) => a.line - b.line || a.column - b.column);
  return rows;
}

/** Readings that no sensor can have given: they stay in their rows, and the fit leaves them out. */
function beyondSensors(
  rows: readonly ReadingsRow[],
  lines: readonly (readonly CsvCell[])[],
  plan: readonly Planned[],
): readonly CsvProblem[] {
  return plan.flatMap(({ column, index, greatest }, at): readonly CsvProblem[] => {
    if (greatest === undefined) return [];
    const all = rows.flatMap(({ line, values }) => (values[at] === undefined ? [] : [{ line, value: values[at] }]));
    const beyond = all.filter(({ value }) => value > greatest.most).map(({ line, value }) => ({ place: line, value }));
    return tooGreatOf(columnName(column), beyond, all.length, greatest).map(({ place: line, message, cure, isUnit }) => {
      const cell = lines.find(([first]) => first?.line === line)?.[index];
      return { ...placeOf(cell ?? { line: line ?? 1, column: 1 }), message, cure, ...(!isUnit && { leavesOut: true }) };
    });
  });
}

const BROKEN = Symbol('a cell that cannot be read');

const FIGURE = /^[-+\u2212]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?$/;
const COMMA_FIGURE = /^[-+\u2212]?\d*,\d+(?:[eE][-+]?\d+)?(?=$|\s|[^\d,.])/;

function figureOf(
  cell: CsvCell,
  { column, scale }: Planned,
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

function short(text: string): string {
  const line = text.replace(/\s+/g, ' ');
  return line.length > 40 ? `${line.slice(0, 39)}…` : line;
}
