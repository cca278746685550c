/** `npm start`: makes the clone ready, builds the command line and checks a bundled example with it. */
import { spawnSync } from 'node:child_process';
import process from 'node:process';
import { root, setUp } from './setUp.mjs';

const EXAMPLE = 'examples/four-barrel.throttle.yaml';

setUp();
const { buildCommandLine } = await import('./build.mjs');
await buildCommandLine();
console.log(`\n$ npx pedal-to-plate check ${EXAMPLE}\n`);
const { status } = spawnSync(process.execPath, ['build/cli/main.mjs', 'check', EXAMPLE], { cwd: root, stdio: 'inherit' });
process.exitCode = status ?? 1;
