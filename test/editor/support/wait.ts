/** Waiting for the editor: on its events, with a deadline. Nothing here sleeps. */
import type { Event } from 'vscode';

/** A machine that is busy with two editors and all other tests takes its time; what is asserted comes within a second otherwise. */
const DEADLINE_MS = 60_000;

/** What the editor dropped, since something of its own came between, is asked of it once more after so long. */
const AGAIN_MS = 5000;

/**
 * What `read` gives as soon as it gives something: now, or after one of the events. Fails after the deadline, saying what was
 * waited for and how things stand.
 *
 * @param what in words that follow “waited for”
 * @param read undefined while it is not there yet
 * @param state how things stand, for the message
 * @param again asked once more from time to time, as a person would; absent where once must do
 */
export function until<T>(
  what: string,
  event: Event<unknown>,
  read: () => T | undefined,
  state: () => string = () => '',
  again?: () => void,
): Promise<T> {
  return new Promise((resolve, reject) => {
    const settle = (finish: () => void): void => {
      clearTimeout(timer);
      clearInterval(asking);
      subscription.dispose();
      finish();
    };
    const look = (): void => {
      const value = read();
      if (value !== undefined) settle(() => resolve(value));
    };
    const timer = setTimeout(() => {
      settle(() => reject(new Error(`waited ${DEADLINE_MS / 1000} s for ${what}\n${state()}`.trim())));
    }, DEADLINE_MS);
    const asking = again === undefined ? undefined : setInterval(again, AGAIN_MS);
    const subscription = event(look);
    look();
  });
}
