/** What fails where nobody waits for it, so that no person could be told. */
import { EventEmitter } from 'vscode';

/** Waits for work; why it failed goes to the editor's log, as whatever a listener throws. */
export function logFailure(work: Promise<unknown>): void {
  void work.catch((error: unknown) => {
    const failed = new EventEmitter<unknown>();
    failed.event((why) => {
      throw why;
    });
    failed.fire(error);
    failed.dispose();
  });
}
