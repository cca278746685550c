import { afterEach, expect, test, vi } from 'vitest';
import { solveInTurns } from '../../../extension/features/solveInTurns.ts';
import type { FixWork } from '../../../src/language/fixWork.ts';
import type { SolvedFix } from '../../../src/language/solvedFix.ts';

const DONE: SolvedFix = { kind: 'unsolved', reason: 'as it were' };

/** Work of so many steps, each of which takes some milliseconds of a clock that stands still else. */
function workOf(steps: number, each: number): FixWork & { readonly pieces: number[] } {
  let [now, left] = [0, steps];
  vi.spyOn(Date, 'now').mockImplementation(() => now);
  const pieces: number[] = [];
  return {
    pieces,
    get result() {
      return left === 0 ? DONE : undefined;
    },
    go(shouldStop) {
      let taken = 0;
      do {
        left--;
        taken++;
        now += each;
      } while (left > 0 && !shouldStop());
      pieces.push(taken);
      return left === 0 ? DONE : undefined;
    },
  };
}

afterEach(() => {
  vi.restoreAllMocks();
});

test('works in pieces of a few milliseconds, with the editor’s turn between', async () => {
  const work = workOf(20, 2);
  let turns = 0;
  const counting = setInterval(() => turns++, 0);
  expect(await solveInTurns(work, () => true)).toBe(DONE);
  clearInterval(counting);
  // 8 ms of it at once.
  expect(work.pieces).toEqual([4, 4, 4, 4, 4]);
  expect(turns).toBeGreaterThan(0);
});

test('what is not wanted any more ends after the piece that was under way, and can be gone on with', async () => {
  const work = workOf(20, 2);
  let asked = 0;
  expect(await solveInTurns(work, () => asked++ < 1)).toBeUndefined();
  expect(work.pieces).toEqual([4]);
  expect(await solveInTurns(work, () => true)).toBe(DONE);
  expect(work.pieces).toHaveLength(5);
});

test('what is done is told at once, wanted or not', async () => {
  const work = workOf(1, 2);
  await solveInTurns(work, () => true);
  expect(await solveInTurns(work, () => false)).toBe(DONE);
  expect(work.pieces).toEqual([1]);
});

test('what goes wrong in a piece is not hidden', async () => {
  const broken: FixWork = {
    result: undefined,
    go: () => {
      throw new Error('broken');
    },
  };
  await expect(solveInTurns(broken, () => true)).rejects.toThrow('broken');
});
