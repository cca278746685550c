/**
 * Readings of a run as figures, from a CSV file beside the throttle file.
 *
 * The first line of a CSV file names the columns, each as in the table, with its unit in brackets: `tps.signal [V]`. Without brackets a
 * figure takes the unit of its place, as in the throttle file; of a column in percent that would be a guess, so `[%]` must be written, or
 * `[1]` for shares of 1. A cell may also bring its own unit. An empty cell, or `~`, is a reading that was not taken. With commas between
 * the cells a decimal comma is refused; with semicolons or tabs it is a decimal point, as long as no other cell has a point.
 */
import type { Definition } from '../../definition/definition.ts';
import type { Run } from '../../definition/measured.ts';
import { MOST_ROWS } from '../../definition/schema/measured.ts';
import { parseCsv } from './csv.ts';
import { planOf } from './csvColumns.ts';
import { MOST_PROBLEMS, type CsvProblem } from './csvProblem.ts';
import { rowsOf } from './csvRows.ts';
import type { Readings } from './readings.ts';

export interface CsvReadings {
  /** The lines that were understood; undefined where none can be. With any problem they are not all. */
  readonly readings: Readings | undefined;
  /** In the order of the file; of very many the first. */
  readonly problems: readonly CsvProblem[];
}

/** Largest CSV file that is read, in characters: four times what 10 000 lines of ten figures take. */
export const LARGEST_CSV = 4_000_000;

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

function failed(problem: CsvProblem): CsvReadings {
  return { readings: undefined, problems: [problem] };
}
