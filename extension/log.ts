/**
 * What the extension says of itself, for a person who looks for why something failed: the log under its name in the editor's Output. It is
 * made with its first line, and never shown by itself.
 */
import { window } from 'vscode';
import type { LogOutputChannel } from 'vscode';

export interface Log {
  info(line: string): void;
  /** What was thrown, with where that was. */
  failed(error: unknown): void;
  dispose(): void;
}

export function keepLog(): Log {
  let channel: LogOutputChannel | undefined;
  let isDisposed = false;
  const write = (line: (to: LogOutputChannel) => void): void => {
    if (isDisposed) return;
    channel ??= window.createOutputChannel('Pedal to Plate', { log: true });
    line(channel);
  };
  return {
    info: (line) => write((to) => to.info(line)),
    failed: (error) => write((to) => to.error(error instanceof Error ? error : String(error))),
    dispose() {
      isDisposed = true;
      channel?.dispose();
    },
  };
}
