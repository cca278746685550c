/**
 * The extension's door. Opening it costs next to nothing: the core is read and run when the first throttle file is open or something is
 * asked for, after the editor has been told that the extension is awake.
 */
import { Disposable, workspace } from 'vscode';
import type { ExtensionContext } from 'vscode';
import { isThrottleFile } from './language.ts';
import { logFailure } from './logFailure.ts';
import { offerNewFile } from './newFile.ts';
import type { ServedThrottleFiles } from './throttleFiles.ts';
import { offerView } from './viewDoor.ts';

export function activate(context: ExtensionContext): void {
  const files = serveWhenNeeded(context);
  context.subscriptions.push(
    offerNewFile(),
    files,
    offerView(async () => (await files.served())?.views),
  );
}

interface Serving {
  /** Starts everything that throttle files need, where that has not happened; undefined where it has ended. */
  served(): Promise<ServedThrottleFiles | undefined>;
  dispose(): void;
}

/** Starts by itself with the first throttle file, and ends when disposed of. */
function serveWhenNeeded({ extensionUri }: ExtensionContext): Serving {
  let starting: Promise<ServedThrottleFiles | undefined> | undefined;
  let started: ServedThrottleFiles | undefined;
  let isDisposed = false;
  let timer: number | undefined;
  const start = async (): Promise<ServedThrottleFiles | undefined> => {
    const { serveThrottleFiles } = await import('./throttleFiles.ts').catch(tryAgainLater);
    if (!isDisposed) started = serveThrottleFiles(extensionUri);
    return started;
  };
  const served = (): Promise<ServedThrottleFiles | undefined> => {
    opening.dispose();
    return isDisposed ? Promise.resolve(undefined) : (starting ??= start());
  };
  const startSoon = (): void => {
    timer ??= setTimeout(() => logFailure(served()), 0);
  };
  const listen = (): Disposable =>
    workspace.onDidOpenTextDocument((document) => {
      if (isThrottleFile(document)) startSoon();
    });
  /** What could not be loaded is loaded anew with the next throttle file or command. */
  const tryAgainLater = (error: unknown): never => {
    starting = undefined;
    timer = undefined;
    if (!isDisposed) opening = listen();
    throw error;
  };
  let opening = listen();
  if (workspace.textDocuments.some(isThrottleFile)) startSoon();
  return {
    served,
    dispose() {
      isDisposed = true;
      opening.dispose();
      clearTimeout(timer);
      started?.dispose();
      started = undefined;
    },
  };
}
