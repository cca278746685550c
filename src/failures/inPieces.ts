/** What takes long, worked out a piece at a time or all at once. */

/** Kept once it is known, and gone on with where it was left. */
export interface InPieces<Answer> {
  /** The answer, after all that is left of it. */
  get(): Answer;
  /** A piece from one step to the next, the answer at last; at once where it is known. */
  go(): Generator<void, Answer>;
}

/** @param make begun when the answer is first asked for, if ever */
export function inPieces<Answer>(make: () => Generator<void, Answer>): InPieces<Answer> {
  let work: Generator<void, Answer> | undefined;
  let known: { readonly answer: Answer } | undefined;
  const isKnown = (): boolean => {
    if (known !== undefined) return true;
    const step = (work ??= make()).next();
    if (step.done === true) known = { answer: step.value };
    return known !== undefined;
  };
  return {
    get() {
      while (!isKnown());
      return known!.answer;
    },
    *go() {
      while (!isKnown()) yield;
      return known!.answer;
    },
  };
}
