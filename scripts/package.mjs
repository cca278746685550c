/**
 * `npm run package [-- --check]`: puts the extension into `build/pedal-to-plate-VERSION.vsix`. It is made of a folder that holds what the
 * list `files` of the manifest names and nothing else. A warning is a failure. With `--check` the newest editor installs the
 * package, and the tests of `test/editor/run.ts` are run on it.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { buildEditorTests, buildExtension, buildView } from './build.mjs';
import { runEditorTests } from './editorHosts.mjs';
import { HostError, orStop } from './editorHosts/cache.mjs';
import { root } from './setUp.mjs';

/** Bytes; what the package may have at most. */
export const LARGEST_PACKAGE = 1_000_000;

const FOLDER = `${root}build/package/`;

/**
 * @param {string} [file] where to; by default in `build/`, named by the version
 * @returns {Promise<string>} path of the package
 */
export async function makePackage(file) {
  const manifest = JSON.parse(readFileSync(`${root}package.json`, 'utf8'));
  const path = file ?? `${root}build/${manifest.name}-${manifest.version}.vsix`;
  rmSync(FOLDER, { recursive: true, force: true });
  // Maps would be four times as large as all else. Whoever reads a trace has them by `npm run build`, which makes the same code.
  await buildExtension({ folder: 'build/package/build/extension/', sourcemap: false });
  await buildView();
  const copied = manifest.files.filter((entry) => !entry.startsWith('build/extension/'));
  for (const entry of copied) cpSync(root + entry, FOLDER + entry, { recursive: true });
  write('README.md', withoutDeadLinks(readFileSync(`${root}README.md`, 'utf8')));
  write('package.json', `${JSON.stringify(installedManifest(manifest), undefined, 2)}\n`);
  mkdirSync(dirname(path), { recursive: true });
  pack(path);
  return path;
}

function write(name, text) {
  writeFileSync(FOLDER + name, text);
}

/** What only the clone has a use for, scripts, packages and the command line, is not in what is installed. */
const OF_THE_CLONE = ['private', 'bin', 'scripts', 'dependencies', 'devDependencies', 'allowScripts'];

function installedManifest(manifest) {
  return Object.fromEntries(Object.entries(manifest).filter(([key]) => !OF_THE_CLONE.includes(key)));
}

/**
 * A link to a file of the clone becomes the file's name, and a paragraph that is a picture of the clone is left out: there is no address on
 * the web that they could lead to, and an editor follows no other from the page of an extension.
 */
export function withoutDeadLinks(markdown) {
  return markdown
    .replaceAll(/^!\[[^\]]*\]\((?![a-z]+:)[^)]*\)\n\n/gm, '')
    .replaceAll(/(?<!!)\[([^\]]*)\]\((?![a-z]+:|#)([^)]*)\)/g, '$1 (`$2`)');
}

const WORDS = [
  // The bundles hold all that they need.
  '--no-dependencies',
  // The manifest names no repository, because there is none that a person could visit.
  '--allow-missing-repository',
];

/** What is printed goes by a pipe: on a terminal the tool would ask, go on when told to, and look for a newer version of itself. */
function pack(path) {
  const words = [`${root}node_modules/@vscode/vsce/vsce`, 'package', ...WORDS, '--out', path];
  const { status, stdout, stderr, error } = spawnSync(process.execPath, words, { cwd: FOLDER, encoding: 'utf8' });
  process.stdout.write(`${stdout ?? ''}${stderr ?? ''}`);
  if (error) throw error;
  if (status === 0 && !warns(stdout + stderr)) return;
  rmSync(path, { force: true });
  throw new HostError('The package was not made: see above');
}

/** Whether there is a warning in what was printed. Node, too, writes the word in full. */
export function warns(printed) {
  return /\bwarning\b/i.test(printed);
}

function requireSmall(path) {
  const { size } = statSync(path);
  console.log(`${path}  ${(size / 1000).toFixed(1)} kB, ${(size / LARGEST_PACKAGE).toFixed(2)} × what it may have`);
  if (size > LARGEST_PACKAGE) throw new HostError(`The package is larger than ${LARGEST_PACKAGE / 1000} kB`);
}

async function requireWorking(path) {
  await buildEditorTests();
  const { passed, failed } = await runEditorTests('node', { installed: path });
  console.log(`Installed, in a real editor: ${passed} passed, ${failed} failed`);
  if (failed > 0) throw new HostError('The package does not do all that it should');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await orStop(async () => {
    const words = process.argv.slice(2);
    const wrong = words.find((word) => word !== '--check');
    if (wrong !== undefined) throw new HostError(`“${wrong}” is not known: only --check is`);
    const path = await makePackage();
    requireSmall(path);
    if (words.includes('--check')) await requireWorking(path);
  });
}
