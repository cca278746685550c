/**
 * `npm run test:editor [-- web|node|restricted]`: bundles the extension and `test/editor/`, and runs the tests in real editors. Leaves the
 * counts in `RESULTS_FILE`, and what each editor had to say beside it.
 */
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import process from 'node:process';
import { buildEditorTests, buildExtension, buildView } from './build.mjs';
import { HOSTS, runEditorTests } from './editorHosts.mjs';
import { HostError, orStop } from './editorHosts/cache.mjs';
import { RESULTS_FILE } from './editorHosts/results.mjs';
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
  const total = { passed: 0, failed: 0 };
  for (const name of names) {
    const { passed, failed } = await RUNS[name]();
    total.passed += passed;
    total.failed += failed;
  }
  writeFileSync(root + RESULTS_FILE, JSON.stringify(total));
  console.log(`In real editors: ${total.passed} passed, ${total.failed} failed`);
  process.exitCode = total.failed === 0 ? 0 : 1;
});

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
