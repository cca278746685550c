/**
 * Works out a fix without holding up the editor. Solving for a figure is a row of long steps; after each of them the editor has its turn,
 * in which the fix may be cancelled.
 *
 * The core works it out in one go, the same way each time. So it is begun again after every turn, with the steps that are done
 * already answered from memory: what is repeated is the little between them.
 */
import { solveFix, type SolvedFix, type Solvers } from '../../src/language/solvedFix.ts';
import type { OfferedFix } from '../../src/language/offeredFixes.ts';
import { solve, type Answers } from '../../src/solve.ts';
import { solveFor, type Solutions } from '../../src/studies/solveFor.ts';
import { nextTurn } from '../turns.ts';

/**
 * @param isWanted asked between the steps
 * @param solvers what the steps are; others where they are counted
 * @returns undefined where it is not wanted any more
 */
export async function solveInTurns(
  answers: Answers,
  offer: OfferedFix,
  isWanted: () => boolean,
  solvers: Solvers = { solve, solveFor },
): Promise<SolvedFix | undefined> {
  const solved: Answers[] = [];
  const found: Solutions[] = [];
  while (isWanted()) {
    const step = oneStep();
    let nextSolved = 0;
    let nextFound = 0;
    try {
      return solveFix(answers, offer, {
        solve: (text) => (solved[nextSolved++] ??= step(() => solvers.solve(text))),
        solveFor: (...asked) => (found[nextFound++] ??= step(() => solvers.solveFor(...asked))),
      });
    } catch (error) {
      if (error !== PAUSE) throw error;
    }
    await nextTurn();
  }
  return undefined;
}

const PAUSE = new Error('The editor has its turn');

/** Takes one step; at the next one it stops, by what `solveInTurns` catches. */
function oneStep(): <T>(take: () => T) => T {
  let isTaken = false;
  return (take) => {
    if (isTaken) throw PAUSE;
    isTaken = true;
    return take();
  };
}
