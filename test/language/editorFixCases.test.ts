/** The quick fixes that are tried in real editors: each does here what it should do there, and none that the code offers is left out. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ruleNameOf, takeDocApart } from '../../scripts/ruleDocs.mjs';
import { PROBLEM_CODES } from '../../src/definition/codes.ts';
import { applyEdits } from '../../src/definition/edit.ts';
import { PROBLEM_DOCS } from '../../src/definition/problemDocs.ts';
import { readDefinition } from '../../src/definition/read.ts';
import { FINDING_CODES } from '../../src/findings/codes.ts';
import { textFixes } from '../../src/language/fixes.ts';
import { offeredFixes, type OfferedFix } from '../../src/language/offeredFixes.ts';
import { solveFix } from '../../src/language/solvedFix.ts';
import { solve, type Answers } from '../../src/solve.ts';
import { FIGURE_CASES } from '../editor/fixCases/figureCases.ts';
import { announced, mended, type FixCase } from '../editor/fixCases/fixCase.ts';
import { TEXT_CASES } from '../editor/fixCases/textCases.ts';
import { cutPlaces } from '../support/cutPlaces.ts';
import { takeApart } from '../support/marks.ts';
import { withoutStacks } from '../support/withoutStacks.ts';

const nameOf = ({ code, titles }: FixCase): string => `${code}: ${titles[0] ?? ''}`;

describe('a fix of the text that is tried in editors', () => {
  it.each(TEXT_CASES.map((each) => [nameOf(each), each] as const))('%s', (_name, fixCase) => {
    const answers = solve(fixCase.text);
    const fix = textFixes(answers, cursorOf(fixCase)).find(({ title }) => title === fixCase.titles[0]);
    expect(fix?.code).toBe(fixCase.code);
    expect(applyEdits(fixCase.text, fix?.edits ?? [])).toBe(mended(fixCase));
    expect(wrongsOf(answers).filter((code) => code === fixCase.code)).toHaveLength(1);
    expect(wrongsOf(solve(mended(fixCase)))).toEqual([]);
  });

  it('has every code whose problems carry edits', () => {
    const found = codesWithEdits();
    expect(found.length).toBeGreaterThan(10);
    const tried = new Set<string | undefined>(TEXT_CASES.map(({ code }) => code));
    expect(found.filter((code) => !tried.has(code))).toEqual([]);
  });
});

describe('a fix that solves for a figure and is tried in editors', () => {
  it.each(FIGURE_CASES.map((each) => [nameOf(each), each] as const))('%s', (_name, fixCase) => {
    const [solvedTitle, offeredTitle] = fixCase.titles;
    const answers = solve(fixCase.text);
    const offer = offeredFixes(answers, cursorOf(fixCase)).find(({ title }) => title === offeredTitle);
    expect([offer?.code, offer && figureOf(offer)]).toEqual([fixCase.code, fixCase.figure]);
    const solved = offer && solveFix(answers, offer);
    expect(solved).toMatchObject({ kind: 'solved', title: solvedTitle, mends: true });
    expect(applyEdits(fixCase.text, solved?.kind === 'solved' ? solved.edits : [])).toBe(mended(fixCase));
    const [before, after] = [[...wrongsOf(answers), ...announced(fixCase)], wrongsOf(solve(mended(fixCase)))];
    expect(after.filter((code) => code === fixCase.code || !before.includes(code))).toEqual([]);
  });

  it('has every finding that is offered one, and every kind of figure', () => {
    const offers = offersOfDocs();
    const tried = new Set(FIGURE_CASES.map(({ code }) => code));
    const figures = new Set(FIGURE_CASES.map(({ figure }) => figure));
    expect(offers.length).toBeGreaterThan(30);
    expect(offers.filter(({ code }) => !tried.has(code)).map(({ code }) => code)).toEqual([]);
    expect(offers.map(figureOf).filter((figure) => !figures.has(figure))).toEqual([]);
  });
});

function cursorOf({ text, at }: FixCase): { readonly start: number; readonly end: number } {
  const start = text.indexOf(at);
  expect([start >= 0, text.indexOf(at, start + 1)]).toEqual([true, -1]);
  return { start, end: start };
}

function wrongsOf({ problems, findings }: Answers): readonly string[] {
  return [...problems, ...findings].filter(({ severity }) => severity !== 'note').map(({ code }) => code);
}

/** Block and key of the path that is written, with the list of a lever's parts between them. */
function figureOf({ writes }: OfferedFix): string {
  const words = writes.split('.').filter((word) => !/^\d+$/.test(word));
  const [block = '', , parts = ''] = words;
  if (block === 'let') return block;
  const key = words.at(-1) ?? '';
  return ['arms', 'drums'].includes(parts) ? `${block}.${parts}.${key}` : `${block}.${key}`;
}

/**
 * Seen on every documented problem and on what a slip of the pen makes of the files of the cases: beside a word or behind its first letter,
 * for further inside the word is as wrong. A line of several of them slips once.
 */
function codesWithEdits(): readonly string[] {
  const documented = Object.values(PROBLEM_DOCS).flatMap((doc) => ('example' in doc ? [takeApart(doc.example).text] : []));
  const slipped = new Set<string>();
  const slips = TEXT_CASES.flatMap((fixCase) => {
    const text = mended(fixCase);
    return [...text.matchAll(/.*\n?/g)].flatMap(({ 0: line, index }) => {
      if (slipped.has(line)) return [];
      slipped.add(line);
      return cutPlaces(line).flatMap((at) => SLIPS.map(([gone, put]) => text.slice(0, index + at) + put + text.slice(index + at + gone)));
    });
  });
  const found = new Set<string>();
  for (const text of [...documented, ...slips]) {
    for (const { code, replacements } of withoutStacks(() => readDefinition(text)).problems)
      if (replacements !== undefined) found.add(code);
  }
  return PROBLEM_CODES.filter((code) => found.has(code));
}

/** How many characters go, and what comes in their place. */
const SLIPS = [
  [1, ''],
  [0, ')'],
  [1, ','],
] as const;

/** Offered for the examples of the findings' pages, and for each of them with one figure half as large again. */
function offersOfDocs(): readonly OfferedFix[] {
  const examples = FINDING_CODES.map((code) => {
    const source = readFileSync(new URL(`../../src/findings/rules/${ruleNameOf(code)}.ts`, import.meta.url), 'utf8');
    return takeApart(takeDocApart(source).example).text;
  });
  const others = examples.flatMap((text) =>
    [...text.matchAll(/\b\d+(?:\.\d+)?(?= (?:mm|deg|N))/g)].map(
      ({ 0: figure, index }) => text.slice(0, index) + String(1.5 * Number(figure)) + text.slice(index + figure.length),
    ),
  );
  return [...examples, ...others].flatMap((text) => {
    const answers = solve(text);
    // What is only told beside its cause is no problem of its own that an editor could show.
    const shown = new Set(answers.findings.map(({ code }) => code));
    return offeredFixes(answers, { start: 0, end: text.length }).filter(({ code }) => shown.has(code));
  });
}
