/** How a file stands by its single failures. */
import type { Answers } from '../solve.ts';
import type { FileOutcome } from './checkedFile.ts';

/**
 * `sound`: every plate closes with all parts, and with each lost in turn; a cable that seizes does not count, since it holds what it opens
 * on every throttle. `wrong`: one does not, or that was not checked, or the text has an error. `unusable`: nothing of it can be understood.
 */
export function returnOutcome(answers: Answers): FileOutcome {
  if (answers.definition === undefined) return 'unusable';
  const failures = answers.failures();
  if (failures === undefined || failures.notChecked !== undefined) return 'wrong';
  if (answers.problems.some(({ severity }) => severity === 'error')) return 'wrong';
  const asked = [failures.whole, ...failures.rows.filter(({ failure }) => failure?.kind !== 'cable-seized')];
  return asked.every(({ outcome }) => outcome === 'closes') ? 'sound' : 'wrong';
}
