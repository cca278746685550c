/**
 * `npm run build`: bundles the extension and the command line, and prints how large each came out. Types are checked
 * by `npm run types`, not here.
 */
import { chmodSync, mkdirSync, readdirSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { root } from './setUp.mjs';

/**
 * A generator of random numbers that comes with mathjs asks Node's crypto for a seed, where there is one. Nothing here draws
 * random numbers, and a bundle shall be the same wherever it runs: it finds nothing there.
 */
const withoutSeeds = {
  name: 'without seeds',
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^crypto$/ }, ({ path }) => ({ path, namespace: 'nothing' }));
    onLoad({ filter: /^/, namespace: 'nothing' }, () => ({ contents: '' }));
  },
};

/** planck takes some 30 ms to start, and few files need it: it is not run before its door is first called. */
const planckWhenCalled = {
  name: 'planck when called',
  setup({ onLoad }) {
    const contents = "export const loadPlanck = () => require('planck');";
    onLoad({ filter: /[\\/]src[\\/]numeric[\\/]planck\.ts$/ }, ({ path }) => ({ contents, loader: 'js', resolveDir: dirname(path) }));
  },
};

/**
 * The neutral platform takes the packages' plain ES modules, so that every bundle computes with the same code, whether
 * it runs in Node, a web host or a worker.
 */
const anywhere = {
  absWorkingDir: root,
  bundle: true,
  charset: 'utf8',
  legalComments: 'none',
  logLevel: 'warning',
  mainFields: ['module', 'main'],
  platform: 'neutral',
  plugins: [withoutSeeds, planckWhenCalled],
};

/** Settings of a bundle that Node runs by itself. Not minified: a stack trace from a person can be read. */
export const forNode = { ...anywhere, external: ['node:*'], format: 'esm', target: 'node20.19' };

/**
 * The editor loads CommonJS. Of Node's modules only that of threads is external, which is asked for in hosts
 * that have no other: using any else fails the build. All other characters are escaped: what is
 * ASCII alone an engine holds in a byte each, and reads about a quarter quicker. Functions lose their names: to keep them costs a fifth of
 * the time of every solve, and the maps have them.
 */
const forEditor = {
  ...anywhere,
  charset: 'ascii',
  external: ['vscode', 'node:worker_threads'],
  format: 'cjs',
  minify: true,
  sourcemap: true,
  target: 'es2022',
};

/** As web hosts evaluate it: a script as it comes. Node hosts run it as well. */
const forWebEditor = { ...forEditor, platform: 'browser' };

/**
 * What the extension starts with the first throttle file. It is bundled by itself first: together with what imports it, each of its modules
 * would be kept whole, as one that is asked for later.
 */
const LATER = 'extension/throttleFiles.ts';

/**
 * One bundle for every host. A web host evaluates it, and only a file whose name ends in `.js`; one that runs in Node asks for it through
 * `main.cjs`, and the `package.json` beside it says that it is CommonJS, which that of the clone denies.
 *
 * @param {object} [options]
 * @param {string} [options.folder] where to, from the clone's folder, with a separator at its end
 * @param {boolean} [options.sourcemap] whether a map stands beside each, which it names
 */
export async function buildExtension({ folder = 'build/extension/', sourcemap = true } = {}) {
  await bundleExtension({ ...forWebEditor, sourcemap, outfile: `${folder}extension.js` });
  replaceFile(`${root}${folder}main.cjs`, "module.exports = require('./extension.js');\n");
  replaceFile(`${root}${folder}package.json`, '{ "type": "commonjs" }\n');
}

/**
 * One file, because a web host evaluates one: `LATER` stands in it as a CommonJS module, which is not run before it is asked for.
 */
async function bundleExtension(settings) {
  const apart = { entryPoints: [LATER], outfile: BESIDE_LATER, sourcemap: settings.sourcemap && 'inline' };
  const { metafile, outputFiles } = await made({ ...settings, ...apart });
  const later = {
    name: 'later',
    setup({ onResolve, onLoad }) {
      onResolve({ filter: /\/throttleFiles\.ts$/ }, () => ({ path: root + BESIDE_LATER }));
      onLoad({ filter: /[\\/]throttleFiles\.cjs$/ }, () => ({ contents: outputFiles[0].contents, loader: 'js' }));
    },
  };
  const plugins = [...settings.plugins, later];
  const inputs = await bundle({ ...settings, entryPoints: ['extension/main.ts'], plugins });
  requireNoneTwice(Object.keys(inputs).filter((path) => path in metafile.inputs));
}

/** Not written, only read by the next step, for which the paths in its map hold there. */
const BESIDE_LATER = 'extension/throttleFiles.cjs';

/** Names and functions, without a state: these may be there twice, before `LATER` and in it. */
const STATELESS = ['extension/language.ts', 'extension/view/names.ts'];

function requireNoneTwice(paths) {
  const [first, ...others] = paths.filter((path) => !STATELESS.includes(path));
  if (first === undefined) return;
  const also = others.length === 0 ? '' : ` and ${others.length} more`;
  throw new Error(`The extension would have two of ${first}${also}: ${LATER} and what is there before it import it`);
}

/** What editors run for `npm run test:editor` and for pictures; see `modulesFor` of `editorHosts.mjs`. */
export async function buildEditorTests() {
  const suites = [];
  for (const name of ['run', 'folders', 'restricted', 'scene']) {
    const settings = { entryPoints: [`test/editor/${name}.ts`], minify: false };
    await bundle({ ...forEditor, ...settings, outfile: `build/editorTests/${name}.node.cjs` });
    const inputs = await bundle({ ...forWebEditor, ...settings, outfile: `build/editorTests/${name}.browser.js` });
    suites.push(...Object.keys(inputs));
  }
  requireEverySuite(suites);
}

function requireEverySuite(bundled) {
  const left = readdirSync(`${root}test/editor/suites`).filter((file) => !bundled.includes(`test/editor/suites/${file}`));
  if (left.length > 0) throw new Error(`test/editor/run.ts runs every suite but ${left.join(', ')}`);
}

/**
 * Settings of what the view's page loads: its script, run at once by a browser as new as the oldest editor's, and its style. Functions
 * keep no names: nobody reads them there.
 */
export const forView = {
  ...anywhere,
  external: [],
  jsx: 'automatic',
  jsxImportSource: 'preact',
  minify: true,
  platform: 'browser',
  target: 'es2022',
};

/** The page of the view: one script, one style. */
export async function buildView() {
  await bundle({ ...forView, entryPoints: ['webview/main.tsx'], format: 'iife', outfile: 'build/webview/view.js' });
  // A drawing names its own patterns: `#hatch`.
  await bundle({ ...forView, external: ['#*'], entryPoints: ['webview/view.css'], outfile: 'build/webview/view.css' });
}

/** One file that needs no packages beside it. */
export async function buildCommandLine() {
  const outfile = 'build/cli/main.mjs';
  await bundle({ ...forNode, entryPoints: ['cli/main.ts'], outfile, banner: { js: '#!/usr/bin/env node' } });
  chmodSync(root + outfile, 0o755);
}

/** @returns the files that went in, by path */
async function bundle(settings) {
  const { metafile, outputFiles } = await made(settings);
  const { bytes } = metafile.outputs[settings.outfile];
  for (const { path, contents } of outputFiles) replaceFile(path, contents);
  console.log(`${settings.outfile}  ${(bytes / 1000).toFixed(1)} kB`);
  return metafile.inputs;
}

/** Nothing is written yet. A warning, which has been printed, is a failure. */
async function made(settings) {
  const result = await build({ ...settings, metafile: true, write: false });
  if (result.warnings.length > 0) throw new Error(`${settings.outfile} was made with warnings: see above`);
  requireOnly(settings.external, result.metafile.outputs[settings.outfile].imports, settings.outfile);
  return result;
}

/** At once: what runs meanwhile finds either the file that was there or the new one, and no half. */
function replaceFile(path, contents) {
  mkdirSync(dirname(path), { recursive: true });
  const part = `${path}.${process.pid}.part`;
  writeFileSync(part, contents);
  renameSync(part, path);
}

/** Nothing is left to be found at run time but what the host is known to have. */
function requireOnly(external, imports, outfile) {
  const known = (path) => external.some((pattern) => (pattern.endsWith('*') ? path.startsWith(pattern.slice(0, -1)) : path === pattern));
  const left = imports.map(({ path }) => path).filter((path) => !known(path));
  if (left.length > 0) throw new Error(`${outfile} would need ${left.join(', ')} where it runs`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await buildExtension();
  await buildView();
  await buildCommandLine();
}
