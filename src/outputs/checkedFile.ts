/** What was asked to be checked, and what came of it: what the outputs for other programs are made from. */
import type { Answers } from '../solve.ts';
import { hasError } from './checkText.ts';

interface Asked {
  /** As the person gave it; `<stdin>` for standard input. */
  readonly name: string;
  /**
   * URI of the file, percent-encoded: relative to the folder where the program runs, absolute where it lies outside.
   * Undefined for standard input.
   */
  readonly uri: string | undefined;
}

export interface ReadFile extends Asked {
  readonly answers: Answers;
}

/** A file that there is not, or whose content is no text. */
export interface UnreadFile extends Asked {
  readonly answers?: undefined;
  /** Why it could not be read. */
  readonly reason: string;
}

export type CheckedFile = ReadFile | UnreadFile;

/**
 * `sound`: nothing is an error and every requirement is passed; `wrong`: something is, or a requirement is not passed, or there is nothing
 * that could be solved, so that nothing was checked; `unusable`: the file could not be read, or nothing of it could be understood.
 */
export type FileOutcome = 'sound' | 'wrong' | 'unusable';

export function outcomeOf({ answers }: CheckedFile): FileOutcome {
  if (answers?.definition === undefined) return 'unusable';
  return answers.study === undefined || hasError(answers) ? 'wrong' : 'sound';
}
