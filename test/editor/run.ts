/** The tests inside an editor: bundled into one file for each kind of host, which calls `run`. */
import { report } from './report.ts';
import { activation } from './suites/activation.ts';
import { problems } from './suites/problems.ts';

/** Activation comes first: later suites open throttle files, and an extension stays active. */
export function run(): Promise<void> {
  return report([activation, problems]);
}
