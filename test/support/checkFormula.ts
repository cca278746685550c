/**
 * Reads values and requirements whose expected problems stand under the text:
 *
 *     reach + 3
 *             ^ formula-dimension: Write the unit
 *
 * The carets mark the place, the words after the colon are a part of the message or of the cure. A problem that is not
 * written down fails, and so does one that does not appear.
 */
import { expect } from 'vitest';
import type { Dimension } from '../../src/definition/dimensions.ts';
import { readLet, readRequirement, readValue } from '../../src/definition/formula/readFormula.ts';
import type { LetReading, RequirementReading, ValueReading } from '../../src/definition/formula/readFormula.ts';
import { kindOf } from '../../src/definition/formula/kind.ts';
import type { RequirementScope } from '../../src/definition/formula/scope.ts';
import type { Problem } from '../../src/definition/problem.ts';

const COLUMNS: Readonly<Record<string, Readonly<Record<string, Dimension>>>> = {
  pedal: { travel: 'number', effort: 'force', release: 'force' },
  shaft: { rotation: 'angle', opening: 'angle', ratio: 'number', closing: 'torque' },
  bank_a: { area: 'area', fraction: 'number' },
};

/** A file with three lets, one of them broken, one that stands further down, and three parts. */
export const SCOPE: RequirementScope = {
  lets: [
    { name: 'reach', kind: kindOf('length'), nominal: 0.038 },
    { name: 'lead', kind: kindOf('angle'), nominal: 0.5 },
    { name: 'n', kind: kindOf('number'), nominal: 2 },
  ],
  broken: new Set(['spoilt']),
  later: new Set(['below']),
  owners: Object.keys(COLUMNS),
  columnsOf: (owner) => Object.keys(COLUMNS[owner] ?? {}),
  columnDimension: (owner, column) => (owner === 'unread' ? 'unreadable' : COLUMNS[owner]?.[column]),
};

/** Where the text stands in an imagined file. */
export const AT = 1000;

export function checkValue(expected: Dimension, annotated: string): ValueReading {
  return check(annotated, (text) => readValue(text, AT, expected, SCOPE));
}

export function checkLet(annotated: string): LetReading {
  return check(annotated, (text) => readLet(text, AT, SCOPE));
}

export function checkRequirement(annotated: string): RequirementReading {
  return check(annotated, (text) => readRequirement(text, AT, SCOPE));
}

/** The first problem's edits turn one text into the other, and the other is sound. */
export function checkMended(expected: Dimension, text: string, mended: string): ValueReading {
  const [problem] = readValue(text, AT, expected, SCOPE).problems;
  expect(problem && apply(text, problem), text).toBe(mended);
  return checkValue(expected, mended);
}

/** The problem offers no edit. */
export function checkNoEdit(expected: Dimension, text: string): void {
  const problems = readValue(text, AT, expected, SCOPE).problems;
  expect(problems.length, text).toBeGreaterThan(0);
  expect(
    problems.every((problem) => problem.replacements === undefined),
    text,
  ).toBe(true);
}

function apply(text: string, problem: Problem): string | undefined {
  if (problem.replacements === undefined) return undefined;
  const edits = [...problem.replacements].sort((a, b) => b.span.start - a.span.start);
  return edits.reduce((whole, edit) => whole.slice(0, edit.span.start - AT) + edit.text + whole.slice(edit.span.end - AT), text);
}

function check<R extends { readonly problems: readonly Problem[] }>(annotated: string, read: (text: string) => R): R {
  const lines = annotated.includes('\n') ? dedent(annotated) : [annotated];
  const [text = '', ...marks] = lines;
  const expected = marks
    .map((mark) => /^(\s*)(\^+) ([a-z-]+)(?:: (.*))?$/.exec(mark))
    .map((match) => ({
      start: match?.[1]?.length ?? -1,
      end: (match?.[1]?.length ?? 0) + (match?.[2]?.length ?? 0),
      code: match?.[3],
      words: match?.[4] ?? '',
    }));
  const reading = read(text);
  const actual = reading.problems.map(({ span, code, message, cure = '' }, i) => {
    const words = expected[i]?.words ?? '';
    const told = `${message} | ${cure}`;
    return { start: span.start - AT, end: span.end - AT, code, words: told.includes(words) ? words : told };
  });
  expect(actual, text).toEqual(expected);
  for (const problem of reading.problems) expect(problem.cure, `${text}: ${problem.message}`).toBeTruthy();
  return reading;
}

function dedent(annotated: string): string[] {
  const lines = annotated.split('\n').filter((line) => line.trim() !== '');
  const indent = /^ */.exec(lines[0] ?? '')?.[0].length ?? 0;
  return lines.map((line) => line.slice(indent));
}
