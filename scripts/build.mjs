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
  plugins: [withoutSeeds],
};

/** Settings of a bundle that Node runs by itself. Not minified: a stack trace from a person can be read. */
export const forNode = { ...anywhere, external: ['node:*'], format: 'esm', target: 'node20.19' };

/** The editor loads CommonJS. Node's modules are not external here: using one fails the build. */
const forEditor = {
  ...anywhere,
  external: ['vscode'],
  format: 'cjs',
  keepNames: true,
  minify: true,
  sourcemap: true,
  target: 'es2022',
};

/** Web hosts evaluate a script as it comes, and only one whose name ends in `.js`. */
const forWebEditor = { ...forEditor, platform: 'browser' };

/** The same source twice: `main` for hosts that run in Node, `browser` for those that run in a web worker. */
export async function buildExtension() {
  const entryPoints = ['extension/main.ts'];
  await bundle({ ...forEditor, entryPoints, outfile: 'build/extension/main.cjs' });
  await bundle({ ...forWebEditor, entryPoints, outfile: 'build/extension/browser.js' });
}

/** What editors run for `npm run test:editor` and for pictures; see `modulesFor` of `editorHosts.mjs`. */
export async function buildEditorTests() {
  const suites = [];
  for (const name of ['run', 'restricted', 'scene']) {
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

/** One file that needs no packages beside it. */
export async function buildCommandLine() {
  const outfile = 'build/cli/main.mjs';
  await bundle({ ...forNode, entryPoints: ['cli/main.ts'], outfile, banner: { js: '#!/usr/bin/env node' } });
  chmodSync(root + outfile, 0o755);
}

/** @returns the files that went in, by path */
async function bundle(settings) {
  const { metafile, outputFiles } = await build({ ...settings, metafile: true, write: false });
  const { bytes, imports } = metafile.outputs[settings.outfile];
  requireOnly(settings.external, imports, settings.outfile);
  for (const { path, contents } of outputFiles) replaceFile(path, contents);
  console.log(`${settings.outfile}  ${(bytes / 1000).toFixed(1)} kB`);
  return metafile.inputs;
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
  await buildCommandLine();
}
