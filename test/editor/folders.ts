/** The tests inside an editor that has two folders open: a workspace file with both. */
import { report } from './report.ts';
import { folders } from './suites/folders.ts';

export function run(): Promise<void> {
  return report([folders]);
}
