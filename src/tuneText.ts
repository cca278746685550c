/** A text with a `tune` block in, the dimensions that give its curve out: for every face that tunes. */
import type { Definition } from './definition/definition.ts';
import { applyEdits, setFigure } from './definition/edit.ts';
import type { Replacement } from './definition/problem.ts';
import { solve } from './solve.ts';
import type { SolveWith } from './studies/tune/answers.ts';
import type { Progress } from './studies/tune/search.ts';
import { whyNotTuned } from './studies/tune/setting.ts';
import { tune, type Tuned, type TuneOptions } from './studies/tune/tune.ts';

export type TuneOutcome =
  | (Tuned & { readonly kind: 'tuned' })
  /** `why` is a sentence without a full stop. */
  | { readonly kind: 'not-tuned'; readonly why: string };

/** Yields as it goes; whoever asks for the next step decides whether to go on. Never throws, whatever the text. */
export function* tuneText(text: string, options?: TuneOptions): Generator<Progress, TuneOutcome> {
  const answers = solve(text);
  yield { done: 0, of: 1, best: undefined };
  const { study, definition } = answers;
  if (study === undefined || definition === undefined) return { kind: 'not-tuned', why: 'Nothing in the file can be solved' };
  const why = whyNotTuned(study);
  if (why !== undefined) return { kind: 'not-tuned', why };
  const solveWith: SolveWith = (values) => solve(applyEdits(text, editsOfValues(text, definition, values)));
  const tuned = yield* tune(answers, study, solveWith, options);
  return tuned === undefined ? { kind: 'not-tuned', why: 'The file cannot be tuned' } : { kind: 'tuned', ...tuned };
}

/** The free values written anew, and nothing else. @param values SI, in the order of `tune.free` */
export function editsOfValues(text: string, { tune: block, lets }: Definition, values: readonly number[]): readonly Replacement[] {
  return (block?.free ?? []).flatMap((free, i) => {
    const { value } = lets[free.let]!;
    return setFigure(text, value, values[i]!) ?? [];
  });
}
