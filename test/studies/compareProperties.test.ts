import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareTexts } from '../../src/compareTexts.ts';
import { solve, type Answers } from '../../src/solve.ts';
import { compareAnswers, isSame } from '../../src/studies/compare.ts';
import type { Comparison } from '../../src/studies/compare/comparison.ts';
import '../support/seed.ts';
import { BASE, edited } from './compareFiles.ts';

const folder = new URL('../../examples/', import.meta.url);
const examples = readdirSync(folder)
  .filter((name) => name.endsWith('.throttle.yaml'))
  .map((name) => ({ name, text: readFileSync(new URL(name, folder), 'utf8') }));

const known = new Map<string, Answers>();

/** Of a file that is compared with several. */
function solved(text: string): Answers {
  const answers = known.get(text) ?? solve(text);
  known.set(text, answers);
  return answers;
}

describe.each(examples)('$name', ({ text }) => {
  it('is the same as itself', () => {
    const comparison = compareTexts(text, text);
    expect(isSame(comparison)).toBe(true);
    expect(comparison.curves).toEqual([]);
    expect(comparison.verdict.worse).toBe(false);
  });

  it.each(examples)('against $name is the mirror of the other way round', ({ text: other }) => {
    expectMirrored(solved(text), solved(other));
  });
});

describe('any two files', () => {
  const edits = [
    ['open: 68 deg', 'open: 60 deg'],
    ['reach: 30 mm', 'reach: 31 mm'],
    ['reach + 2 mm', '32 mm'],
    ['slack: 1 mm', 'slack: 1 mmm'],
    ['  second: {from', '  last: {from'],
    ['kind: rod_end', 'kind: clevis'],
    ['pivot: centre', 'pivot: [91, 10]'],
    ['max: 100 mm', 'max: 90 mm'],
    ['  light:', '  easy:'],
    ['  first: {lever: shaft, rate: 2.4 N*mm/deg, preload: 180 N*mm}\n', ''],
    ['limits:\n  transmission: [35 deg, 25 deg]\n', 'limits:\n  transmission: [60 deg, 55 deg]\n'],
  ] as const;
  const text = fc.uniqueArray(fc.constantFrom(...edits), { maxLength: 4 }).map((chosen) => edited(...chosen));

  it('are mirrored when they are compared the other way round', () => {
    fc.assert(
      fc.property(text, text, (one, other) => expectMirrored(solve(one), solve(other))),
      { numRuns: 25 },
    );
  });

  it('are compared without a throw, however they are cut', () => {
    fc.assert(
      fc.property(fc.nat(BASE.length), fc.nat(BASE.length), fc.string({ maxLength: 8 }), (from, to, between) => {
        const cut = BASE.slice(0, from) + between + BASE.slice(to);
        const answers = solve(cut);
        expect(compareAnswers(solved(BASE), answers).was).toBe('solved');
        expect(isSame(compareAnswers(answers, solve(cut)))).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});

it('keeps pace with a file that is as large as one may be and renames everything in it', () => {
  const many = (name: string): string =>
    `format: 1\nlet:\n${Array.from({ length: 6000 }, (_, i) => `  ${name}${i}: ${i + 1} mm\n`).join('')}`;
  const { file } = compareTexts(many('a'), many('b'));
  expect(file.renamed).toHaveLength(6000);
  expect(file.added).toEqual([]);
}, 20_000);

function expectMirrored(one: Answers, other: Answers): void {
  expect(canonical(mirror(compareAnswers(other, one)))).toEqual(canonical(compareAnswers(one, other)));
}

/** The same comparison with its sides exchanged. */
function mirror(comparison: Comparison): Comparison {
  const swapped = swap(comparison) as Comparison;
  return { ...swapped, verdict: comparison.verdict };
}

const PARTNERS: Readonly<Record<string, string>> = { was: 'is', is: 'was', added: 'gone', gone: 'added' };

function swap(part: unknown): unknown {
  if (Array.isArray(part)) return part.map(swap);
  if (typeof part !== 'object' || part === null) return part;
  return Object.fromEntries(
    Object.entries(part).map(([key, value]: [string, unknown]) => {
      if (key === 'difference') return [key, negated(value)];
      if ((key === 'side' || key === 'unread') && typeof value === 'string') return [key, PARTNERS[value]];
      return [PARTNERS[key] ?? key, swap(value)];
    }),
  );
}

function negated(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(negated);
  return typeof value === 'number' ? 0 - value : value;
}

/** Without what is told in the second file's names and order only, and what a verdict looks at one way. */
function canonical({ file, verdict: _, ...rest }: Comparison): unknown {
  return sorted({
    ...rest,
    file: {
      ...file,
      values: file.values.map(({ path: __, name: ___, ...change }) => change),
      words: file.words.map(({ was, is }) => ({ was, is })),
    },
    outcomes: rest.outcomes.map(({ label: _label, part: _part, ...outcome }) => outcome),
    curves: rest.curves.map(({ column: _column, ...curve }) => curve),
    requirements: rest.requirements.map(({ was, is }) => ({ was, is })),
  });
}

function sorted(part: unknown): unknown {
  if (Array.isArray(part)) {
    const items = part.map(sorted);
    const isCurve = items.every((item) => typeof item === 'number' || item === null);
    return isCurve ? items : items.sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1));
  }
  if (typeof part !== 'object' || part === null) return part;
  return Object.fromEntries(
    Object.entries(part)
      .filter(([, value]) => value !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, value]: [string, unknown]) => [key, sorted(value)]),
  );
}
