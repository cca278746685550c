/**
 * `npm run test:editor [-- web|node|restricted]`: bundles the extension and `test/editor/`, and runs the tests in real editors. Leaves the
 * counts and what failed in `RESULTS_FILE`, and what each editor had to say beside it.
 */
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import process from 'node:process';
import { buildEditorTests, buildExtension, buildView } from './build.mjs';
import { HOSTS, runEditorTests } from './editorHosts.mjs';
import { HostError, orStop } from './editorHosts/cache.mjs';
import { RESULTS_FILE } from './editorHosts/results.mjs';
import { linesOf, toldAgain } from './failures.mjs';
import { root } from './setUp.mjs';

const RUNS = {
  web: () => runEditorTests('web'),
  node: () => runEditorTests('node'),
  restricted: () => runEditorTests('node', { restricted: true }),
};

await orStop(async () => {
  rmSync(root + RESULTS_FILE, { force: true });
  requireOldest();
  const names = chosen(process.argv.slice(2));
  await buildExtension();
  await buildView();
  await buildEditorTests();
  const total = { passed: 0, failed: 0, failures: [] };
  for (const name of names) {
    const { passed, failed, failures } = await resultsOf(name);
    total.passed += passed;
    total.failed += failed;
    total.failures.push(...failures.map((failure) => ({ ...failure, name: `${name}: ${failure.name}` })));
  }
  writeFileSync(root + RESULTS_FILE, JSON.stringify(total));
  for (const line of total.failed === 0 ? [] : toldAgain([{ step: 'in real editors', failures: total.failures }])) console.log(line);
  console.log(`In real editors: ${total.passed} passed, ${total.failed} failed`);
  process.exitCode = total.failed === 0 ? 0 : 1;
});

/** An editor that could not be had, or did not start, is one failure, and the others are still run. */
async function resultsOf(name) {
  try {
    return await RUNS[name]();
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
