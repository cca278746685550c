/** The tests inside an editor that has two folders open and trusts neither. */
import { report } from './report.ts';
import { restricted } from './suites/restricted.ts';

export function run(): Promise<void> {
  return report([restricted]);
}
