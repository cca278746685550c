/**
 * What fails where nobody waits for it, or of which a person was told no more than what it means to them: the rest is in the log. So is what
 * went as it should, where how it went is asked for later.
 */
import { Disposable } from 'vscode';
import type { Log } from './log.ts';

type Place = Pick<Log, 'failed'> & Partial<Pick<Log, 'info'>>;

let log: Place | undefined;

/** Until disposed of. @param place without `info`, how something went is told nowhere */
export function failuresGoTo(place: Place): Disposable {
  log = place;
  return new Disposable(() => (log = undefined));
}

/** Waits for work; why it failed goes to the log. */
export function logFailure(work: Promise<unknown>): void {
  void work.catch((error: unknown) => log?.failed(error));
}

/** How something went. */
export function noteLine(line: string): void {
  log?.info?.(line);
}

/** @param during what was being done, in words */
export function noteFailure(during: string, error: unknown): void {
  log?.failed(error, during);
}
