/** Giving way: what takes long lets the editor have its turn, in which requests are cancelled and texts change. */

/** Comes back once everything that was waiting has had its turn. */
export function nextTurn(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 0);
  });
}

/**
 * Goes through work that is cut into small pieces, with a turn of the editor after every few milliseconds.
 * @param demand called after each of these turns with what the work said last; throws where it is not wanted any more
 */
export async function inTurns<Said>(work: Iterable<Said>, demand: (said: Said) => void): Promise<void> {
  let until = Date.now() + PIECE_MS;
  for (const said of work) {
    if (Date.now() < until) continue;
    await nextTurn();
    demand(said);
    until = Date.now() + PIECE_MS;
  }
}

/** Half of what a picture on the screen takes at 60 a second: typing stays as it is. */
export const PIECE_MS = 8;
