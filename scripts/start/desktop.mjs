/** Desktop VS Code, where the machine has it: the program `code` on the path. */
import { spawnSync } from 'node:child_process';
import process from 'node:process';
import { root } from '../setUp.mjs';

/**
 * Opens the folder of an example and the example in it, with the extension of this clone under development. Says so, and why not where it
 * would not start.
 *
 * @param {string} example path of a throttle file, from the clone's folder
 * @param {NodeJS.ProcessEnv} env with the path on which `code` is looked for
 * @returns {boolean} whether there is a window now
 */
export function openOnDesktop(example, env) {
  // On Windows it is a script, which only a shell finds.
  const shell = process.platform === 'win32';
  const quoted = (path) => (shell ? `"${path}"` : path);
  if (spawnSync('code', ['--version'], { env, shell, stdio: 'ignore' }).status !== 0) return false;
  const folder = root + example.slice(0, example.lastIndexOf('/'));
  console.log(`Opening ${example} in desktop VS Code, with the extension …`);
  const words = [`--extensionDevelopmentPath=${root}`, folder, root + example].map(quoted);
  const { status } = spawnSync('code', words, { cwd: root, env, shell, stdio: 'inherit' });
  if (status !== 0) console.log('Desktop VS Code did not start, so it is the one in the browser.');
  return status === 0;
}
