/** Tests inside an editor, as data, and their being run one after the other. */
import { closeEverything } from './support/editor.ts';

export interface Suite {
  /** What it is about, as a person would call it. */
  readonly about: string;
  /** Run in this order, each with no editor open at its start; the name states a behaviour. */
  readonly tests: Readonly<Record<string, () => Promise<void>>>;
  /** Set where its tests begin with what is open, and leave that open. */
  readonly leavesOpen?: true;
}

/**
 * Runs the tests and tells each outcome by `print`, a line at a time, in the Test Anything Protocol. Gives up where many fail:
 * each may have waited long, and what was promised and not told counts as failed.
 *
 * @returns how many failed
 */
export async function runSuites(suites: readonly Suite[], print: (line: string) => void): Promise<number> {
  const all = suites.flatMap(({ about, tests, leavesOpen }) =>
    Object.entries(tests).map(([name, test]) => ({
      name: `${about}: ${name}`,
      test,
      closing: leavesOpen === true ? nothing : closeEverything,
    })),
  );
  print(`1..${all.length}`);
  let failed = 0;
  for (const [index, { name, test, closing }] of all.entries()) {
    const start = Date.now();
    const reason = await reasonToFail(test, closing);
    const took = Date.now() - start;
    if (reason !== undefined) failed += 1;
    print(`${reason === undefined ? 'ok' : 'not ok'} ${index + 1} - ${name} (${took} ms)`);
    for (const line of reason?.split('\n') ?? []) print(`#   ${line}`);
    if (failed === MANY) break;
  }
  return failed;
}

const MANY = 3;
const nothing = (): Promise<void> => Promise.resolve();

/** Undefined where the test passed and everything could be closed behind it. */
async function reasonToFail(test: () => Promise<void>, closing: () => Promise<void>): Promise<string | undefined> {
  let reason: string | undefined;
  try {
    await closing();
    await test();
  } catch (error) {
    reason = textOf(error);
  }
  try {
    await closing();
  } catch (error) {
    reason ??= `closing behind it: ${textOf(error)}`;
  }
  return reason;
}

/** Of the trace only where it began: the rest is the editor's. */
function textOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const trace = (error.stack ?? '').split('\n').filter((line) => /^\s+at /.test(line));
  return [error.message, ...trace.slice(0, 3)].join('\n');
}
