/** Stand-in for logs in the editor's Output. */

/** What was written into each that lives, by its name. */
export const logs = new Map<string, unknown[]>();

/** Which were shown, in order. */
export const shownLogs: string[] = [];

export function createOutputChannel(name: string, { log }: { readonly log: boolean }) {
  if (!log || logs.has(name)) throw new Error(`${name} is no log, or there twice`);
  const written: unknown[] = [];
  logs.set(name, written);
  return {
    info: (line: string) => written.push(line),
    error: (error: unknown) => written.push(error),
    show: () => void shownLogs.push(name),
    dispose: () => logs.delete(name),
  };
}
