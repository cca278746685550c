/** What fails where nobody waits for it, so that no person could be told. */
import { Disposable } from 'vscode';
import type { Log } from './log.ts';

let log: Pick<Log, 'failed'> | undefined;

/** Until disposed of. */
export function failuresGoTo(place: Pick<Log, 'failed'>): Disposable {
  log = place;
  return new Disposable(() => (log = undefined));
}

/** Waits for work; why it failed goes to the log. */
export function logFailure(work: Promise<unknown>): void {
  void work.catch((error: unknown) => log?.failed(error));
}
