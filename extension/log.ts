/**
 * What the extension says of itself, for a person who looks for why something failed: the log under its name in the editor's Output. It is
 * made with its first line, and shown only to who asks for it.
 */
import { commands, window } from 'vscode';
import type { Disposable, LogOutputChannel } from 'vscode';

export interface Log {
  info(line: string): void;
  /** What was thrown, with where that was. @param during what was being done, in words */
  failed(error: unknown, during?: string): void;
  /** In the editor's Output, which gets the focus. */
  show(): void;
  dispose(): void;
}

export const SHOW_LOG = 'pedalToPlate.showLog';

export function keepLog(): Log {
  let channel: LogOutputChannel | undefined;
  let isDisposed = false;
  const use = (act: (on: LogOutputChannel) => void): void => {
    if (isDisposed) return;
    channel ??= window.createOutputChannel('Pedal to Plate', { log: true });
    act(channel);
  };
  return {
    info: (line) => use((to) => to.info(line)),
    failed: (error, during) => use((to) => to.error(during === undefined ? thrown(error) : `${during}: ${traceOf(error)}`)),
    show: () => use((to) => to.show()),
    dispose() {
      isDisposed = true;
      channel?.dispose();
    },
  };
}

/** Lets a person ask for it, until disposed of. */
export function offerLog(log: Pick<Log, 'show'>): Disposable {
  return commands.registerCommand(SHOW_LOG, () => log.show());
}

const thrown = (error: unknown): Error | string => (error instanceof Error ? error : String(error));

/** The message and where it was thrown; a trace begins with the message. */
const traceOf = (error: unknown): string => (error instanceof Error ? (error.stack ?? error.message) : String(error));
