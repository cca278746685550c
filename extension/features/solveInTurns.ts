/** Works out a fix without holding up the editor, which has its turn after every few milliseconds: in it the fix may be cancelled. */
import type { FixWork } from '../../src/language/fixWork.ts';
import type { SolvedFix } from '../../src/language/solvedFix.ts';
import { nextTurn, PIECE_MS } from '../turns.ts';

/**
 * @param work is gone on with, also where it was begun and left before
 * @param isWanted asked between the pieces
 * @returns undefined where it is not wanted any more
 */
export async function solveInTurns(work: FixWork, isWanted: () => boolean): Promise<SolvedFix | undefined> {
  if (work.result !== undefined) return work.result;
  while (isWanted()) {
    const until = Date.now() + PIECE_MS;
    const fix = work.go(() => Date.now() >= until);
    if (fix !== undefined) return fix;
    await nextTurn();
  }
  return undefined;
}
