/**
 * `npm test`: makes the clone ready, then checks formatting, lint, types, generated files and bundles, and runs every
 * test, here and in real editors. All steps run even if one fails. Ends with the tests' own counts alone on a line;
 * exit 1 if anything failed.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import process from 'node:process';
import { RESULTS_FILE as EDITOR_RESULTS } from './editorHosts/results.mjs';
import { root, setUp } from './setUp.mjs';

const RESULTS = 'build/testResults.json';

const STEPS = [
  ['formatting', 'node_modules/prettier/bin/prettier.cjs', '--check', '.'],
  ['lint', 'node_modules/eslint/bin/eslint.js', '--max-warnings', '0', '.'],
  ['types', 'node_modules/typescript/bin/tsc', '-b'],
  ['generated files', 'scripts/generate.mjs', '--check'],
  ['bundles', 'scripts/build.mjs'],
  ['tests', 'node_modules/vitest/vitest.mjs', 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${RESULTS}`],
  ['tests in real editors', 'scripts/testEditor.mjs'],
];

setUp();
for (const file of [RESULTS, EDITOR_RESULTS]) rmSync(root + file, { force: true });
const failedSteps = STEPS.filter((step) => !passes(step)).map(([name]) => name);
const tests = countTests();
if (tests.skipped > 0) console.log(`${tests.skipped} tests were skipped, and nothing here may be skipped`);
console.log(failedSteps.length === 0 ? 'Every step passed' : `Failed: ${failedSteps.join(', ')}`);
console.log(`${tests.passed} passed, ${tests.failed} failed`);
process.exitCode = failedSteps.length + tests.failed + tests.skipped === 0 ? 0 : 1;

function passes([name, ...words]) {
  console.log(`\n── ${name}`);
  const { status } = spawnSync(process.execPath, words, { cwd: root, env: surroundings(), stdio: 'inherit' });
  return status === 0;
}

/** Colour only on a terminal: some of the tools would also colour what a build machine records. */
function surroundings() {
  if (process.stdout.isTTY) return process.env;
  const plain = { ...process.env, NO_COLOR: '1' };
  delete plain.FORCE_COLOR;
  return plain;
}

function countTests() {
  const [inNode, inEditors] = [countOutside(), countInEditors()];
  return { passed: inNode.passed + inEditors.passed, failed: inNode.failed + inEditors.failed, skipped: inNode.skipped };
}

/** Vitest's own counts. A test file that broke before its tests could run, or no report at all, counts as one failed. */
function countOutside() {
  const report = read(RESULTS);
  if (report === undefined) return { passed: 0, failed: 1, skipped: 0 };
  const isBroken = (file) => file.status === 'failed' && file.assertionResults.every((test) => test.status !== 'failed');
  return {
    passed: report.numPassedTests,
    failed: report.numFailedTests + report.testResults.filter(isBroken).length,
    skipped: report.numPendingTests + report.numTodoTests,
  };
}

/** No report, because an editor could not be had or did not start, counts as one failed. */
function countInEditors() {
  return read(EDITOR_RESULTS) ?? { passed: 0, failed: 1 };
}

function read(file) {
  try {
    return JSON.parse(readFileSync(root + file, 'utf8'));
  } catch {
    return undefined;
  }
}
