/** Tests live in `test/`, which mirrors the tree. Nothing may be singled out, and finding no test is a failure. */
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { coreAsNode, MADE_FOR_NODE } from './scripts/coreForTests.mjs';

/** What stands between the core and the world: editor, page, terminal, processes. */
const FACES = ['cli', 'extension', 'protocol', 'scripts', 'webview'].map((folder) => `test/${folder}/**/*.test.ts`);
/** These put something else in the place of a module, and a process keeps that for the files that follow. Lint lets no others do so. */
export const ALONE = [
  'test/extension/main.test.ts',
  'test/extension/studies/runStudy.test.ts',
  'test/extension/view/comparing.test.ts',
  'test/webview/page/told.test.ts',
];

const SEED = 'test/support/seed.ts';

/** @param {import('vitest/config').InlineConfig} options */
const project = (options) => ({
  // What Node imports cannot be replaced, as some of what runs alone wants it.
  plugins: options.name === 'alone' ? [] : [coreAsNode()],
  resolve: {
    // Outside the editor there is no `vscode`; its plain data classes have a stand-in.
    alias: { vscode: fileURLToPath(new URL('test/support/vscode.ts', import.meta.url)) },
  },
  test: {
    // Long enough for a busy machine: what takes long is measured in bench/, not asserted here.
    testTimeout: 120_000,
    // The same for what stands before tests: bundling the page and starting a Chromium takes seconds, and several do so at once.
    hookTimeout: 120_000,
    setupFiles: [SEED],
    // Of every project: none takes this from the whole.
    allowOnly: false,
    // Solving makes many small short-lived objects: with more room for them (Node's own is 16 MB) the collector takes a third of the time.
    execArgv: ['--max-semi-space-size=64'],
    // A package is imported as Node does. Otherwise each use of what it exports goes through a proxy, and the reader has one at every token.
    deps: { interopDefault: false },
    server: { deps: { external: [MADE_FOR_NODE] } },
    ...options,
  },
});

export default defineConfig({
  test: {
    // Every core works: left to itself the runner keeps one back, which on two cores doubles the time.
    maxWorkers: '100%',
    passWithNoTests: false,
    projects: [
      // A new process a file would read mathjs and all of the core anew, which takes longer than most files' tests. The core keeps
      // nothing but what it has worked out, so its tests share a process and its modules.
      project({ name: 'core', isolate: false, include: ['test/**/*.test.ts'], exclude: FACES }),
      // Faces keep what a person did, so each file gets modules of its own; packages and the core stay.
      project({ name: 'faces', isolate: false, include: FACES, exclude: ALONE, setupFiles: [SEED, 'test/support/freshModules.ts'] }),
      project({ name: 'alone', include: ALONE }),
    ],
  },
});
