/**
 * Carries a quick fix out as the editor would: `$0` in the text is the cursor, the fix is chosen by its title, its edits are made, and the
 * new text is solved. It must then read as expected to the letter, and what the fix was for must be gone.
 */
import { expect } from 'vitest';
import { applyEdits } from '../../src/definition/edit.ts';
import { fixOfAll, textFixes, type TextFix } from '../../src/language/fixes.ts';
import { offeredFixes, type OfferedFix } from '../../src/language/offeredFixes.ts';
import { solveFix, type SolvedFix } from '../../src/language/solvedFix.ts';
import { solve, type Answers } from '../../src/solve.ts';

export interface AtCursor {
  readonly answers: Answers;
  readonly cursor: { readonly start: number; readonly end: number };
}

export function atCursor(marked: string): AtCursor {
  const at = marked.indexOf('$0');
  if (at < 0 || marked.includes('$0', at + 1)) throw new Error('There must be one $0');
  return { answers: solve(marked.slice(0, at) + marked.slice(at + 2)), cursor: { start: at, end: at } };
}

/** A fix of the text. @param before with `$0` */
export function checkFix(before: string, after: string, title: string): TextFix {
  const { answers, cursor } = atCursor(before);
  const fix = chosen(textFixes(answers, cursor), title);
  expect(applyEdits(answers.text, fix.edits)).toBe(after);
  const left = solve(after).problems.filter(({ code }) => code === fix.code).length;
  expect(left).toBe(answers.problems.filter(({ code }) => code === fix.code).length - fix.problems.length);
  if (fix.problems.length > 1) expect(fixOfAll(answers, fix.code)).toEqual(fix);
  return fix;
}

/** A fix that solves for a figure. @param before with `$0`; @param title as offered; @param result as solved */
export function checkSolvedFix(before: string, after: string, title: string, result: string): OfferedFix {
  const { answers, cursor } = atCursor(before);
  const offer = chosen(offeredFixes(answers, cursor), title);
  const solved = solveFix(answers, offer);
  if (solved.kind !== 'solved') throw new Error(solved.reason);
  expect(solved.title).toBe(result);
  expect(applyEdits(answers.text, solved.edits)).toBe(after);
  const again = solve(after);
  const meant = ({ findings }: Answers): number => findings.filter(({ code, part }) => code === offer.code && part === offer.part).length;
  expect(meant(again)).toBeLessThan(meant(answers));
  expect(wrongs(again).filter((each) => !wrongs(answers).includes(each))).toEqual([]);
  return offer;
}

/** What an offered fix comes to. */
export function solvedAt(before: string, title: string): SolvedFix {
  const { answers, cursor } = atCursor(before);
  return solveFix(answers, chosen(offeredFixes(answers, cursor), title));
}

export function offeredAt(before: string): readonly string[] {
  const { answers, cursor } = atCursor(before);
  return offeredFixes(answers, cursor).map(({ title }) => title);
}

function chosen<T extends { readonly title: string }>(fixes: readonly T[], title: string): T {
  const fix = fixes.find((each) => each.title === title);
  if (fix === undefined) throw new Error(`There is no fix "${title}" among:\n${fixes.map((each) => each.title).join('\n')}`);
  return fix;
}

function wrongs({ problems, findings }: Answers): readonly string[] {
  return [...problems, ...findings]
    .filter(({ severity }) => severity === 'error')
    .map((mark) => `${mark.code} ${'part' in mark ? mark.part : ''}`);
}
