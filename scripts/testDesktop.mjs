/**
 * `npm run test:desktop [-- VERSION]`: the tests of `test/editor/` in desktop VS Code. Where no version is given it is the one of the machine,
 * see `localCode`, or else the newest, downloaded on first use. On Linux it needs a display; without one, `xvfb-run npm run test:desktop`.
 */
import { spawn } from 'node:child_process';
import process from 'node:process';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { downloadAndUnzipVSCode } from '@vscode/test-electron';
import { buildEditorTests, buildExtension, buildView } from './build.mjs';
import { modulesFor, withWorkspace } from './editorHosts.mjs';
import { HostError, cacheFolder, orStop } from './editorHosts/cache.mjs';
import { localCode } from './editorHosts/localCode.mjs';
import { collectResults } from './editorHosts/results.mjs';

await orStop(async () => {
  const [version] = process.argv.slice(2);
  const local = version === undefined ? localCode() : undefined;
  if (local !== undefined) console.log(`Desktop VS Code of this machine: ${local}`);
  const executable = local ?? (await downloaded(version ?? 'stable'));
  if (process.platform === 'linux' && !process.env.DISPLAY && !process.env.WAYLAND_DISPLAY) {
    throw new HostError(
      'No test was run: desktop VS Code needs a display, and there is none; `xvfb-run npm run test:desktop` gives it one',
    );
  }
  await buildExtension();
  await buildView();
  await buildEditorTests();
  const { failed, passed, version: found } = await withWorkspace((folder) => run(executable, folder));
  console.log(`In desktop VS Code ${found}: ${passed} passed, ${failed} failed`);
  process.exitCode = failed === 0 ? 0 : 1;
});

async function downloaded(version) {
  const quiet = { report: () => undefined, error: () => undefined };
  try {
    return await downloadAndUnzipVSCode({ version, cachePath: cacheFolder('desktop'), reporter: quiet });
  } catch (error) {
    throw new HostError(
      `No test was run: desktop VS Code (${version}) could not be downloaded: ${reasonOf(error)}\nOne that is there already is taken where \`code\` is on the path or the variable VSCODE_EXECUTABLE names its program.`,
    );
  }
}

/** Some errors of the network have no message but those of all addresses that were tried. */
function reasonOf(error) {
  const first = Array.isArray(error?.errors) ? error.errors[0] : error;
  return first?.message || first?.code || String(error);
}

/** In a process of its own, so that what the editor prints can be read; its exit code counts too. */
async function run(executable, folder) {
  const script = fileURLToPath(new URL('editorHosts/desktopHost.mjs', import.meta.url));
  const child = spawn(process.execPath, [script, executable, folder, modulesFor('run').node], { stdio: ['ignore', 'pipe', 'pipe'] });
  const collected = collectResults(console.log);
  const last = [];
  for (const stream of [child.stdout, child.stderr]) {
    createInterface({ input: stream }).on('line', (line) => {
      collected.hear(line);
      last.push(line);
    });
  }
  const code = await new Promise((resolve) => child.on('close', resolve));
  const results = collected.results();
  if (code !== 0 && results.failed === 0)
    throw new HostError(`Desktop VS Code ended with exit code ${code}:\n${last.slice(-20).join('\n')}`);
  return results;
}
