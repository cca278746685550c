/** What is wrong with a CSV file, at its place there. */
export interface CsvProblem {
  /** From 1. */
  readonly line: number;
  /** From 1, in UTF-16 code units. */
  readonly column: number;
  /** A sentence without a full stop. */
  readonly message: string;
  readonly cure?: string;
  /** Whether it is of one reading alone, which is left out of the fit; by any other the file cannot be used. */
  readonly leavesOut?: boolean;
}

/** Of one file; more are not told. */
export const MOST_PROBLEMS = 50;

/** Of a cell. */
export function placeOf({ line, column }: { readonly line: number; readonly column: number }): Pick<CsvProblem, 'line' | 'column'> {
  return { line, column };
}
