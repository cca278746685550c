/** The example of each problem code has that problem, where its carets stand, and no other that is not marked. */
import { describe, expect, it } from 'vitest';
import { PROBLEM_CODES, type ProblemCode } from '../../src/definition/codes.ts';
import { PROBLEM_DOCS } from '../../src/definition/problemDocs.ts';
import type { ProblemDoc, UnshownProblemDoc } from '../../src/definition/problemDocs/problemDoc.ts';
import { checkProblems } from '../support/checkProblems.ts';
import { takeApart } from '../support/marks.ts';

const DOCS: Readonly<Record<ProblemCode, ProblemDoc | UnshownProblemDoc>> = PROBLEM_DOCS;
const SHOWN = PROBLEM_CODES.flatMap((code) => {
  const doc = DOCS[code];
  return 'example' in doc ? [{ code, example: doc.example }] : [];
});

it('shows every problem but that of a file too large to show', () => {
  expect(PROBLEM_CODES.filter((code) => !SHOWN.some((shown) => shown.code === code))).toEqual(['file-too-large']);
  expect(Object.keys(DOCS).sort()).toEqual([...PROBLEM_CODES].sort());
});

describe.each(PROBLEM_CODES)('%s', (code) => {
  it('says what is wrong and what to do, in sentences', () => {
    expect(DOCS[code].what).toMatch(/^[A-Z].*\.$/);
    expect(DOCS[code].cure).toMatch(/^[A-Z].*\.$/);
  });
});

describe.each(SHOWN)('the example of $code', ({ code, example }) => {
  it('has the problem, and what else is marked', () => {
    const { expected } = takeApart(example);
    expect(expected.filter(({ place }) => place.endsWith(`[${code}]`)).length).toBeGreaterThan(0);
    // A mark without words would do for any message.
    for (const { words } of expected) expect(words).not.toBe('');
    expect(checkProblems(example).problems.map((problem) => problem.code)).toContain(code);
  });
});
