/**
 * Makes a fresh clone ready, with nothing but Node: checks Node's version and installs the packages of the
 * lock file where they are missing or differ. Always says what it does. Uses only what Node brings along.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import process from 'node:process';
import { fileURLToPath } from 'node:url';

/** The clone's folder, with a separator at its end. */
export const root = fileURLToPath(new URL('..', import.meta.url));

/** Ends the process with exit code 1 and a sentence on what to do where the clone cannot be made ready. */
export function setUp() {
  requireNode();
  const reason = whyInstall();
  if (reason === undefined) return;
  console.log(`Setting up: ${reason}, so running \`npm ci\` …`);
  if (runNpm(['ci']) !== 0) stop('`npm ci` failed (its messages are above). Mend what it names, then run this command again.');
}

/**
 * How npm is started: the one that started this script, else the one on the path (a `.cmd` on Windows, which only a shell
 * finds).
 *
 * @returns {{command: string, before: readonly string[], shell: boolean}} `before`: words that come before npm's own
 */
export function npmCommand() {
  const running = process.env.npm_execpath;
  if (running?.endsWith('.js')) return { command: process.execPath, before: [running], shell: false };
  return { command: 'npm', before: [], shell: process.platform === 'win32' };
}

const NODE_FLOOR = [20, 19];

function requireNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major > NODE_FLOOR[0] || (major === NODE_FLOOR[0] && minor >= NODE_FLOOR[1])) return;
  stop(`Node ${NODE_FLOOR.join('.')} or newer is needed, this is ${process.versions.node}. Get a newer one from https://nodejs.org.`);
}

/**
 * Why the packages have to be installed; undefined where they are as the lock file wants them. npm leaves a copy of
 * what it installed beside the packages. The two are compared by content, because a checkout touches the times of
 * files that it did not change. Optional packages may be absent: they are for other platforms.
 */
function whyInstall() {
  const wanted = readPackages('package-lock.json');
  const installed = readPackages('node_modules/.package-lock.json');
  if (wanted === undefined) stop('package-lock.json is missing or damaged. Get it back with `git checkout package-lock.json`.');
  if (installed === undefined) return 'the packages are not installed yet';
  for (const [path, entry] of Object.entries(wanted)) {
    const present = installed[path];
    const same = present === undefined ? entry.optional : present.version === entry.version && present.integrity === entry.integrity;
    if (path !== '' && !same) return `${path} is not the one that package-lock.json names`;
  }
  return undefined;
}

function readPackages(path) {
  try {
    return JSON.parse(readFileSync(root + path, 'utf8')).packages;
  } catch {
    return undefined;
  }
}

function runNpm(words) {
  const { command, before, shell } = npmCommand();
  const done = spawnSync(command, [...before, ...words], { cwd: root, shell, stdio: 'inherit' });
  if (done.error) stop(`npm could not be started: ${done.error.message}. It comes with Node: is it on the path?`);
  return done.status;
}

function stop(message) {
  console.error(message);
  process.exit(1);
}
