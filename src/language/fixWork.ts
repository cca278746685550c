/**
 * A fix that is worked out piece by piece: after every piece whoever waits for it may do something else, or ask for it no more.
 *
 * Solving for a figure is a row of steps, an outcome of the linkage or a whole text solved. Each piece begins the same work anew, with the
 * steps that are done answered from memory: what is repeated is the little between them.
 */
import { solve, type Answers } from '../solve.ts';
import { solveFor, type Solutions } from '../studies/solveFor.ts';
import type { OfferedFix } from './offeredFixes.ts';
import { solveFix, type SolvedFix, type Solvers } from './solvedFix.ts';

export interface FixWork {
  /** What came out; undefined until all is done. */
  readonly result: SolvedFix | undefined;
  /**
   * Does another piece, one step at least; the result where that was the last one.
   * @param shouldStop asked after each step: whether the piece ends there
   */
  go(shouldStop: () => boolean): SolvedFix | undefined;
}

/**
 * @param answers of the text that the fix is for
 * @param solvers what the steps are; others where they are counted
 */
export function fixWork(answers: Answers, offered: OfferedFix, solvers: Solvers = { solve, solveFor }): FixWork {
  let result: SolvedFix | undefined;
  const texts = new Map<string, Answers>();
  const searches = new Map<string, Search>();

  return {
    get result() {
      return result;
    },
    go(shouldStop) {
      if (result !== undefined) return result;
      let isBegun = false;
      const endsHere = (): boolean => {
        if (isBegun && shouldStop()) return true;
        isBegun = true;
        return false;
      };
      try {
        result = solveFix(answers, offered, {
          solve(text) {
            const known = texts.get(text);
            if (known !== undefined) return known;
            if (endsHere()) throw STOPPED;
            const solved = solvers.solve(text);
            texts.set(text, solved);
            return solved;
          },
          solveFor(mechanism, question) {
            // A second figure is solved for in another linkage.
            const key = JSON.stringify([question, [...mechanism.nominal]]);
            const search: Search = searches.get(key) ?? { known: new Map(), found: undefined };
            searches.set(key, search);
            const found = search.found ?? solvers.solveFor(mechanism, question, { known: search.known, shouldStop: endsHere });
            if (found.kind === 'stopped') throw STOPPED;
            search.found = found;
            return found;
          },
        });
      } catch (error) {
        if (error !== STOPPED) throw error;
      }
      // What it took is of no more use.
      if (result !== undefined) for (const memory of [texts, searches]) memory.clear();
      return result;
    },
  };
}

interface Search {
  readonly known: Map<number, number>;
  found: Solutions | undefined;
}

/** Leaves the work from within; it goes no further than the piece. */
const STOPPED = new Error('The piece ends');
