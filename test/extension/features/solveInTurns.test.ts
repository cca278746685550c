import { expect, test } from 'vitest';
import { solveInTurns } from '../../../extension/features/solveInTurns.ts';
import { offeredFixes } from '../../../src/language/offeredFixes.ts';
import { solveFix, type Solvers } from '../../../src/language/solvedFix.ts';
import { solve } from '../../../src/solve.ts';
import { solveFor } from '../../../src/studies/solveFor.ts';
import { BINDING } from '../../support/editorRequests.ts';

const answers = solve(BINDING);
const offers = offeredFixes(answers, { start: 0, end: BINDING.length });

/** The real ones, counted. */
function counted(): { readonly solvers: Solvers; readonly steps: () => number } {
  let count = 0;
  return {
    solvers: {
      solve: (text) => {
        count++;
        return solve(text);
      },
      solveFor: (...asked) => {
        count++;
        return solveFor(...asked);
      },
    },
    steps: () => count,
  };
}

test('in turns comes out what comes out at once, in as many steps', async () => {
  expect(offers.length).toBeGreaterThan(1);
  for (const offer of offers) {
    const [atOnce, inTurns] = [counted(), counted()];
    const expected = solveFix(answers, offer, atOnce.solvers);
    expect(await solveInTurns(answers, offer, () => true, inTurns.solvers)).toEqual(expected);
    expect(inTurns.steps()).toBe(atOnce.steps());
  }
});

test('the editor has its turn between any two steps', async () => {
  const { solvers, steps } = counted();
  let turn = 0;
  const stepsByTurn: number[] = [];
  await solveInTurns(
    answers,
    offers[0]!,
    () => {
      stepsByTurn[turn++] = steps();
      return true;
    },
    solvers,
  );
  expect(stepsByTurn).toEqual(stepsByTurn.map((_, index) => index));
  expect(turn).toBeGreaterThan(1);
});

test('what is not wanted any more ends after the step that was under way', async () => {
  const { solvers, steps } = counted();
  let asked = 0;
  expect(await solveInTurns(answers, offers[0]!, () => asked++ < 1, solvers)).toBeUndefined();
  expect(steps()).toBe(1);
});

test('what goes wrong in a step is not hidden', async () => {
  const broken = (): never => {
    throw new Error('broken');
  };
  await expect(solveInTurns(answers, offers[0]!, () => true, { solve: broken, solveFor: broken })).rejects.toThrow('broken');
});
