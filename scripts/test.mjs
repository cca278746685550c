/**
 * `npm test`: makes the clone ready, then checks formatting, lint, types, generated files and bundles, and runs every
 * test, here and in real editors. All steps run even if one fails. Ends with what failed, told again, how long each step took, and the tests'
 * own counts alone on a line; exit 1 if anything failed.
 */
import { spawn } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import process from 'node:process';
import { RESULTS_FILE as EDITOR_RESULTS } from './editorHosts/results.mjs';
import { failuresOfReport, isBroken, linesOf, toldAgain } from './failures.mjs';
import { root, setUp } from './setUp.mjs';

const RESULTS = 'build/testResults.json';

const FORMATTING = ['formatting', 'node_modules/prettier/bin/prettier.cjs', '--check', '.'];
const LINT = ['lint', 'node_modules/eslint/bin/eslint.js', '--max-warnings', '0', '.'];
const TYPES = ['types', 'node_modules/typescript/bin/tsc', '-b'];
const GENERATED = ['generated files', 'scripts/generate.mjs', '--check'];
const BUNDLES = ['bundles', 'scripts/build.mjs'];
const TESTS = ['tests', 'node_modules/vitest/vitest.mjs', 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${RESULTS}`];
const EDITORS = ['tests in real editors', 'scripts/testEditor.mjs'];

setUp();
for (const file of [RESULTS, EDITOR_RESULTS]) rmSync(root + file, { force: true });
const began = performance.now();
const times = [];
// Each of the checks works on one core. The tests take all cores, and begin with those that lint leaves, which takes longer than the others
// together. An editor waits some of its time, and what is quick to check fills it.
const linting = runWhole(LINT);
const made = [shown(await runWhole(GENERATED)), shown(await runWhole(BUNDLES))];
const tested = await run(TESTS);
const linted = shown(await linting);
const checking = inTurn([FORMATTING, TYPES]);
const edited = await run(EDITORS);
const outcomes = [linted, ...(await checking).map(shown), ...made, tested, edited];
const tests = countTests();
const failedSteps = outcomes
  .filter(({ status }) => status !== 0)
  .map(({ step, lines }) => ({ step, failures: failuresOf(step), printed: lines }));
if (failedSteps.length > 0) console.log(['\n── what failed', ...toldAgain(failedSteps), ''].join('\n'));
if (tests.skipped > 0) console.log(`${tests.skipped} tests were skipped, and nothing here may be skipped`);
console.log(`Time: ${[...times, `in all ${secondsSince(began)}`].join(', ')}`);
console.log(failedSteps.length === 0 ? 'Every step passed' : `Failed: ${failedSteps.map(({ step }) => step).join(', ')}`);
console.log(`${tests.passed} passed, ${tests.failed} failed`);
process.exitCode = failedSteps.length + tests.failed + tests.skipped === 0 ? 0 : 1;

async function inTurn(steps) {
  const ended = [];
  for (const step of steps) ended.push(await runWhole(step));
  return ended;
}

/** Shows what a step prints as it comes. */
async function run([step, ...words]) {
  console.log(`\n── ${step}`);
  const child = spawn(process.execPath, words, { cwd: root, env: surroundings(), stdio: 'inherit' });
  return { step, status: await timed(step, child), lines: [] };
}

/** Keeps what a step prints, which is not to be seen amid what another shows as it comes. */
async function runWhole([step, ...words]) {
  const env = process.stdout.isTTY ? { FORCE_COLOR: '1', ...surroundings() } : surroundings();
  const child = spawn(process.execPath, words, { cwd: root, env, stdio: ['inherit', 'pipe', 'pipe'] });
  let printed = '';
  for (const stream of [child.stdout, child.stderr]) stream.setEncoding('utf8').on('data', (text) => (printed += text));
  const status = await timed(step, child);
  return { step, status, printed };
}

function shown({ step, status, printed }) {
  console.log(`\n── ${step}\n${printed.trimEnd()}`);
  return { step, status, lines: linesOf(printed) };
}

/** The exit code as `statusOf` has it; how long it took is told in the end. */
async function timed(step, child) {
  const from = performance.now();
  const status = await statusOf(child);
  times.push(`${step} ${secondsSince(from)}`);
  return status;
}

function secondsSince(from) {
  return `${Math.round((performance.now() - from) / 1000)} s`;
}

/** The exit code; null where a signal ended it, or where it did not start. */
function statusOf(child) {
  return new Promise((resolve) => child.on('error', () => resolve(null)).on('close', (status) => resolve(status)));
}

/** By the tests' own reports; empty for a step that leaves none. */
function failuresOf(step) {
  const reported =
    step === TESTS[0] ? failuresOfReport(read(RESULTS), root) : step === EDITORS[0] ? (read(EDITOR_RESULTS)?.failures ?? []) : undefined;
  if (reported?.length === 0) return [{ name: 'outside of every test: its own messages are further up', reason: [] }];
  return reported ?? [];
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
