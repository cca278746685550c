/**
 * `npm run build`: bundles the extension and the command line, and prints how large each came out. Types are checked
 * by `npm run types`, not here.
 */
import { chmodSync } from 'node:fs';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { root } from './setUp.mjs';

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

export function buildExtension() {
  return bundle({ ...forEditor, entryPoints: ['extension/main.ts'], outfile: 'build/extension/main.cjs' });
}

/** One file that needs no packages beside it. */
export async function buildCommandLine() {
  const outfile = 'build/cli/main.mjs';
  await bundle({ ...forNode, entryPoints: ['cli/main.ts'], outfile, banner: { js: '#!/usr/bin/env node' } });
  chmodSync(root + outfile, 0o755);
}

async function bundle(settings) {
  const { metafile } = await build({ ...settings, metafile: true });
  const { bytes } = metafile.outputs[settings.outfile];
  console.log(`${settings.outfile}  ${(bytes / 1000).toFixed(1)} kB`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await buildExtension();
  await buildCommandLine();
}
