/**
 * `npm run bench [-- WORD…]`: bundles `test/bench/*.bench.ts` as they would ship and runs one after the other, each in
 * its own process, alone on the machine as far as this script can see to it. With words, only those whose name has one.
 */
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import process from 'node:process';
import { build } from 'esbuild';
import { forNode } from './build.mjs';
import { root } from './setUp.mjs';

const words = process.argv.slice(2);
const wanted = (name) => words.length === 0 || words.some((word) => name.includes(word));
const names = readdirSync(`${root}test/bench`)
  .filter((file) => file.endsWith('.bench.ts'))
  .map((file) => file.slice(0, -'.ts'.length))
  .filter(wanted)
  .sort();

if (names.length === 0) {
  console.error(words.length === 0 ? 'There is no test/bench/*.bench.ts' : `No benchmark is called ${words.join(' or ')}`);
  process.exit(1);
}

await build({
  ...forNode,
  // What the extension takes of the editor has a stand-in.
  alias: { vscode: './test/support/vscode.ts' },
  entryPoints: names.map((name) => `test/bench/${name}.ts`),
  outdir: 'build/bench',
  outExtension: { '.js': '.mjs' },
});

const failed = names.filter((name) => {
  console.log(`\n── ${name}`);
  return spawnSync(process.execPath, [`build/bench/${name}.mjs`], { cwd: root, stdio: 'inherit' }).status !== 0;
});
if (failed.length > 0) console.error(`\nFailed: ${failed.join(', ')}`);
process.exitCode = failed.length === 0 ? 0 : 1;
