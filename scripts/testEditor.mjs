/**
 * `npm run test:editor [-- web|folders|node|restricted]`: bundles the extension and `test/editor/`, and runs the tests in real editors, two at a
 * time. Leaves the counts and what failed in `RESULTS_FILE`, and what each editor had to say beside it.
 */
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import process from 'node:process';
import { buildEditorTests, buildExtension, buildView } from './build.mjs';
import { fetchEditor, HOSTS, runEditorTests } from './editorHosts.mjs';
import { HostError, orStop } from './editorHosts/cache.mjs';
import { RESULTS_FILE } from './editorHosts/results.mjs';
import { linesOf, toldAgain } from './failures.mjs';
import { root } from './setUp.mjs';

const RUNS = {
  web: { host: 'web', suites: 'run' },
  folders: { host: 'web', suites: 'folders' },
  node: { host: 'node', suites: 'run' },
  restricted: { host: 'node', suites: 'restricted' },
};
/** Those of one lane run one after the other. An editor waits much of its time, and the lanes take about as long as each other. */
const LANES = [['web', 'folders', 'restricted'], ['node']];

await orStop(async () => {
  rmSync(root + RESULTS_FILE, { force: true });
  requireOldest();
  const names = chosen(process.argv.slice(2));
  await buildExtension();
  await buildView();
  await buildEditorTests();
  // An install stops everything else in this process, and an editor that is running would not be answered meanwhile.
  const missing = Object.fromEntries(names.map((name) => [name, whyMissing(name)]));
  const lanes = LANES.map((lane) => lane.filter((name) => names.includes(name)));
  const results = Object.fromEntries((await Promise.all(lanes.map((lane) => resultsOfLane(lane, missing)))).flat());
  const total = { passed: 0, failed: 0, failures: [] };
  for (const name of names) {
    const { passed, failed, failures } = results[name];
    total.passed += passed;
    total.failed += failed;
    total.failures.push(...failures.map((failure) => ({ ...failure, name: `${name}: ${failure.name}` })));
  }
  writeFileSync(root + RESULTS_FILE, JSON.stringify(total));
  for (const line of total.failed === 0 ? [] : toldAgain([{ step: 'in real editors', failures: total.failures }])) console.log(line);
  console.log(`In real editors: ${total.passed} passed, ${total.failed} failed`);
  process.exitCode = total.failed === 0 ? 0 : 1;
});

/** Fetches what a run needs. Undefined where it is there, else the error that says why not. */
function whyMissing(name) {
  try {
    fetchEditor(RUNS[name].host);
    return undefined;
  } catch (error) {
    return error;
  }
}

async function resultsOfLane(names, missing) {
  const results = [];
  for (const name of names) results.push([name, await resultsOf(name, missing[name])]);
  return results;
}

/** An editor that could not be had, or did not start, is one failure, and the others are still run. */
async function resultsOf(name, reason) {
  const { host, suites } = RUNS[name];
  const print = (line) => console.log(`${name}: ${line}`);
  try {
    if (reason !== undefined) throw reason;
    return await runEditorTests(host, { suites, print });
  } catch (error) {
    if (!(error instanceof HostError)) throw error;
    console.error(error.message);
    return { passed: 0, failed: 1, failures: [{ name: 'no test was run', reason: linesOf(error.message) }] };
  }
}

function chosen(words) {
  const wrong = words.find((word) => !(word in RUNS));
  if (wrong !== undefined) throw new HostError(`There is no run “${wrong}”: ${Object.keys(RUNS).join(', ')}`);
  return words.length === 0 ? Object.keys(RUNS) : words;
}

/** What the manifest promises as the oldest version is what the oldest host is. */
function requireOldest() {
  const { vscode } = JSON.parse(readFileSync(`${root}package.json`, 'utf8')).engines;
  const [oldest] = HOSTS.web.VERSION.split(/\.\d+$/);
  if (vscode !== `^${oldest}.0`)
    throw new HostError(`package.json supports VS Code ${vscode}, but the oldest version tested is ${HOSTS.web.VERSION}`);
}
