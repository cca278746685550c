/**
 * The readings of all runs of a file, from its own rows and from the CSV files beside it, with what is wrong with those files at the place
 * in the throttle file that names them.
 */
import type { ColumnReference, Definition } from '../../definition/definition.ts';
import type { Measured, Run } from '../../definition/measured.ts';
import type { Problem } from '../../definition/problem.ts';
import type { Span } from '../../definition/span.ts';
import { columnName } from '../../definition/schema/columnName.ts';
import type { CsvProblem } from './csvProblem.ts';
import { readCsv } from './csvReadings.ts';
import { countReadings, inlineReadings, type Readings } from './readings.ts';

/** What stands beside the throttle file under a name. */
export type BesideFile =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'missing' }
  /** `reason` in words that follow the file's name, such as `is a folder, not a file`. */
  | { readonly kind: 'unreadable'; readonly reason: string };

/** Gives what stands beside the throttle file. A face that cannot wait reads the files of `csvNames` before. */
export type ReadBeside = (name: string) => BesideFile;

/** For texts that stand nowhere: none of their files is there. */
export const NOTHING_BESIDE: ReadBeside = () => ({ kind: 'missing' });

/** Names of the CSV files of a file's runs, each once, in its order; empty where it has none. */
export function csvNames({ measured }: Pick<Definition, 'measured'>): readonly string[] {
  return [...new Set((measured?.runs ?? []).flatMap(({ readings }) => (readings.kind === 'file' ? [readings.file.name] : [])))];
}

export interface GatheredRun {
  readonly run: Run;
  readonly readings: Readings;
  /** The CSV file; absent for rows of the throttle file. */
  readonly file?: string;
}

export interface Gathered {
  /** Those whose readings could be read, in file order. */
  readonly runs: readonly GatheredRun[];
  /** Of the CSV files, each at the value of `file`; and too few readings, with these files counted, at the block. */
  readonly problems: readonly Problem[];
  /** The first of them by which nothing can be found; undefined where there is none. */
  readonly refusing: Problem | undefined;
}

export function gatherReadings(definition: Definition, beside: ReadBeside): Gathered {
  const { measured } = definition;
  if (measured === undefined) return { runs: [], problems: [], refusing: undefined };
  const problems: Problem[] = [];
  const leavingOut = new Set<Problem>();
  const runs = measured.runs.flatMap((run): GatheredRun[] => {
    const inline = inlineReadings(run);
    if (inline !== undefined) return [{ run, readings: inline }];
    if (run.readings.kind !== 'file') return [];
    const { name, span } = run.readings.file;
    const found = beside(name);
    if (found.kind !== 'text') {
      problems.push(notRead(name, span, found));
      return [];
    }
    const { readings, problems: faults } = readCsv(found.text, run, definition);
    const told = inCsv(name, span, faults);
    if (faults.every(({ leavesOut }) => leavesOut === true)) told.forEach((each) => leavingOut.add(each));
    problems.push(...told);
    if (readings === undefined) return [];
    problems.push(...(readings.columns.length < 2 ? [] : noiseless(run, readings)));
    return [{ run, readings, file: name }];
  });
  const refusing = problems.find((each) => !leavingOut.has(each));
  const few = refusing !== undefined ? undefined : tooFew(measured, definition, runs);
  return { runs, problems: few === undefined ? problems : [...problems, few], refusing };
}

function notRead(name: string, span: Span, found: Exclude<BesideFile, { kind: 'text' }>): Problem {
  const error = { severity: 'error', span } as const;
  if (found.kind === 'unreadable') return { ...error, code: 'wrong-value', message: `\`${name}\` ${found.reason}` };
  return {
    ...error,
    code: 'unknown-name',
    message: `There is no file \`${name}\` beside this one`,
    cure: 'Put it into the same folder, or write the name of one that is there',
  };
}

function inCsv(name: string, span: Span, faults: readonly CsvProblem[]): readonly Problem[] {
  const told = faults.slice(0, MOST_TOLD).map(({ line, column, message, cure }): Problem => {
    const place = `\`${name}\`, line ${line}, column ${column}`;
    return { code: 'wrong-value', severity: 'error', span, message: `${place}: ${message}`, ...(cure !== undefined && { cure }) };
  });
  const rest = faults.length - told.length;
  if (rest === 0) return told;
  return [...told, { code: 'wrong-value', severity: 'error', span, message: `\`${name}\` has ${rest} more such mistakes` }];
}

/** At one value of `file`. */
const MOST_TOLD = 5;

/** A noise of a column that the CSV file turns out not to have. */
function noiseless({ noise }: Run, { columns }: Readings): readonly Problem[] {
  const names = columns.map(columnName);
  return noise.flatMap(({ column }): readonly Problem[] => {
    const at = names.indexOf(columnName(column));
    if (at > 0) return [];
    const { span } = column satisfies ColumnReference;
    const name = columnName(column);
    const message = at === 0 ? `\`${name}\` says where the pedal is, and counts as exact` : `The run has no readings of \`${name}\``;
    return [{ code: 'wrong-value', severity: 'error', span, message, cure: 'Write a column that the file has, other than the first' }];
  });
}

/** Told here only where a CSV file counts: for rows alone the definition tells it. */
function tooFew({ fit, nameSpan }: Measured, definition: Definition, runs: readonly GatheredRun[]): Problem | undefined {
  if (fit === undefined || csvNames(definition).length === 0) return undefined;
  const count = runs.reduce((sum, { readings }) => sum + countReadings(readings), 0);
  if (count >= fit.length) return undefined;
  return {
    code: 'too-few-readings',
    severity: 'error',
    span: nameSpan,
    message: `${count} ${count === 1 ? 'reading' : 'readings'} cannot tell ${fit.length} dimensions`,
    cure: 'Take names out of `fit`, or take more readings',
  };
}
