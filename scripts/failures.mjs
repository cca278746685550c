/** What failed, told again in one place: a reader of a long log sees its end alone. */
import { inCore } from './inCore.mjs';

/** A reason may be as long as a file; the whole of it stands further up in the log. */
const MOST_REASON_LINES = 8;
/** Shared evenly by the steps that failed; the counts that follow, and what a build machine adds, still fit in a hundred and forty. */
const MOST_LINES = 100;

/**
 * @typedef {object} Failure
 * @property {string} name of a test in full, or what else failed
 * @property {readonly string[]} reason lines; empty where there is nothing to say
 */

/**
 * What failed by Vitest's JSON report; undefined stands for no report at all. A file that broke outside its tests is named itself.
 *
 * @param {object | undefined} report
 * @param {string} root the clone's folder, with a separator at its end: a file is named below it
 * @returns {readonly Failure[]}
 */
export function failuresOfReport(report, root) {
  if (report === undefined) return [{ name: 'the tests left no report', reason: [] }];
  return report.testResults.flatMap((file) => {
    const name = file.name.replace(root, '');
    const failed = file.assertionResults.filter(({ status }) => status === 'failed');
    if (isBroken(file)) return [{ name, reason: linesOf(file.message) }];
    return failed.map((test) => ({
      name: [name, ...test.ancestorTitles, test.title].join(' > '),
      reason: test.failureMessages
        .flatMap(linesOf)
        .filter((line) => !BY_THE_WAY.test(line))
        .map(inCore),
    }));
  });
}

/** Lines of a trace through the runner and what else is not ours. */
const BY_THE_WAY = /^\s+at .*(?:node_modules|node:|<anonymous>)/;

/** Whether a file of Vitest's report failed, and none of its tests did: it could not be read, or broke before or behind them. */
export function isBroken(file) {
  return file.status === 'failed' && file.assertionResults.every(({ status }) => status !== 'failed');
}

/**
 * The lines that tell what failed; empty where nothing did. Where there is much of it, reasons are cut before names are.
 *
 * @param {readonly {readonly step: string, readonly failures: readonly Failure[], readonly printed?: readonly string[]}[]} steps that failed;
 *   `printed`: what one had to say that names no failures
 * @returns {readonly string[]}
 */
export function toldAgain(steps) {
  const room = Math.floor(MOST_LINES / steps.length) - 2;
  return steps.flatMap(({ step, failures, printed = [] }) => {
    const told = failures.flatMap((failure) => linesOfFailure(failure, Math.floor(room / failures.length) - 1));
    const lines = [...told, ...printed.map((line) => `  ${line}`)];
    const left = lines.length - room;
    return [`✗ ${step}`, ...(left > 0 ? [...lines.slice(0, room), `  … and ${left} more lines`] : lines)];
  });
}

function linesOfFailure({ name, reason }, room) {
  const shown = reason.slice(0, Math.min(MOST_REASON_LINES, Math.max(0, room)));
  return [`  ✗ ${name}`, ...shown.map((line) => `      ${line}`)];
}

/** Lines of a text that say something, without colours. */
export function linesOf(text) {
  return (text ?? '')
    .split('\n')
    .map((line) => line.replace(COLOUR, '').trimEnd())
    .filter((line) => line !== '');
}

const COLOUR = new RegExp(`${String.fromCharCode(27)}\\[[0-9;]*m`, 'g');
