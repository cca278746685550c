/**
 * `npm start`: makes the clone ready, checks a bundled example and shows the verdict, and then opens that example in an editor with the
 * extension under development: desktop VS Code where there is one, else a VS Code in the browser, which is fetched on first use.
 * `npm start -- --check` ends with the verdict.
 */
import { spawnSync } from 'node:child_process';
import process from 'node:process';
import { root, setUp } from './setUp.mjs';

const EXAMPLE = 'examples/four-barrel.throttle.yaml';

const words = process.argv.slice(2);
const wrong = words.find((word) => word !== '--check');
if (wrong !== undefined) {
  console.error(`npm start knows no “${wrong}”: only \`npm start -- --check\`, which ends with the verdict`);
  process.exit(2);
}

setUp();
const { buildCommandLine, buildExtension, buildView } = await import('./build.mjs');
await buildCommandLine();
console.log(`\n$ npx pedal-to-plate check ${EXAMPLE}\n`);
const { status } = spawnSync(process.execPath, ['build/cli/main.mjs', 'check', EXAMPLE], { cwd: root, stdio: 'inherit' });
const onlyCheck = words.includes('--check');
// An example that somebody has changed into one with errors can still be looked at; one that could not be checked at all cannot.
const wasChecked = status === 0 || status === 1;
if (onlyCheck || !wasChecked) {
  process.exitCode = status ?? 1;
} else {
  console.log('');
  await buildExtension();
  await buildView();
  const { startEditor } = await import('./start/startEditor.mjs');
  await startEditor(EXAMPLE);
}
