/** Runs suites for the process outside, which reads what is logged: see `scripts/editorHosts/results.mjs`. */
import { version } from 'vscode';
import { runSuites, type Suite } from './suite.ts';

/**
 * Rejects where a test failed, so that the editor ends with an exit code that says so.
 *
 * @param goOn what is run in the place of the end, as loading the window anew
 */
export async function report(suites: readonly Suite[], goOn?: () => Promise<never>): Promise<void> {
  const print = (line: string): void => console.log(line);
  print(`# editor ${version}`);
  const failed = await runSuites(suites, print);
  if (goOn !== undefined) return goOn();
  print('# end');
  if (failed > 0) throw new Error(`${failed} failed`);
}
