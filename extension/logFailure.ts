/** What fails where nobody waits for it, or of which a person was told no more than what it means to them: the rest is in the log. */
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

/** @param during what was being done, in words */
export function noteFailure(during: string, error: unknown): void {
  log?.failed(error, during);
}
