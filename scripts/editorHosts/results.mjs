/**
 * Reads what `test/editor/run.ts` prints inside an editor: lines of the Test Anything Protocol between whatever else the
 * editor has to say. What was promised and did not come has failed.
 */

/** Where a run leaves its counts and what failed, below the clone's folder. */
export const RESULTS_FILE = 'build/editorTests/results.json';

/**
 * @typedef {object} Results
 * @property {string} version of the editor; empty where it said none
 * @property {number} passed
 * @property {number} failed at least 1 unless every test that was promised passed and the run came to its end
 * @property {readonly import('../failures.mjs').Failure[]} failures what failed, in the order of the run; empty where `failed` is 0
 */

/**
 * @param {(line: string) => void} print takes what a person should see
 * @returns {{hear: (line: string) => void, finished: Promise<void>, results: () => Results}} `finished` resolves with the last line
 */
export function collectResults(print) {
  const state = { version: '', promised: 0, passed: 0, failed: 0, ended: false };
  const failures = [];
  let finish = () => undefined;
  const finished = new Promise((resolve) => (finish = resolve));
  const hear = (line) => {
    const [, version] = /^# editor (\S+)$/.exec(line) ?? [];
    if (version !== undefined) state.version = version;
    const [, promised] = /^1\.\.(\d+)$/.exec(line) ?? [];
    // A window that is loaded anew promises more.
    if (promised !== undefined) state.promised += Number(promised);
    const [, outcome, name] = /^(ok|not ok) \d+ - (.*)$/.exec(line) ?? [];
    if (outcome !== undefined) {
      state[outcome === 'ok' ? 'passed' : 'failed'] += 1;
      print(`  ${outcome === 'ok' ? '✓' : '✗'} ${name}`);
      if (outcome === 'not ok') failures.push({ name, reason: [] });
    }
    if (line.startsWith('#   ')) {
      const reason = line.slice('#   '.length);
      print(`      ${reason}`);
      failures.at(-1)?.reason.push(reason);
    }
    if (line === '# end') {
      state.ended = true;
      const left = state.promised - state.passed - state.failed;
      if (left > 0) print(`  ✗ ${left} more were not run`);
      finish();
    }
  };
  const results = () => {
    const missing = Math.max(0, state.promised - state.passed - state.failed);
    const broken = missing === 0 && state.failed === 0 && (!state.ended || state.promised === 0) ? 1 : 0;
    const untold = [
      ...(missing > 0 ? [{ name: `${missing} more were not run`, reason: [] }] : []),
      ...(broken > 0 ? [{ name: state.promised === 0 ? 'there was no test' : 'the run did not come to its end', reason: [] }] : []),
    ];
    const failed = state.failed + missing + broken;
    return { version: state.version, passed: state.passed, failed, failures: [...failures, ...untold] };
  };
  return { hear, finished, results };
}
