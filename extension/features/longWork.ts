/** Work that a person has asked for and waits for: where it takes long the editor says so, and it can be cancelled. */
import { ProgressLocation, window } from 'vscode';
import type { CancellationToken } from 'vscode';

/**
 * @param title what is being done
 * @param work is given what tells it whether it is still wanted, and ends soon once it is not
 */
export async function sayingWhenLong<T>(
  title: string,
  token: CancellationToken,
  work: (isWanted: () => boolean) => Promise<T>,
): Promise<T> {
  let isCancelled = false;
  const done = work(() => !isCancelled && !token.isCancellationRequested);
  const timer = setTimeout(() => {
    void window.withProgress({ location: ProgressLocation.Notification, title, cancellable: true }, async (_progress, cancelling) => {
      const listening = cancelling.onCancellationRequested(() => {
        isCancelled = true;
      });
      try {
        await done;
      } catch {
        // Whoever awaits the work is told of it.
      } finally {
        listening.dispose();
      }
    });
  }, LONG_MS);
  try {
    return await done;
  } finally {
    clearTimeout(timer);
  }
}

/** What takes less is over before it could be read. */
const LONG_MS = 500;
