/** Tests live in `test/`, which mirrors the tree. Nothing may be singled out, and finding no test is a failure. */
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  resolve: {
    // Outside the editor there is no `vscode`; its plain data classes have a stand-in.
    alias: { vscode: fileURLToPath(new URL('test/support/vscode.ts', import.meta.url)) },
  },
  test: {
    testTimeout: 120_000,
    include: ['test/**/*.test.ts'],
    allowOnly: false,
    passWithNoTests: false,
  },
});
