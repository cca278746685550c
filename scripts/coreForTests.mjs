/**
 * The core as plain JavaScript, file by file, for the tests to import as Node does. What vitest transforms itself reads each import as a
 * property of an object wherever it is used, which costs a solve a fifth of its time, and is handed over module by module, for each project anew.
 */
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import process from 'node:process';
import { build } from 'esbuild';
import { root } from './setUp.mjs';

const CORE = join(root, 'src') + sep;
const MADE = join(root, 'build', 'coreForTests');

/** What vitest shall leave to Node. */
export const MADE_FOR_NODE = /[\\/]build[\\/]coreForTests[\\/]/;

/**
 * Imports of the core lead to what was made of it. While vitest watches, it has to know the files themselves, and they stay with it.
 *
 * @returns {import('vitest/config').Plugin}
 */
export function coreAsNode() {
  let folder;
  return {
    name: 'core as Node',
    enforce: 'pre',
    configureVitest({ vitest }) {
      if (!vitest.config.watch) folder = makeCore();
    },
    async resolveId(source, importer) {
      if (folder === undefined || importer === undefined || !source.startsWith('.')) return undefined;
      const path = join(dirname(importer), source);
      return path.startsWith(CORE) && path.endsWith('.ts') ? join(await folder, asJavaScript(relative(CORE, path))) : undefined;
    },
  };
}

let making;

/** A folder of this process, so that several can run at once. It stays for what is told of failures; those of processes that are gone, go. */
function makeCore() {
  making ??= (async () => {
    mkdirSync(MADE, { recursive: true });
    for (const name of readdirSync(MADE)) if (!isRunning(Number(name))) rmSync(join(MADE, name), { recursive: true, force: true });
    const folder = join(MADE, String(process.pid));
    await build({
      entryPoints: readdirSync(CORE, { recursive: true })
        .filter((name) => /\.ts$/.test(name))
        .map((name) => join(CORE, name)),
      outbase: CORE,
      outdir: folder,
      bundle: true,
      packages: 'external',
      plugins: [eachAlone],
      format: 'esm',
      target: 'es2022',
      charset: 'utf8',
      sourcemap: 'linked',
      sourcesContent: false,
      logLevel: 'warning',
    });
    return folder;
  })();
  return making;
}

const eachAlone = {
  name: 'each file alone',
  setup({ onResolve }) {
    onResolve({ filter: /^\.{1,2}\// }, ({ path }) => ({ path: asJavaScript(path), external: true }));
  },
};

const asJavaScript = (path) => path.replace(/\.ts$/, '.js');

function isRunning(pid) {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
}
