/** What the docs say of a problem code. */

export interface ProblemDoc {
  /** What is wrong, in a sentence or two; Markdown. */
  readonly what: string;
  /** A small text that has it. Carets in its comments stand under what the problem is about, as in the tests' `checkProblems`. */
  readonly example: string;
  /** What to do about it, in a sentence or two; Markdown. */
  readonly cure: string;
}

/** For a problem that no text of a bearable length can show. */
export type UnshownProblemDoc = Omit<ProblemDoc, 'example'>;
