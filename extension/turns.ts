/** Giving way: what takes long lets the editor have its turn, in which requests are cancelled and texts change. */

/** Comes back once everything that was waiting has had its turn. */
export function nextTurn(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 0);
  });
}
