/**
 * The extension's door. Opening it costs next to nothing: the core is read and run when the first throttle file is open, after the editor
 * has been told that the extension is awake.
 */
import { Disposable, workspace } from 'vscode';
import type { ExtensionContext } from 'vscode';
import { isThrottleFile } from './language.ts';
import { offerNewFile } from './newFile.ts';

export function activate(context: ExtensionContext): void {
  context.subscriptions.push(offerNewFile(), serveFromFirstFile(context));
}

/** Starts everything that throttle files need once there is one, and ends it when disposed of. */
function serveFromFirstFile({ extensionUri }: ExtensionContext): Disposable {
  let served: Disposable | undefined;
  let isDisposed = false;
  let timer: number | undefined;
  const start = (): void => {
    if (timer !== undefined) return;
    opening.dispose();
    timer = setTimeout(() => {
      void import('./throttleFiles.ts').then(({ serveThrottleFiles }) => {
        if (!isDisposed) served = serveThrottleFiles(extensionUri);
      });
    }, 0);
  };
  const opening = workspace.onDidOpenTextDocument((document) => {
    if (isThrottleFile(document)) start();
  });
  if (workspace.textDocuments.some(isThrottleFile)) start();
  return new Disposable(() => {
    isDisposed = true;
    opening.dispose();
    clearTimeout(timer);
    served?.dispose();
  });
}
