/**
 * The extension's door. Opening it costs next to nothing: the core is read and run when the first throttle file is open or something is
 * asked for, after the editor has been told that the extension is awake.
 */
import { Disposable, version, workspace } from 'vscode';
import type { ExtensionContext } from 'vscode';
import { isThrottleFile } from './language.ts';
import { keepLog, offerLog, type Log } from './log.ts';
import { offerNewFile } from './newFile.ts';
import type { ThreadPort } from './studies/serveStudies.ts';
import type { ServedThrottleFiles } from './throttleFiles.ts';
import { offerView } from './viewDoor.ts';

export function activate(context: ExtensionContext): void {
  const log = keepLog();
  const files = serveWhenNeeded(context, log);
  context.subscriptions.push(
    offerNewFile(),
    offerLog(log),
    files,
    log,
    offerView(async () => (await files.served())?.views),
  );
}

/** What a thread of the extension's own does, which runs this bundle and is no extension. */
export async function serveStudies(port: ThreadPort): Promise<void> {
  const throttleFiles = await import('./throttleFiles.ts');
  throttleFiles.serveStudies(port);
}

interface Serving {
  /** Starts everything that throttle files need, where that has not happened; undefined where it has ended. */
  served(): Promise<ServedThrottleFiles | undefined>;
  dispose(): void;
}

/** Starts by itself with the first throttle file, and ends when disposed of. */
function serveWhenNeeded({ extension, extensionUri }: ExtensionContext, log: Log): Serving {
  let starting: Promise<ServedThrottleFiles | undefined> | undefined;
  let started: ServedThrottleFiles | undefined;
  let isDisposed = false;
  let timer: number | undefined;
  const start = async (): Promise<ServedThrottleFiles | undefined> => {
    const { serveThrottleFiles } = await import('./throttleFiles.ts').catch(tryAgainLater);
    if (isDisposed) return undefined;
    log.info(`Version ${versionOf(extension.packageJSON)}, in VS Code ${version}`);
    started = serveThrottleFiles(extensionUri, log);
    return started;
  };
  const served = (): Promise<ServedThrottleFiles | undefined> => {
    opening.dispose();
    return isDisposed ? Promise.resolve(undefined) : (starting ??= start());
  };
  const startSoon = (): void => {
    timer ??= setTimeout(() => void served().catch((error: unknown) => log.failed(error)), 0);
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

/** Of the manifest, as it stands there. */
function versionOf(manifest: unknown): string {
  return typeof manifest === 'object' && manifest !== null && 'version' in manifest ? String(manifest.version) : 'unknown';
}
