/** Two texts in, what has changed between them out: for every face that compares. */
import { solve } from './solve.ts';
import { compareAnswers, type CompareOptions } from './studies/compare.ts';
import type { Comparison } from './studies/compare/comparison.ts';

/** Never throws, whatever the texts. */
export function compareTexts(oldText: string, newText: string, options?: CompareOptions): Comparison {
  return compareAnswers(solve(oldText), solve(newText), options);
}
