/** Whatever stands in the file, its single failures and its snap-backs are told or refused in words, and the page takes what is told. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { showReturns } from '../../src/picture/returns.ts';
import { traceReturn } from '../../src/picture/returnTraces.ts';
import { showAnswers } from '../../src/picture/showAnswers.ts';
import { isAnswered } from '../../src/protocol/guards.ts';
import { solve } from '../../src/solve.ts';
import { FILES } from './shown.ts';

/** @returns whether there were failures, and whether there was a snap-back */
function checkText(text: string): readonly [boolean, boolean] {
  const answers = solve(text);
  const returns = showReturns(answers);
  expect(returns === undefined, text).toBe(answers.study === undefined);
  if (returns !== undefined) expect(isAnswered.returns(structuredClone(returns)), text).toBe(true);
  const failure = returns?.rows[text.length % returns.rows.length]?.failure;
  const trace = traceReturn(answers, failure);
  if ('why' in trace) {
    expect(trace.why, text).toMatch(/^\S.*[^.]$/);
    return [returns !== undefined, false];
  }
  expect(isAnswered.trace(structuredClone(trace)), text).toBe(true);
  expect(trace.rotations, text).toHaveLength(showAnswers(answers)!.picture.levers.length);
  return [returns !== undefined, true];
}

describe('telling of failures of anything', () => {
  test('survives files with a line taken out', () => {
    const told = { failures: 0, motions: 0 };
    for (const { text } of FILES) {
      const lines = text.split('\n');
      const kept = lines.flatMap((line, k) => (line.trim() === '' || line.trim().startsWith('#') ? [] : [k]));
      for (const k of kept.filter((_, i) => i % EVERY === 0)) {
        const [hasFailures, hasMotion] = checkText(lines.filter((_, other) => other !== k).join('\n'));
        if (hasFailures) told.failures++;
        if (hasMotion) told.motions++;
      }
    }
    expect(told.failures).toBeGreaterThan(5);
    expect(told.motions).toBeGreaterThan(5);
  });

  test('survives figures changed to anything', () => {
    const figure = fc.constantFrom('0', '-1', '1e9', '-1e300', '1e-300', '360 deg', '0 mm', '90', '[1, 2]', 'null');
    fc.assert(
      fc.property(fc.nat(FILES.length - 1), fc.nat(10_000), figure, (file, at, to) => {
        const { text } = FILES[file]!;
        const figures = [...text.matchAll(/-?\d+(?:\.\d+)?/g)].slice(1);
        const found = figures[at % figures.length]!;
        checkText(text.slice(0, found.index) + to + text.slice(found.index + found[0].length));
      }),
      { numRuns: 20 },
    );
  });
});

/** Each takes some tenths of a second. */
const EVERY = 8;
