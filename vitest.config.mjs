/** Tests live in `test/`, which mirrors the tree. Nothing may be singled out, and finding no test is a failure. */
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  resolve: {
    // Outside the editor there is no `vscode`; its plain data classes have a stand-in.
    alias: { vscode: fileURLToPath(new URL('test/support/vscode.ts', import.meta.url)) },
  },
  test: {
    // Long enough for a busy machine: what takes long is measured in bench/, not asserted here.
    testTimeout: 120_000,
    // The same for what stands before tests: bundling the page and starting a Chromium takes seconds, and several do so at once.
    hookTimeout: 120_000,
    // Every core works: left to itself the runner keeps one back, which on two cores doubles the time.
    maxWorkers: '100%',
    setupFiles: ['test/support/seed.ts'],
    include: ['test/**/*.test.ts'],
    allowOnly: false,
    passWithNoTests: false,
  },
});
